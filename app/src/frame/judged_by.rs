//! By what the verdict was reached: how many rules, and whose limits.

use crate::state::EditorStore;
use leptos::prelude::*;

/// The words beside the verdict.
pub fn judged_by(store: EditorStore) -> Memo<String> {
    let told = store.told();
    Memo::new(move |_| told.with(|told| told.judged_by.clone()))
}
