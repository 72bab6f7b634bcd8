//! The line for a new step: plain words in, and below them at once what they mean.
//!
//! Enter keeps the line as a step and stays ready for the next one. What is typed here is nobody's step
//! yet; it is not kept and not judged.

use super::ladder_keys::LadderKeys;
use super::leading_keys::LeadingKeys;
use super::line_meaning::LineMeaning;
use super::mirror::mirror;
use crate::state::{Command, EditorStore};
use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
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
    let meaning = LineMeaning::new(store, after.get_value(), words);
    let id = if is_last { "new-line" } else { "draft-line" };
    view! {
        <div class="new-line">
            <LeadingKeys field=id.to_owned() send=Callback::new(move |text| words.set(text)) />
            <label for=id>{label}</label>
            <div class="grows">
                {mirror(move || meaning.pieces())}
                <textarea
                    id=id class="words draft" rows="1" spellcheck="false" enterkeyhint="next"
                    prop:value=move || words.get()
                    on:input=move |event| words.set(event_target_value(&event))
                    on:keydown=keydown
                    on:paste=pasted
                ></textarea>
            </div>
            {move || meaning.view()}
            {is_last.then(|| view! {
                <div class="strip" role="group" aria-label="Ready steps for the end"><LadderKeys store after=None /></div>
            })}
        </div>
    }
}
