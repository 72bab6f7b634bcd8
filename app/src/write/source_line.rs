//! The line of a pasted text that a row comes from, as long as the row wants a look.

use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::model::Id;

/// The line as it was pasted, and why it was not understood.
#[component]
pub fn PastedLine(
    /// The editor's state.
    store: EditorStore,
    /// The step.
    id: Id,
) -> impl IntoView {
    let left = store.left_of_review();
    let id = StoredValue::new(id);
    let is_left = Memo::new(move |_| left.with(|left| left.steps.contains(&id.get_value())));
    move || {
        let (source, reason) = store.source_in_review(&id.get_value()).filter(|_| is_left.get())?;
        let why = reason.map(|reason| format!(" Not understood: {reason}."));
        Some(view! {
            <p class="pasted-line">{format!("Line {} of the text: ", source.line)}<q>{source.source.trim().to_owned()}</q>{why}</p>
        })
    }
}
