//! By what the verdict was reached: how many rules, and whose limits.

use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::model::{Country, Procedure};

/// The words beside the verdict.
pub fn judged_by(store: EditorStore) -> Memo<String> {
    Memo::new(move |_| {
        store.judged().with(|judged| {
            let limits = limits_in_words(&judged.document);
            format!("by {} rules, {limits}, not for work yet", judged.report.n_rules)
        })
    })
}

/// Whose limits the rules look at.
fn limits_in_words(document: &Procedure) -> String {
    match &document.country {
        None => "country not said".to_owned(),
        Some(Country::Elsewhere) => "by the author's limits only".to_owned(),
        Some(country) => format!("written for {}", country.word()),
    }
}
