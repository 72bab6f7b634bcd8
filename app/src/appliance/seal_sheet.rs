//! The sheet of a seal.

use super::component_sheet::known;
use crate::frame::sheet::{Sheet, listed, words};
use leptos::prelude::*;
use procedures_schema::model::{Known, Seal, SealPolicy};

/// Its fields.
pub fn fields(sheet: Sheet<Seal>) -> AnyView {
    let policies = words(SealPolicy::ALL.iter().map(SealPolicy::word));
    view! {
        {sheet.word("When its joint was open", policies, |s| s.policy.word().to_owned(), |s, word| s.policy = SealPolicy::from_word(&word))}
        {sheet.text("Size", "30 mm x 21 mm x 2 mm", |s| shown(s.size.as_ref()), |s, text| s.size = known(text))}
        {sheet.text("Material", "fibre", |s| s.material.clone(), |s, text| s.material = text)}
        {sheet.text("Number of a new one", "as it is ordered", |s| shown(s.number.as_ref()), |s, text| s.number = known(text))}
        {sheet.text("Why it may go back, or why there is none", "", |s| s.reason.clone(), |s, text| s.reason = text)}
        {sheet.text("Other names", "with commas between", |s| s.aliases.join(", "), |s, text| s.aliases = listed(&text))}
    }
    .into_any()
}

fn shown(value: Option<&Known<String>>) -> String {
    value.and_then(Known::value).cloned().unwrap_or_default()
}
