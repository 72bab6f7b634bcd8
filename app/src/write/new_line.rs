//! The line for a new step: plain words in, and below them at once what they mean.
//!
//! Enter keeps the line as a step and stays ready for the next one. What is typed here is nobody's step
//! yet; it outlives a reload, and is not judged.

use super::copying::{copied_steps, several_lines};
use super::gap_fields::{GapFields, GapsOf, enter_first, gaps_of};
use super::keys;
use super::ladder_keys::LadderKeys;
use super::leading_keys::LeadingKeys;
use super::line_meaning::LineMeaning;
use super::mirror::mirror;
use super::taking_back::TakingBack;
use crate::components::step_asides::conditions;
use crate::state::attention::WritesIn;
use crate::state::heard::plain;
use crate::state::lines::Line;
use crate::state::{Command, EditorStore};
use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
use procedures_schema::model::{Answer, Id, Stage};

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
    let line = if is_last { Line::Last } else { Line::Below };
    let words = store.line(line);
    let label = move || match after.get_value() {
        None => "New step".to_owned(),
        Some(step) => format!("Step after {}", number_of(store, &step).unwrap_or_default()),
    };
    let meaning = LineMeaning::new(store, after.get_value(), words);
    let branch = store.branch(line, after);
    let back = TakingBack::default();
    let typed = Typed { store, after, line, meaning, branch, back, is_plain: StoredValue::new(false) };
    let told = store.told();
    let example =
        Memo::new(move |_| if is_last { told.with(|told| example(told.last_stage.as_ref())) } else { "" });
    let id = if is_last { "new-line" } else { "draft-line" };
    view! {
        <div class="new-line" class:only=move || branch.with(|branch| !branch.is_empty())>
            {leading_keys(store, is_last)}
            {move || in_branch(store, &branch.get())}
            <label for=id>{label}</label>
            <div class="grows">
                {mirror(move || if words.with(String::is_empty) { plain(example.get().to_owned()) } else { meaning.pieces() })}
                <textarea
                    id=id class="words draft" rows="1" spellcheck="false" enterkeyhint="next"
                    prop:value=move || words.get() placeholder=move || example.get()
                    on:input=move |event| store.set_line(line, event_target_value(&event))
                    on:focus=move |_| if is_last { back.enters(words.get_untracked()); store.entered_line() }
                    on:keydown=move |event| typed.key(&event)
                    on:paste=move |event| typed.pasted(&event)
                ></textarea>
            </div>
            {meaning.view()}
            <GapFields of=GapsOf { store, line, after } />
            {is_last.then(|| view! {
                <div class="strip" role="group" aria-label="Ready steps for the end"><LadderKeys store after=None /></div>
            })}
        </div>
    }
}

/// On which answers the line is a step, and how to leave them.
fn in_branch(store: EditorStore, branch: &[Answer]) -> Option<impl IntoView + use<>> {
    let words = store.questions().with(|questions| conditions(branch, questions).join("; "));
    let leave = move |_| store.leave_branch();
    (!branch.is_empty()).then(|| {
        view! {
            <p class="in-branch">
                <span>"Goes on "{words}</span>" "
                <button type="button" class="quiet" title="Enter in the empty line" on:click=leave>"Leave this answer"</button>
            </p>
        }
    })
}

/// A step as it might go on, for whoever does not know how to begin.
fn example(last: Option<&Stage>) -> &'static str {
    match last {
        None => "Switch off at the wall switch, lock it off and keep the key.",
        Some(Stage::Prepare | Stage::MakeSafe) => "Undo the two union nuts of the pump, G 1, 37 mm.",
        Some(Stage::Strip | Stage::BenchWork) => "Take out the pump.",
        Some(Stage::Refit) => "Refit the cover and tighten its four screws.",
        Some(Stage::Recommission) => "Open the flow valve and look for water at both unions.",
        Some(_) => "Tell the keeper that the heating runs again.",
    }
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
    line: Line,
    meaning: LineMeaning,
    branch: Memo<Vec<Answer>>,
    back: TakingBack,
    is_plain: StoredValue<bool>,
}

