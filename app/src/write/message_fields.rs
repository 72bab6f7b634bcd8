//! The safety messages of a step: signal word, hazard, consequence, avoidance.

use crate::components::fields::{ChoiceField, TextField};
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::model::{Id, SafetyMessage, SignalWord, Step};
use procedures_schema::units::Rest;
use std::sync::Arc;

/// All of them, and the key that adds one.
#[component]
pub fn Messages(
    /// The editor's state.
    store: EditorStore,
    /// The step.
    id: Id,
    /// Its contents.
    step: Memo<Option<Arc<Step>>>,
) -> impl IntoView {
    let id = StoredValue::new(id);
    let n_messages =
        Memo::new(move |_| step.with(|step| step.as_ref().map_or(0, |step| step.messages.len())));
    let add = move |_| {
        store.change_step(&id.get_value(), "messages", |step| {
            step.messages.push(SafetyMessage {
                word: SignalWord::Warning,
                hazard: String::new(),
                consequence: String::new(),
                avoidance: String::new(),
                rest: Rest::default(),
            });
        });
    };
    view! {
        {move || (0..n_messages.get()).map(|at| view! { <Message store id=id.get_value() step at /> }).collect_view()}
        <button type="button" class="quiet" on:click=add>"Add a safety message"</button>
    }
}

/// One message.
#[component]
fn Message(store: EditorStore, id: Id, step: Memo<Option<Arc<Step>>>, at: usize) -> impl IntoView {
    let id = StoredValue::new(id);
    let read = move |of: fn(&SafetyMessage) -> String| {
        Signal::derive(move || {
            step.with(|step| step.as_ref().and_then(|step| step.messages.get(at)).map(of).unwrap_or_default())
        })
    };
    let write = move |field: &'static str, set: fn(&mut SafetyMessage, String)| {
        Callback::new(move |typed: String| {
            store.change_step(&id.get_value(), &format!("{field} of message {at}"), |step| {
                if let Some(message) = step.messages.get_mut(at) {
                    set(message, typed);
                }
            });
        })
    };
    let words = SignalWord::ALL.iter().map(|word| (word.word().to_owned(), word.word().to_owned()));
    let words = Signal::stored(words.collect::<Vec<_>>());
    let set_word = write("word", |message, word| message.word = SignalWord::from_word(&word));
    let remove = move |_| {
        store.change_step(&id.get_value(), "messages", |step| {
            if at < step.messages.len() {
                step.messages.remove(at);
            }
        });
    };
    view! {
        <fieldset class="sheet open of-message">
            <legend>{format!("Safety message {}", at + 1)}</legend>
            <ChoiceField label="Signal word" value=read(|m| m.word.word().to_owned()) options=words send=set_word />
            <TextField label="What is dangerous" value=read(|m| m.hazard.clone()) send=write("hazard", |m, text| m.hazard = text) hint="Hot water under pressure" />
            <TextField label="What it does" value=read(|m| m.consequence.clone()) send=write("consequence", |m, text| m.consequence = text) hint="Escaping water can scald" />
            <TextField label="How to avoid it" value=read(|m| m.avoidance.clone()) send=write("avoidance", |m, text| m.avoidance = text) hint="Open the drain slowly" />
            <div class="strip"><button type="button" class="quiet" on:click=remove>"Take this message out"</button></div>
        </fieldset>
    }
}
