//! The offer to let a number in the words follow its step.

use crate::state::heard::Heard;
use crate::state::{Command, EditorStore};
use leptos::prelude::*;
use procedures_schema::model::Id;
use std::sync::Arc;

/// The offer, while there is one.
#[component]
pub fn LinkOffer(
    /// The editor's state.
    store: EditorStore,
    /// The step.
    id: Id,
    /// What the line hears in its words.
    heard: Memo<Arc<Heard>>,
) -> impl IntoView {
    let id = StoredValue::new(id);
    let offer = Memo::new(move |_| heard.with(|heard| heard.link.clone()));
    move || {
        offer.get().map(|offer| {
            let (said, words, span) = (offer.said.clone(), offer.words.clone(), offer.span);
            let link = move |_| store.run(Command::LinkStep { step: id.get_value(), offer: offer.clone() });
            let leave = move |_| store.run(Command::LeaveAsText { step: id.get_value(), span });
            view! {
                <p class="notation link-offer" role="group" aria-label=format!("A link to {said}")>
                    <span>{said.clone()} " is now: " {words}</span>
                    <button type="button" class="quiet" on:click=link>"Let the number follow it"</button>
                    <button type="button" class="quiet" on:click=leave>"Leave it as text"</button>
                </p>
            }
        })
    }
}
