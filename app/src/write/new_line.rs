//! The line for a new step: plain words in, and below them at once what they mean.
//!
//! Enter keeps the line as a step and stays ready for the next one. What is typed here is nobody's step
//! yet; it is not kept and not judged.

use super::ladder_keys::LadderKeys;
use super::leading_words::leading_words;
use crate::components::notation_line::notation_line;
use crate::state::{Command, EditorStore};
use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
use procedures_schema::capture::{Making, leading};
use procedures_schema::model::Id;

/// The line at the end, or below a step.
#[component]
pub fn NewLine(
    /// The editor's state.
    store: EditorStore,
    /// The step below which the new one goes; at the end, if none.
    after: Option<Id>,
) -> impl IntoView {
    let is_last = after.is_none();
    let after = StoredValue::new(after);
    let words = RwSignal::new(String::new());
    let label = move || match after.get_value() {
        None => "New step".to_owned(),
        Some(step) => {
            let number =
                store.document().with(|document| document.position(&step).map_or(0, |position| position + 1));
            format!("Step after {number}")
        }
    };
    let keep = move || {
        let typed = words.get_untracked().trim().to_owned();
        if !typed.is_empty() {
            words.set(String::new());
            store.run(Command::AddStep { after: after.get_value(), words: typed });
        }
    };
    let keydown = move |event: KeyboardEvent| match event.key().as_str() {
        "Enter" if !event.is_composing() && !event.shift_key() => {
            event.prevent_default();
            event.stop_propagation();
            keep();
        }
        "Escape" if !is_last => {
            event.stop_propagation();
            store.run(Command::CloseDraft);
        }
        _ => {}
    };
    // Several lines become steps at once; one line goes into the field like any text.
    let pasted = move |event: web_sys::ClipboardEvent| {
        let text =
            event.clipboard_data().and_then(|data| data.get_data("text/plain").ok()).unwrap_or_default();
        if words.with_untracked(|words| words.trim().is_empty())
            && text.lines().filter(|line| !line.trim().is_empty()).count() > 1
        {
            event.prevent_default();
            store.run(Command::AddStep { after: after.get_value(), words: text });
        }
    };
    let meaning = move || words.with(|words| meaning(store, after.get_value().as_ref(), words.trim()));
    let id = if is_last { "new-line" } else { "draft-line" };
    view! {
        <div class="new-line">
            <label for=id>{label}</label>
            <div class="grows" data-text=move || words.get()>
                <textarea
                    id=id class="words draft" rows="1" spellcheck="false" enterkeyhint="next"
                    prop:value=move || words.get()
                    on:input=move |event| words.set(event_target_value(&event))
                    on:keydown=keydown
                    on:paste=pasted
                ></textarea>
            </div>
            {meaning}
            {is_last.then(|| view! {
                <div class="strip" role="group" aria-label="Ready steps for the end"><LadderKeys store after=None /></div>
            })}
        </div>
    }
}

/// What the line would mean as a step, what it would make, and what is open about it.
fn meaning(store: EditorStore, after: Option<&Id>, words: &str) -> Option<AnyView> {
    if words.is_empty() {
        return None;
    }
    if let Some(leading) = leading(words) {
        return Some(view! { <p class="notation leading">{leading_words(&leading)}</p> }.into_any());
    }
    let Making { reading, map, made, asked } = store.read_line(after, words);
    let doubts = reading.doubts.into_iter().map(|doubt| doubt.question);
    let asked = asked.into_iter().map(|asked| asked.question);
    let unknown = reading.unknown.into_iter();
    let unknown = unknown.map(|unknown| format!("{} what? Nothing on the map has that name", unknown.verb));
    let open: Vec<_> = doubts
        .chain(asked)
        .chain(unknown)
        .map(|words| view! { <span class="doubt">"?? " {words}</span> })
        .collect();
    let names: Vec<String> = made.into_iter().map(|made| made.name).collect();
    let new = (!names.is_empty()).then(|| view! { <span class="fresh">"new: " {names.join(", ")}</span> });
    Some(
        view! { {notation_line(&reading.actions, &map)}<p class="notation doubts">{new}{open}</p> }
            .into_any(),
    )
}
