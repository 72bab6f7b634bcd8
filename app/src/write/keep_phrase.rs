//! The offer to read the words of a meaning that was picked in the same way from then on.

use crate::state::{Command, EditorStore};
use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
use procedures_schema::model::Id;

/// The offer, while there is one.
#[component]
pub fn KeepPhrase(
    /// The editor's state.
    store: EditorStore,
    /// The step.
    id: Id,
) -> impl IntoView {
    let offered = store.phrase_offered(id.clone());
    let id = StoredValue::new(id);
    let keydown = move |event: KeyboardEvent| {
        if event.key() == "Escape" {
            store.run(Command::LeavePhrase);
            event.prevent_default();
            event.stop_propagation();
        }
    };
    move || {
        offered.get().map(|offer| {
            let (words, verb) = (offer.phrase.words, offer.phrase.verb.word().to_owned());
            let keep = move |_| store.run(Command::KeepPhrase(id.get_value()));
            view! {
                <div class="choices" role="group" aria-label="A phrase of this procedure" on:keydown=keydown>
                    <p class="doubt">"Here \u{201c}" {words.clone()} "\u{201d} says " {verb.clone()} "."</p>
                    <button type="button" class="key" id=format!("reading-{}", id.get_value()) on:click=keep>
                        "Read it as " {verb} " in this procedure from now on"
                    </button>
                    <button type="button" class="quiet" on:click=move |_| store.run(Command::LeavePhrase)>"Only here"</button>
                </div>
            }
        })
    }
}
