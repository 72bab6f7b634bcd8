//! The way from the stamp to what is still to be found out.

use crate::route::{Screen, go};
use crate::state::EditorStore;
use leptos::prelude::*;

/// How many values are open, as a key; nothing where none is.
#[component]
pub fn LaterKey(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let n = Memo::new(move |_| store.told().with(|told| told.n_later));
    let key = move || {
        view! {
            <button
                type="button" class="quiet later-key" aria-label=format!("{} later: to be found out", n.get())
                on:click=move |_| go(Screen::Later)
            >{n} " later"</button>
        }
    };
    move || (n.get() > 0).then(key)
}
