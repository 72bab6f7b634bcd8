//! Lines that are more than a sentence: several at once, and those that begin with a leading word.
//!
//! A pasted text is one entry of undo. Nothing of it is dropped: what was not understood stays as words, and
//! the steps that want a look are listed.

use super::editor_store::EditorStore;
use super::ids::RandomIds;
use super::making::Act;
use super::rereading;
use super::together::with_neighbours;
use leptos::prelude::*;
use procedures_schema::capture::{
    Beside, Leading, apply_leading, leading, number_of_step, parts_of_step, question_of,
    question_with_answers,
};
use procedures_schema::edit::{Edit, Scope};
use procedures_schema::model::{Id, IdSource, Kit, Procedure, Stage, Step, link_to};
use std::sync::Arc;

impl EditorStore {
    /// Keeps what was typed or pasted into the line below a step, or at the end. Gives the id of the step that
    /// the line became, behind which writing goes on; none for several lines and for what went into another step.
    pub(super) fn keep_line(self, after: Option<&Id>, text: &str) -> Option<Id> {
        let document = self.document_now();
        let at = rereading::place_after(&document, after);
        if text.lines().filter(|line| !line.trim().is_empty()).count() > 1 {
            self.paste_block(at, text);
            return None;
        }
        if let Some(lines) = question_with_answers(text) {
            return self.keep_question(after, &lines);
        }
        if let Some(leading) = leading(text.trim()) {
            match self.keep_leading(&document, at, &leading, None) {
                Ok(read) => return read,
                Err(reason) => self.notice().set(Some(format!("Kept as words: {reason}."))),
            }
        }
        if let Some(waiting) = waiting_at(&document, at) {
            return self.fill(at - 1, waiting, text).then(|| waiting.id.clone());
        }
        let id = RandomIds.next_id("step");
        self.insert_made(at, &id, text).then_some(id)
    }

    /// Keeps a question and its answers, one line each, as one entry of undo. Gives the id of the last step.
    fn keep_question(self, after: Option<&Id>, lines: &[String]) -> Option<Id> {
        let mut last = after.cloned();
        let act = Act::about(&RandomIds.next_id("act"), "add a question".to_owned());
        for leading in lines.iter().filter_map(|line| leading(line)) {
            let document = self.document_now();
            let at = rereading::place_after(&document, last.as_ref());
            match self.keep_leading(&document, at, &leading, Some(&act)) {
                Ok(kept) => last = kept.or(last),
                Err(reason) => self.notice().set(Some(format!("Not kept: {reason}."))),
            }
        }
        self.close_group();
        last
    }

    /// Adds what a leading word says to the step before; a message begins the next one.
    /// Gives the id of the last step that came of it.
    fn keep_leading(
        self,
        document: &Arc<Procedure>,
        at: usize,
        leading: &Leading,
        act: Option<&Act>,
    ) -> Result<Option<Id>, String> {
        let numbered = numbered(document, at, leading);
        let leading = numbered.as_ref().unwrap_or(leading);
        let before = match leading {
            Leading::If { .. } => asked_before(document, at),
            _ => at.checked_sub(1).and_then(|before| document.steps.get(before)),
        };
        let (step, label, is_new) = match (leading, before) {
            (Leading::Message(_), Some(step)) if is_waiting(step) => {
                (Step::clone(step), format!("add a message to step {at}"), false)
            }
            (Leading::Wait { .. } | Leading::Ask { .. }, Some(step)) if is_waiting(step) => {
                (Step::clone(step), format!("add step {at}"), false)
            }
            (Leading::Message(_) | Leading::Wait { .. } | Leading::Ask { .. }, _) | (_, None) => {
                let stage = before.map_or(Stage::Prepare, |step| step.stage.clone());
                let when = self.branch_at(document, at);
                let step = Step { when, ..Step::new(RandomIds.next_id("step"), stage, "") };
                (step, format!("add step {}", at + 1), true)
            }
            (Leading::If { .. }, Some(step)) => (Step::clone(step), format!("add step {}", at + 1), false),
            (_, Some(step)) => (Step::clone(step), format!("add to step {at}"), false),
        };
        let applied = apply_leading(&step, leading, &mut RandomIds).map_err(|refused| refused.reason)?;
        let mut edits: Vec<Edit> = with_beside(document, &applied.beside).into_iter().collect();
        let kept = Arc::new(applied.step);
        let id = kept.id.clone();
        if is_new {
            edits.push(Edit::InsertStep { at, step: kept });
        } else if step != *kept {
            edits.push(Edit::SetStep { step: kept });
        }
        edits = with_neighbours(document, edits, &id);
        let behind = if is_new { at + 1 } else { at };
        let read: Vec<Id> = applied.further.iter().map(|step| step.id.clone()).collect();
        for (offset, further) in applied.further.into_iter().enumerate() {
            edits.push(Edit::InsertStep { at: behind + offset, step: Arc::new(further) });
        }
        let own = Act::about(&id, label);
        let shared = act.unwrap_or(&own);
        if self.edit(&edits, &shared.label, shared.group.as_deref()) {
            self.read_further(&read, shared);
            if act.is_none() {
                self.close_group();
            }
        }
        Ok(read.into_iter().next_back().or_else(|| is_new.then_some(id)))
    }

