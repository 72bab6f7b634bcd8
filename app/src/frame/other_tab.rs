//! What is so if the procedure is open in another tab too.

use crate::state::EditorStore;
use leptos::prelude::*;

/// Says that another tab writes, and offers to write here.
#[component]
pub fn OtherTab(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let (only_shows, is_asking) = (store.seat().only_shows(), store.seat().is_asking());
    let name = move || if is_asking.get() { "Taking over …" } else { "Write here instead" };
    move || {
        only_shows.get().then(|| {
            view! {
                <p class="banner other-tab">
                    <span>"Another tab writes this procedure. This one shows it, and follows what is kept there."</span>
                    <button type="button" class="key" disabled=is_asking on:click=move |_| store.take_over()>{name}</button>
                </p>
            }
        })
    }
}
