//! What was just put into the bin, and the way back at once.

use crate::state::on_shelf::OnShelf;
use leptos::prelude::*;

/// The bar; nothing while nothing was removed. The keyboard goes to its key, since the row is gone.
#[component]
pub fn UndoBar(
    /// What was removed last.
    removed: RwSignal<Option<OnShelf>>,
    /// Puts it back.
    put_back: Callback<OnShelf>,
) -> impl IntoView {
    let undo = NodeRef::<leptos::html::Button>::new();
    Effect::new(move |_| {
        if removed.with(Option::is_some) {
            request_animation_frame(move || {
                if let Some(undo) = undo.get_untracked() {
                    // A key that cannot be focused has just gone.
                    let _ = undo.focus();
                }
            });
        }
    });
    let bar = move || {
        removed.get().map(|one| {
            let words = format!("\"{}\" is in the bin for 30 days.", one.title);
            view! {
                <p class="banner undo-bar">
                    <span>{words}</span>
                    <span class="keys">
                        <button type="button" class="key" node_ref=undo on:click=move |_| put_back.run(one.clone())>"Undo"</button>
                        <button type="button" class="quiet" on:click=move |_| removed.set(None)>"Close"</button>
                    </span>
                </p>
            }
        })
    };
    view! { <div role="status">{bar}</div> }
}
