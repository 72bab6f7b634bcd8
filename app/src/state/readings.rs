//! Other readings of words, asked for by the writer: at the caret, of a marked stretch, or of an action.
//!
//! The reading that gives way stays among those that are offered, since they are worked out from the words; and
//! what was declined for good is read again when it is picked.

use super::attention::Focus;
use super::doubts::{AskedFrom, add_in_order, meet, step_of};
use super::editor_store::EditorStore;
use super::judged::Judged;
use super::rereading;
use leptos::prelude::*;
use procedures_schema::capture::{called, readings_at};
use procedures_schema::edit::Edit;
use procedures_schema::model::{Action, Id, Span, Step, typed_over};
use std::sync::Arc;

/// Where readings are asked for.
#[derive(Clone, Debug, PartialEq)]
pub enum AskedAt {
    /// In the words as people read them: those before the caret, and those that are marked.
    Words {
        /// Up to the caret, or to what is marked.
        head: String,
        /// What is marked; nothing for a caret.
        marked: String,
    },
    /// At an action of the step, by its position.
    Action(usize),
}

/// What is asked, while it is.
#[derive(Clone, Debug, PartialEq)]
pub struct Asking {
    step: Id,
    span: Span,
    action: Option<usize>,
    back: Focus,
}

/// What the words can be read as.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Offered {
    /// The words.
    pub said: String,
    /// The readings, and whether one holds now.
    pub choices: Vec<(Action, bool)>,
    /// The action that is none if the words stay text.
    pub now: Option<usize>,
}

impl Offered {
    fn of(judged: &Judged, asking: &Asking) -> Option<Self> {
        let (position, step) = step_of(&judged.document, &asking.step)?;
        let (map, place) = (&judged.document.map, rereading::place_before(position));
        let read = readings_at(&step.words, asking.span, map, &judged.trace, place, &step.stage);
        let is_now = |action: &Action| {
            let held = replaced(step, asking, action).and_then(|at| step.actions.get(at));
            held.is_some_and(|held| held.verb == action.verb && held.on == action.on)
        };
        let choices: Vec<(Action, bool)> =
            read.actions.into_iter().map(|action| (action.clone(), is_now(&action))).collect();
        let first = choices.iter().find(|(_, is_now)| *is_now).or(choices.first());
        let now = first.map_or(asking.action, |(action, _)| replaced(step, asking, action));
        Some(Self { said: read.span.of(&step.words).to_owned(), choices, now })
    }
}

/// The action in whose place another reading would come: the one that was asked about, else one of the words at
/// the caret, else one that is said by the same words.
fn replaced(step: &Step, asking: &Asking, by: &Action) -> Option<usize> {
    let caret = asking.span;
    let at_caret =
        |said: &Span| meet(*said, caret) || (caret.0 == caret.1 && said.0 <= caret.0 && caret.0 <= said.1);
    let like = |action: &Action| action.verb == by.verb && action.on == by.on;
    let at = |test: &dyn Fn(&Action) -> bool| step.actions.iter().position(test);
    asking
        .action
        .filter(|at| *at < step.actions.len())
        .or_else(|| at(&|action| action.says.iter().any(at_caret) && like(action)))
        .or_else(|| at(&|action| action.says.iter().any(at_caret)))
        .or_else(|| at(&|action| action.says.iter().any(|said| by.says.iter().any(|own| meet(*said, *own)))))
}

/// A key that was tapped says nothing of a place: where the caret stands at words without any reading, the last
/// action before it is meant.
fn beside_the_point(judged: &Judged, step: &Step, asking: Asking) -> Asking {
    let is_caret = asking.action.is_none() && asking.span.0 == asking.span.1;
    if !is_caret || Offered::of(judged, &asking).is_none_or(|offered| !offered.choices.is_empty()) {
        return asking;
    }
    let said = |action: &Action| action.says.iter().copied().rfind(|said| said.1 <= asking.span.0);
    let all = step.actions.iter().enumerate();
    let before = all.filter_map(|(at, action)| Some((said(action)?, at))).max_by_key(|(said, _)| said.1);
    match before {
        Some((span, at)) => Asking { span, action: Some(at), ..asking },
        None => asking,
    }
}

