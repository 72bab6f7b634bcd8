//! What is open about the words of a step: where more than one thing can be meant and nobody has said which.
//!
//! The line asks and never guesses. An answer is kept as an action of the step, with the words that say it;
//! a doubt that is declined stays text for good.

use super::attention::Focus;
use super::editor_store::EditorStore;
use super::rereading;
use leptos::prelude::*;
use procedures_schema::capture::Doubt;
use procedures_schema::edit::Edit;
use procedures_schema::model::{Action, Id, Procedure, Span, Step};
use std::sync::Arc;

/// Where the keyboard goes once nothing is open any more.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AskedFrom {
    /// To the line at the end.
    LastLine,
    /// To a line below the step.
    LineBelow,
}

impl EditorStore {
    /// What is open about the words of a step.
    pub fn doubts(self, step: Id) -> Memo<Vec<Doubt>> {
        let judged = self.judged();
        Memo::new(move |_| judged.with(|judged| open_doubts(judged, &step)))
    }

    /// Goes to the first open doubt of a step, if it has one.
    pub(super) fn ask(self, step: &Id, from: AskedFrom) -> bool {
        let is_open = !open_doubts(&self.judged_now(), step).is_empty();
        if is_open {
            self.select(Some(step.clone()));
            self.asked_from().set_value(Some(from));
            self.look_at(Focus::Choice(step.clone()));
        }
        is_open
    }

    /// Takes a reading of words in doubt: one of its choices, or none of them.
    pub(super) fn settle_doubt(self, id: &Id, doubt: &Doubt, choice: Option<usize>) {
        let document = self.document_now();
        let Some((position, before)) = step_of(&document, id) else { return };
        let mut step = Step::clone(before);
        let label = if let Some(choice) = choice.and_then(|choice| doubt.choices.get(choice)) {
            add_in_order(&mut step.actions, choice.action.clone());
            format!("say that step {} means the {}", position + 1, choice.name)
        } else {
            step.declined.push(doubt.span.of(&step.words).to_owned());
            format!("leave words of step {} as text", position + 1)
        };
        if self.edit(&[Edit::SetStep { step: Arc::new(step) }], &label, None) {
            self.ask_on(id);
        }
    }

    /// Goes to the next doubt, or back to where the question came from.
    pub(super) fn ask_on(self, step: &Id) {
        if !open_doubts(&self.judged_now(), step).is_empty() {
            self.look_at(Focus::Choice(step.clone()));
            return;
        }
        self.leave_doubts(step);
    }

    /// Leaves what is open as it is.
    pub(super) fn leave_doubts(self, step: &Id) {
        match self.asked_from().try_update_value(Option::take).flatten() {
            Some(AskedFrom::LastLine) => self.look_at(Focus::LastLine),
            Some(AskedFrom::LineBelow) => self.open_draft(step.clone()),
            None => self.look_at(Focus::Row(step.clone())),
        }
    }
}

fn step_of<'p>(document: &'p Procedure, id: &Id) -> Option<(usize, &'p Step)> {
    let position = document.position(id)?;
    document.steps.get(position).map(|step| (position, &**step))
}

/// The doubts of the words that no action says and nobody has declined.
fn open_doubts(judged: &super::judged::Judged, id: &Id) -> Vec<Doubt> {
    let Some((position, step)) = step_of(&judged.document, id) else { return Vec::new() };
    let is_said =
        |span: Span| step.actions.iter().flat_map(|action| &action.says).any(|said| meet(*said, span));
    let is_declined = |span: Span| {
        let text = span.of(&step.words);
        step.declined.iter().any(|known| known.eq_ignore_ascii_case(text))
    };
    let mut doubts = rereading::reading(judged, position, &step.stage, &step.words).doubts;
    doubts.retain(|doubt| !is_said(doubt.span) && !is_declined(doubt.span));
    doubts
}

fn meet(one: Span, other: Span) -> bool {
    one.0 < other.1 && other.0 < one.1
}

/// Puts an action among the others by where its words stand.
fn add_in_order(actions: &mut Vec<Action>, action: Action) {
    let from = |action: &Action| action.says.iter().map(|span| span.0).min();
    let at = actions.iter().position(|other| from(other) > from(&action)).unwrap_or(actions.len());
    actions.insert(at, action);
}
