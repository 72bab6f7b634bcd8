//! The handle of the selected row: it is dragged by mouse, pen or finger, and pressed it shows where to move to.

use super::drag;
use crate::frame::pointer_drag::has_just_ended;
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::model::Id;

/// The handle.
#[component]
pub fn Handle(
    /// The editor's state.
    store: EditorStore,
    /// The step.
    id: Id,
    /// Its number, from 1.
    number: Signal<usize>,
    /// Whether the places to move it to are shown.
    has_places: RwSignal<bool>,
) -> impl IntoView {
    let id = StoredValue::new(id);
    // A press by the keyboard has no clicks to count and never ends a drag.
    let press = move |event: web_sys::MouseEvent| {
        if event.detail() == 0 || !has_just_ended() {
            has_places.update(|has| *has = !*has);
        }
    };
    view! {
        <button
            type="button" class="handle" aria-expanded=move || has_places.get().to_string()
            aria-label=move || format!("Move step {}", number.get())
            title="Drag it, or press it for the places"
            on:pointerdown=move |event| drag::begin(store, id.get_value(), &event)
            on:click=press
        >
            <svg viewBox="0 0 10 16" aria-hidden="true" focusable="false">
                {[3, 8, 13].map(|y| view! { <circle cx="2.5" cy=y r="1.5" /><circle cx="7.5" cy=y r="1.5" /> })}
            </svg>
        </button>
    }
}
