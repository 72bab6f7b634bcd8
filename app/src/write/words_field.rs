//! The words of the selected step as a field.
//!
//! The document is the source: every key goes to it and comes back, so undo reaches a focused field too.
//! Nothing is sent while an input method composes, because that would tear its text apart; the layer below
//! shows the composed text without lines meanwhile.

use super::copying::several_lines;
use super::keys;
use super::mirror::mirror;
use crate::state::heard::{Heard, plain};
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
    /// What the line hears in its words.
    heard: Memo<Arc<Heard>>,
    /// Its number, from 1.
    number: Signal<usize>,
) -> impl IntoView {
    let id = StoredValue::new(id);
    let words = move || step.get().map(|step| store.shown_words(&step)).unwrap_or_default();
    let field = NodeRef::<leptos::html::Textarea>::new();
    let in_field = in_field(field, words);
    let first = in_field.get_value();
    let send = move |words: String| store.run(Command::SetWords { step: id.get_value(), words });
    let composed = RwSignal::new(None::<String>);
    let is_composing = StoredValue::new(false);
    let pieces = move || match composed.get() {
        Some(words) => plain(words),
        None => heard.with(|heard| heard.pieces.clone()),
    };
    let typed = move |words: String| {
        in_field.set_value(words.clone());
        if is_composing.get_value() {
            composed.set(Some(words));
        } else {
            composed.set(None);
            send(words);
        }
    };
    // Several lines are steps of their own, here as in every other line.
    let pasted = move |event: &web_sys::ClipboardEvent| {
        if let Some(words) = several_lines(event) {
            event.prevent_default();
            store.run(Command::AddStep { after: Some(id.get_value()), words });
        }
    };
    view! {
        <div class="grows">
            {mirror(pieces)}
            <textarea
                id=format!("words-{}", id.get_value())
                class="words" rows="1" spellcheck="false" enterkeyhint="next"
                aria-label=move || format!("Words of step {}", number.get())
                node_ref=field prop:value=first
                on:input=move |event| typed(event_target_value(&event))
                on:compositionstart=move |_| is_composing.set_value(true)
                on:compositionend=move |event| {
                    is_composing.set_value(false);
                    typed(event_target_value(&event));
                }
                on:paste=move |event| pasted(&event)
                on:focus=move |_| store.typing(true)
                on:blur=move |_| store.typing(false)
                on:keydown=move |event| keys::in_words(store, &id.get_value(), &event)
            ></textarea>
        </div>
    }
}

/// What the field holds, which follows the words. What comes back from a key is there already, and to set it again would
/// cost as much as to change it.
fn in_field(
    field: NodeRef<leptos::html::Textarea>,
    words: impl Fn() -> String + 'static,
) -> StoredValue<String> {
    let in_field = StoredValue::new(untrack(&words));
    Effect::new(move |_| {
        let words = words();
        if in_field.with_value(|held| *held != words)
            && let Some(field) = field.get_untracked()
        {
            field.set_value(&words);
            in_field.set_value(words);
        }
    });
    in_field
}
