//! What letting go would do with the thing in hand.

use super::drag::{Dragged, Dragging};
use crate::state::EditorStore;
use leptos::prelude::*;

/// The bar at the foot of the screen, while something is dragged.
#[component]
pub fn DragBar(
    /// The editor's state.
    store: EditorStore,
    /// What is dragged.
    dragging: Dragging,
) -> impl IntoView {
    let words = move |dragged: &Dragged| {
        store.document().with(|document| {
            let thing = document.map.name_of(&dragged.thing);
            match (&dragged.over, &dragged.refused) {
                (_, Some(reason)) => reason.clone(),
                (Some(over), None) => {
                    let over = document.map.name_of(over);
                    format!("The {thing} and the {over} would be one. What differs is asked for.")
                }
                (None, None) => format!("Let the {thing} go on the thing that it is."),
            }
        })
    };
    let shown = move || {
        dragging.dragged().with(|dragged| {
            dragged.as_ref().map(|dragged| {
                let is_refused = dragged.refused.is_some();
                view! {
                    <div class="held-bar" class:refused=is_refused><p>{words(dragged)}</p><span class="hint">"Esc puts it back"</span></div>
                }
            })
        })
    };
    view! { <div role="status">{shown}</div> }
}
