//! The line above the words of a step that says on which answers it is done.

use crate::components::step_asides::conditions;
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::model::Step;
use std::sync::Arc;

/// On which answers a step is done; nothing where it is always done.
#[component]
pub fn Condition(
    /// The editor's state.
    store: EditorStore,
    /// The step.
    step: Memo<Option<Arc<Step>>>,
) -> impl IntoView {
    let words = Memo::new(move |_| {
        let when = step.with(|step| step.as_ref().map(|step| step.when.clone())).unwrap_or_default();
        if when.is_empty() {
            return None;
        }
        store.questions().with(|questions| Some(conditions(&when, questions).join("; ")))
    });
    move || words.get().map(|words| view! { <p class="condition">{words}</p> })
}