impl Typed {
    fn key(self, event: &KeyboardEvent) {
        // What the browser then pastes comes without a word of how it was asked for.
        let is_v = event.key().eq_ignore_ascii_case("v") && (event.ctrl_key() || event.meta_key());
        self.is_plain.set_value(is_v && event.shift_key());
        match event.key().as_str() {
            // The step before has just been kept, and its finding has just come.
            "Enter" if event.alt_key() && self.words().is_empty() => {
                event.prevent_default();
                event.stop_propagation();
                self.store.run(Command::MendBefore(self.after.get_value()));
            }
            "Enter" if !event.is_composing() && !event.shift_key() => {
                event.prevent_default();
                event.stop_propagation();
                if let Some(words) = self.take() {
                    self.store.run(Command::AddStep { after: self.after.get_value(), words });
                } else if !self.branch.with_untracked(Vec::is_empty) {
                    // Enter on an empty row below an answer leaves it.
                    self.store.leave_branch();
                } else if self.after.with_value(Option::is_some) && self.words().is_empty() {
                    self.store.run(Command::CloseDraft);
                }
            }
            // What is asked is answered in the row, so the line is kept first; a gap is filled where it is.
            "Tab" if !event.shift_key() && !event.is_composing() && self.meaning.is_asked() => {
                if let Some(words) = self.take() {
                    event.prevent_default();
                    event.stop_propagation();
                    self.store.run(Command::AddStep { after: self.after.get_value(), words });
                }
            }
            "Tab" if !event.shift_key() && self.enters_gap() => event.prevent_default(),
            "." if event.ctrl_key() && !event.alt_key() => {
                event.prevent_default();
                self.ask(event.target());
            }
            "ArrowUp" if self.after.with_value(Option::is_none) && self.words().is_empty() => {
                event.prevent_default();
                self.store.run(Command::SelectLast);
            }
            "Escape" if self.after.with_value(Option::is_some) => {
                event.stop_propagation();
                self.store.run(Command::CloseDraft);
            }
            "Escape" if !event.is_composing() && !self.store.is_holding() => self.takes_back(event),
            _ => {}
        }
    }

    /// Takes back what has been typed in the line at the end since the keyboard came, which no undo holds; so the next
    /// Esc brings it again.
    fn takes_back(self, event: &KeyboardEvent) {
        let words = self.store.line(self.line).get_untracked();
        if let Some(words) = self.back.instead_of(words) {
            event.prevent_default();
            event.stop_propagation();
            self.store.set_line(self.line, words);
        }
    }

    /// Goes to the first thing that a line with a leading word does not say yet; says whether there is one.
    fn enters_gap(self) -> bool {
        !gaps_of(&self.words()).is_empty() && enter_first(self.line)
    }

    /// Keeps the line as it is; what is picked goes into the step that it became.
    fn ask(self, field: Option<web_sys::EventTarget>) {
        if let Some((at, words)) = keys::asked_at(field).and_then(|at| Some((at, self.take()?))) {
            self.store.run(Command::KeepAndAsk { after: self.after.get_value(), words, at });
        }
    }

    /// Several lines become steps at once; one line goes into the field like any text.
    fn pasted(self, event: &web_sys::ClipboardEvent) {
        let is_empty = self.words().is_empty();
        // Steps that were copied come with all that they mean.
        if let Some(steps) = copied_steps(event).filter(|_| is_empty && !self.is_plain.get_value())
            && self.store.paste_steps(self.after.get_value(), &steps)
        {
            event.prevent_default();
            return;
        }
        if let Some(text) = several_lines(event).filter(|_| is_empty) {
            event.prevent_default();
            let after = self.after.get_value();
            self.store.run(if self.is_plain.get_value() {
                Command::AddPlain { after, text }
            } else {
                Command::AddStep { after, words: text }
            });
        }
    }

    fn words(self) -> String {
        self.store.line(self.line).with_untracked(|words| words.trim().to_owned())
    }

    /// The words, which leaves the line empty; none if there are none. Where nothing can be changed they stay.
    fn take(self) -> Option<String> {
        let typed = self.words();
        if !typed.is_empty() && !self.store.seat().only_shows().get_untracked() {
            self.store.set_line(self.line, String::new());
            self.back.enters(String::new());
        }
        (!typed.is_empty()).then_some(typed)
    }
}