impl EditorStore {
    /// What is offered for the words of a step that are asked about.
    pub fn offered(self, step: Id) -> Memo<Option<Offered>> {
        let (asking, judged) = (self.asking(), self.judged());
        Memo::new(move |_| {
            let asking = asking.get().filter(|asking| asking.step == step)?;
            judged.with(|judged| Offered::of(judged, &asking))
        })
    }

    /// Shows what the words at a place can be read as.
    pub(super) fn ask_readings(self, id: &Id, at: &AskedAt) {
        // What was typed is read to its end first, so that what it names is there.
        self.typing(false);
        let document = self.document_now();
        let Some((_, step)) = step_of(&document, id) else { return };
        let asking = match at {
            AskedAt::Action(action) => {
                let said = step.actions.get(*action).and_then(|action| action.says.first().copied());
                let span = said.unwrap_or_default();
                Asking {
                    step: id.clone(),
                    span,
                    action: Some(*action),
                    back: Focus::Token(id.clone(), *action),
                }
            }
            AskedAt::Words { head, marked } => {
                let caret = u32::try_from(head.encode_utf16().count()).ok();
                let kept = |shown: &str| typed_over(&step.words, shown, |step| document.link_name(step));
                let points = |text: &str| u32::try_from(text.chars().count()).unwrap_or(u32::MAX);
                let (from, to) = (kept(head), kept(&format!("{head}{marked}")));
                let is_inside = step.words.starts_with(&from) && step.words.starts_with(&to);
                let span = if is_inside { Span(points(&from), points(&to)) } else { Span::default() };
                Asking { step: id.clone(), span, action: None, back: Focus::Words(id.clone(), caret) }
            }
        };
        let asking = beside_the_point(&self.judged_now(), step, asking);
        self.asking().set(Some(asking));
        self.look_at(Focus::Reading(id.clone()));
    }

    /// Keeps a line as a step and shows what its words can be read as.
    pub(super) fn keep_and_ask(self, after: Option<&Id>, words: &str, at: &AskedAt) {
        let Some(id) = self.keep_line(after, words) else { return };
        self.select(Some(id.clone()));
        self.ask_readings(&id, at);
        let from = if after.is_some() { AskedFrom::LineBelow } else { AskedFrom::LastLine };
        self.asked_from().set_value(Some(from));
    }

    /// Takes one of the readings.
    pub(super) fn read_as(self, id: &Id, choice: usize) {
        let judged = self.judged_now();
        let Some(asking) = self.asking().get_untracked() else { return };
        let offered = Offered::of(&judged, &asking).filter(|_| asking.step == *id);
        let chosen = offered.and_then(|mut offered| {
            (choice < offered.choices.len()).then(|| offered.choices.swap_remove(choice))
        });
        let (Some((action, is_now)), Some((position, step))) = (chosen, step_of(&judged.document, id)) else {
            return;
        };
        if !is_now {
            let (mut step, picked) = (Step::clone(step), action.clone());
            let said = action.says.first().map(|said| said.of(&step.words).to_owned());
            step.declined.retain(|known| !said.as_ref().is_some_and(|said| said.eq_ignore_ascii_case(known)));
            match replaced(&step, &asking, &action).and_then(|at| step.actions.get_mut(at)) {
                Some(held) => *held = action,
                None => add_in_order(&mut step.actions, action),
            }
            let label = format!("read step {} otherwise", position + 1);
            let done = self.edit(&[Edit::SetStep { step: Arc::new(step) }], &label, None);
            if done && self.offer_phrase(id, &picked, &asking) {
                return;
            }
        }
        self.leave_readings(&asking);
    }

    /// Leaves the readings as they are.
    pub(super) fn close_readings(self) {
        if let Some(asking) = self.asking().get_untracked() {
            self.leave_readings(&asking);
        }
    }

    pub(super) fn leave_readings(self, asking: &Asking) {
        self.asking().set(None);
        if self.asked_from().with_value(Option::is_some) {
            self.leave_doubts(&asking.step);
            return;
        }
        match asking.back.clone() {
            Focus::Words(step, caret) => self.edit_words(step, caret),
            back => self.look_at(back),
        }
    }

    /// What the words of an action call its only thing, if that is no name of it yet.
    pub fn called(self, id: &Id, at: usize) -> Option<String> {
        let document = self.document_now();
        let (_, step) = step_of(&document, id)?;
        called(&step.words, step.actions.get(at)?, &document.map, &step.stage)
    }
}
