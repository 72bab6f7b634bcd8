//! By what the verdict was reached: how many rules, and whose limits.

use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::model::Country;

/// The words beside the verdict.
pub fn judged_by(store: EditorStore) -> Memo<String> {
    Memo::new(move |_| {
        store.told().with(|told| {
            let limits = limits_in_words(told.country.as_ref());
            format!("by {} rules, {limits}, not for work yet", told.n_rules)
        })
    })
}

/// Whose limits the rules look at.
fn limits_in_words(country: Option<&Country>) -> String {
    match country {
        None => "country not said".to_owned(),
        Some(Country::Elsewhere) => "by the author's limits only".to_owned(),
        Some(country) => format!("written for {}", country.word()),
    }
}