    /// Reads the words of steps that leading words have added.
    fn read_further(self, steps: &[Id], act: &Act) {
        for step in steps {
            self.make_things(step, &[], Some(act));
        }
    }

    /// Takes the lines with leading words out of the words of a step that has been typed, and applies them. If
    /// one cannot be held, all stays as it is and the reason is told.
    pub(super) fn take_leading_lines(self, id: &Id) {
        let judged = self.judged_now();
        let document = &judged.document;
        let Some(position) = document.position(id) else { return };
        let Some(before) = document.steps.get(position) else { return };
        let parts = parts_of_step(&before.words);
        if !before.words.contains('\n') || parts.leading.is_empty() {
            return;
        }
        let mut step = rereading::reread(&judged, position, before, before, &parts.sentence);
        let (mut beside, mut further) = (Vec::new(), Vec::new());
        for leading in &parts.leading {
            match apply_leading(&step, leading, &mut RandomIds) {
                Ok(applied) => {
                    step = applied.step;
                    beside.extend(applied.beside);
                    further.extend(applied.further);
                }
                Err(refused) => {
                    self.notice().set(Some(format!("Kept as words: {}.", refused.reason)));
                    return;
                }
            }
        }
        let mut edits: Vec<Edit> = with_beside(document, &beside).into_iter().collect();
        edits.push(Edit::SetStep { step: Arc::new(step) });
        edits = with_neighbours(document, edits, id);
        let read: Vec<Id> = further.iter().map(|step| step.id.clone()).collect();
        for (offset, step) in further.into_iter().enumerate() {
            edits.push(Edit::InsertStep { at: position + 1 + offset, step: Arc::new(step) });
        }
        let act = Act::about(id, format!("add to step {}", position + 1));
        if self.edit(&edits, &act.label, act.group.as_deref()) {
            self.read_further(&read, &act);
            self.close_group();
        }
    }

    /// Gives words to a step that has a message and no words yet.
    fn fill(self, position: usize, waiting: &Step, words: &str) -> bool {
        let step = Arc::new(Step { words: words.to_owned(), ..waiting.clone() });
        let act = Act::about(&waiting.id, format!("add step {}", position + 1));
        let done = self.edit(&[Edit::SetStep { step }], &act.label, act.group.as_deref());
        if done {
            self.make_things(&waiting.id, &[], Some(&act));
            self.close_group();
        }
        done
    }
}

/// The step behind which an answer at a position goes on: the nearest before it that asks, or that is done on an answer;
/// else the step before it.
fn asked_before(document: &Procedure, at: usize) -> Option<&Arc<Step>> {
    let before = document.steps.get(..at)?;
    let is_asked = |step: &&Arc<Step>| question_of(step).is_some();
    before.iter().rev().find(is_asked).or(before.last())
}

/// A running wait that names a later step by its number, with that step; none, if it is none or there is no such step.
fn numbered(document: &Procedure, at: usize, leading: &Leading) -> Option<Leading> {
    let Leading::Start { duration, before, until: None } = leading else { return None };
    let position = number_of_step(before)?.checked_sub(1).filter(|position| *position >= at)?;
    let until = document.steps.get(position)?.id.clone();
    let before = link_to(until.as_str());
    Some(Leading::Start { duration: duration.clone(), before, until: Some(until) })
}

/// The step before a position, if it is a message that waits for its step.
fn waiting_at(document: &Procedure, at: usize) -> Option<&Step> {
    let before = at.checked_sub(1).and_then(|before| document.steps.get(before));
    before.filter(|step| is_waiting(step)).map(|step| &**step)
}

fn is_waiting(step: &Step) -> bool {
    step.words.is_empty() && step.actions.is_empty() && !step.messages.is_empty()
}

/// The edit that takes what belongs to the document and to no step.
pub(super) fn with_beside(document: &Procedure, beside: &[Beside]) -> Option<Edit> {
    let mut scope = Scope::of(document);
    for one in beside {
        match one {
            Beside::Question(question) => scope.questions.push(question.clone()),
            Beside::Kit(kit) => join(&mut scope.kit, kit),
            Beside::Later(later) => scope.later.push(later.clone()),
        }
    }
    (!beside.is_empty()).then(|| Edit::SetScope(Box::new(scope)))
}

fn join(kit: &mut Kit, more: &Kit) {
    kit.tools.extend(more.tools.iter().cloned());
    kit.instruments.extend(more.instruments.iter().cloned());
    kit.consumables.extend(more.consumables.iter().cloned());
    kit.protection.extend(more.protection.iter().cloned());
    kit.spares.extend(more.spares.iter().cloned());
}
