//! What the page has to tell above the rows of the demonstration: the step that it lacks.

use crate::state::{Command, EditorStore};
use leptos::prelude::*;

/// Says that a step of the demonstration is out, and offers to put it back.
#[component]
pub fn Banner(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let taken_out = store.taken_out();
    move || {
        taken_out.get().map(|_| {
            view! {
                <p class="banner">
                    <span>
                        "One step of this procedure has been taken out. See what the lanes, the margin and the stamp \
                         say, then put it back. Appliance, people and figures are invented."
                    </span>
                    <button type="button" class="key" on:click=move |_| store.run(Command::PutBack)>"Put it back"</button>
                </p>
            }
        })
    }
}
