//! The phrases by which this procedure says a verb, each with the key that takes it out; nothing while there are none.

use crate::state::EditorStore;
use leptos::prelude::*;

/// The list.
#[component]
pub fn OwnPhrases(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let phrases = Memo::new(move |_| {
        store.document().with(|document| {
            let of = document.map.phrases.iter();
            of.map(|own| (own.words.clone(), own.verb.word().to_owned())).collect::<Vec<_>>()
        })
    });
    let row = move |(words, verb): (String, String)| {
        let label = format!("Take out the phrase {words}");
        let gone = words.clone();
        let remove = move |_| store.forget_phrase(&gone);
        view! {
            <li>
                <div class="thing-line own-phrase">
                    <p><strong>{words}</strong> <span class="about">" is read as " {verb}</span></p>
                    <button type="button" class="quiet" aria-label=label on:click=remove>"Take out"</button>
                </div>
            </li>
        }
    };
    move || {
        let phrases = phrases.get();
        (!phrases.is_empty()).then(|| {
            view! {
                <section class="things-of">
                    <h2 class="stage">"Phrases of this procedure"</h2>
                    <ul class="map-list">{phrases.into_iter().map(row).collect_view()}</ul>
                </section>
            }
        })
    }
}
