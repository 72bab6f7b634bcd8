//! What the words of a step have just put on the appliance.

use crate::route::{Screen, go};
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::model::Id;

/// The names, and the way to their sheets; gone with the next step that makes something.
#[component]
pub fn FreshThings(
    /// The editor's state.
    store: EditorStore,
    /// The step.
    id: Id,
) -> impl IntoView {
    let names = Memo::new(move |_| {
        store
            .fresh()
            .with(|fresh| fresh.as_ref().filter(|fresh| fresh.step == id).map(|fresh| fresh.names.join(", ")))
    });
    move || {
        names.get().map(|names| {
            view! {
                <p class="notation fresh" role="status">
                    "New on the appliance: " {names}
                    <button type="button" class="quiet" on:click=move |_| go(Screen::Appliance)>"Look"</button>
                </p>
            }
        })
    }
}
