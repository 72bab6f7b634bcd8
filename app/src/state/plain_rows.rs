//! Lines of a text as steps of words that nobody has read.

use super::editor_store::EditorStore;
use super::ids::RandomIds;
use super::rereading;
use leptos::prelude::*;
use procedures_schema::edit::Edit;
use procedures_schema::format::{has_room, have_room};
use procedures_schema::model::{Id, IdSource, Procedure, Stage, Step};
use std::sync::Arc;

/// The lines of a text, each as a step at a position of a procedure.
pub(super) fn plain_steps(document: &Procedure, at: usize, text: &str) -> Vec<Arc<Step>> {
    let beside = at.checked_sub(1).and_then(|before| document.steps.get(before)).or(document.steps.get(at));
    let stage = beside.map_or(Stage::Prepare, |step| step.stage.clone());
    let lines = text.lines().map(str::trim).filter(|line| !line.is_empty());
    lines.map(|words| Arc::new(Step::new(RandomIds.next_id("step"), stage.clone(), words))).collect()
}

impl EditorStore {
    /// Puts the lines of a text below a step, or at the end, each as a step of words that nobody has read.
    pub(super) fn add_plain(self, after: Option<&Id>, text: &str) {
        let at = rereading::place_after(&self.document_now(), after);
        self.add_plain_at(at, text);
    }

    /// The same at a position.
    pub(super) fn add_plain_at(self, at: usize, text: &str) {
        let document = self.document_now();
        let at = at.min(document.steps.len());
        let steps = plain_steps(&document, at, text);
        let mut lines = text.lines().enumerate().map(|(at, line)| (at + 1, line));
        if let Err(why) = have_room(&mut lines).and_then(|()| has_room(&document, steps.len(), 0)) {
            self.notice().set(Some(format!("Nothing was pasted: {why}.")));
            return;
        }
        let steps = steps.into_iter().enumerate();
        let edits: Vec<Edit> =
            steps.map(|(offset, step)| Edit::InsertStep { at: at + offset, step }).collect();
        self.edit(&edits, &format!("paste {} steps as words", edits.len()), None);
    }
}
