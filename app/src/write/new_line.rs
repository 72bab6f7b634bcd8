//! The line for a new step: plain words in, and below them at once what they mean.
//!
//! Enter keeps the line as a step and stays ready for the next one. What is typed here is nobody's step
//! yet; it is not kept and not judged.

use super::keys;
use super::ladder_keys::LadderKeys;
use super::leading_keys::LeadingKeys;
use super::line_meaning::LineMeaning;
use super::mirror::mirror;
use crate::state::attention::WritesIn;
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
        Some(step) => format!("Step after {}", number_of(store, &step).unwrap_or_default()),
    };
    let typed = Typed { store, after, words };
    let meaning = LineMeaning::new(store, after.get_value(), words);
    let id = if is_last { "new-line" } else { "draft-line" };
    view! {
        <div class="new-line">
            {leading_keys(store, is_last)}
            <label for=id>{label}</label>
            <div class="grows">
                {mirror(move || meaning.pieces())}
                <textarea
                    id=id class="words draft" rows="1" spellcheck="false" enterkeyhint="next"
                    prop:value=move || words.get()
                    on:input=move |event| words.set(event_target_value(&event))
                    on:focus=move |_| if is_last { store.entered_line() }
                    on:keydown=move |event| typed.key(&event)
                    on:paste=move |event| typed.pasted(&event)
                ></textarea>
            </div>
            {move || meaning.view()}
            {is_last.then(|| view! {
                <div class="strip" role="group" aria-label="Ready steps for the end"><LadderKeys store after=None /></div>
            })}
        </div>
    }
}

/// The text of a paste, if it has several lines.
fn several_lines(event: &web_sys::ClipboardEvent) -> Option<String> {
    let text = event.clipboard_data()?.get_data("text/plain").ok()?;
    (text.lines().filter(|line| !line.trim().is_empty()).count() > 1).then_some(text)
}

fn number_of(store: EditorStore, step: &Id) -> Option<usize> {
    store.document().with(|document| document.position(step).map(|at| at + 1))
}

/// The keys above the line. Where the line at the end is docked, its keys are the only ones that are seen, and serve
/// whatever is being written.
fn leading_keys(store: EditorStore, is_last: bool) -> impl IntoView {
    let target = store.writes_in();
    let (field, step) = if is_last {
        let number = move |target: &WritesIn| match target {
            WritesIn::Words(step) => number_of(store, step),
            WritesIn::Draft | WritesIn::Line => None,
        };
        let field = Signal::derive(move || target.with(WritesIn::field));
        (field, Signal::derive(move || target.with(number)))
    } else {
        (Signal::stored("draft-line".to_owned()), Signal::stored(None))
    };
    view! { <LeadingKeys field step tells_where=is_last /> }
}

/// What is typed in a line, and what becomes of it.
#[derive(Clone, Copy)]
struct Typed {
    store: EditorStore,
    after: StoredValue<Option<Id>>,
    words: RwSignal<String>,
}

impl Typed {
    fn key(self, event: &KeyboardEvent) {
        match event.key().as_str() {
            "Enter" if !event.is_composing() && !event.shift_key() => {
                event.prevent_default();
                event.stop_propagation();
                if let Some(words) = self.take() {
                    self.store.run(Command::AddStep { after: self.after.get_value(), words });
                }
            }
            "." if event.ctrl_key() && !event.alt_key() => {
                event.prevent_default();
                self.ask(event.target());
            }
            "Escape" if self.after.with_value(Option::is_some) => {
                event.stop_propagation();
                self.store.run(Command::CloseDraft);
            }
            _ => {}
        }
    }

    /// Keeps the line as it is; what is picked goes into the step that it became.
    fn ask(self, field: Option<web_sys::EventTarget>) {
        if let Some((at, words)) = keys::asked_at(field).and_then(|at| Some((at, self.take()?))) {
            self.store.run(Command::KeepAndAsk { after: self.after.get_value(), words, at });
        }
    }

    /// Several lines become steps at once; one line goes into the field like any text.
    fn pasted(self, event: &web_sys::ClipboardEvent) {
        let is_empty = self.words.with_untracked(|words| words.trim().is_empty());
        if let Some(words) = several_lines(event).filter(|_| is_empty) {
            event.prevent_default();
            self.store.run(Command::AddStep { after: self.after.get_value(), words });
        }
    }

    /// The words, which leaves the line empty; none if there are none.
    fn take(self) -> Option<String> {
        let typed = self.words.get_untracked().trim().to_owned();
        (!typed.is_empty()).then(|| {
            self.words.set(String::new());
            typed
        })
    }
}
