//! The words of the selected step as a field.
//!
//! The document is the source: every key goes to it and comes back, so undo reaches a focused field too.
//! Nothing is sent while an input method composes, because that would tear its text apart.

use super::keys;
use crate::state::{Command, EditorStore};
use leptos::prelude::*;
use procedures_schema::model::{Id, Step};
use std::sync::Arc;

/// The field; it grows with its text.
#[component]
pub fn WordsField(
    /// The editor's state.
    store: EditorStore,
    /// The step.
    id: Id,
    /// Its contents.
    step: Memo<Option<Arc<Step>>>,
    /// Its number, from 1.
    number: Signal<usize>,
) -> impl IntoView {
    let id = StoredValue::new(id);
    let words = move || step.get().map(|step| step.words.clone()).unwrap_or_default();
    let is_composing = StoredValue::new(false);
    let send = move |words: String| store.run(Command::SetWords { step: id.get_value(), words });
    view! {
        <div class="grows" data-text=words>
            <textarea
                id=format!("words-{}", id.get_value())
                class="words" rows="1" spellcheck="false" enterkeyhint="done"
                aria-label=move || format!("Words of step {}", number.get())
                prop:value=words
                on:input=move |event| if !is_composing.get_value() { send(event_target_value(&event)) }
                on:compositionstart=move |_| is_composing.set_value(true)
                on:compositionend=move |event| {
                    is_composing.set_value(false);
                    send(event_target_value(&event));
                }
                on:focus=move |_| store.typing(true)
                on:blur=move |_| store.typing(false)
                on:keydown=move |event| keys::in_words(store, &id.get_value(), &event)
            ></textarea>
        </div>
    }
}
