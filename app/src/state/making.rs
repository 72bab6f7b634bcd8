//! Things that a sentence names for the first time: made together with the step, as one entry of undo.
//!
//! Nothing is made while words are typed, for half a word is no name; a line is read to its end when it is
//! kept, or when the words of a step are left.

use super::editor_store::EditorStore;
use super::ids::RandomIds;
use super::judged::Judged;
use super::rereading;
use super::together::with_neighbours;
use leptos::prelude::*;
use procedures_schema::capture::{
    Answer, Given, Here, Making, SaidOtherwise, as_was, line_making_here, stage_between,
};
use procedures_schema::edit::Edit;
use procedures_schema::model::{Id, IdSource, Stage, Step};
use std::sync::Arc;

/// What was made last, and for which step.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fresh {
    /// The step whose words name it.
    pub step: Id,
    /// The names of what was made.
    pub names: Vec<String>,
    /// The thing that the words name first.
    pub thing: Id,
}

/// An act of several edits, which is one entry of undo.
pub(super) struct Act {
    /// What undo calls it.
    pub(super) label: String,
    /// The group that its edits share, if it has several.
    pub(super) group: Option<String>,
}

impl Act {
    /// An act that is one edit.
    pub(super) fn alone(label: String) -> Self {
        Self { label, group: None }
    }

    /// An act of several edits about a step.
    pub(super) fn about(step: &Id, label: String) -> Self {
        let group = Some(format!("{label}: {step}"));
        Self { label, group }
    }
}

/// Reads the words of a step at a position of the document and makes what they name for the first time.
pub fn making(
    judged: &Judged,
    position: usize,
    step: &Step,
    answers: &[Answer],
    ids: &mut dyn IdSource,
) -> Making {
    making_here(judged, &rereading::here(judged, position), position, step, answers, ids)
}

/// As [`making`] where it is known what is true there.
fn making_here(
    judged: &Judged,
    here: &Here,
    position: usize,
    step: &Step,
    answers: &[Answer],
    ids: &mut dyn IdSource,
) -> Making {
    let Step { stage, words, actions, .. } = step;
    let map = &judged.document.map;
    let given = Given { answers, ..rereading::given_before(&judged.document, position) };
    match SaidOtherwise::of(words, actions.iter(), map, stage).as_said(map) {
        None => line_making_here(words, map, here.clone(), stage, given, ids),
        Some(said) => {
            let made = line_making_here(words, &said, here.clone(), stage, given, ids);
            Making { map: as_was(&made.map, &said, map), ..made }
        }
    }
}

/// As [`making`], for a new step: its stage follows from what it does, and what it does is read in its stage.
pub fn making_new(judged: &Judged, at: usize, words: &str, ids: &mut dyn IdSource) -> (Making, Stage) {
    making_new_here(judged, &rereading::here(judged, at), at, words, ids)
}

/// As [`making_new`] where it is known what is true there.
pub(super) fn making_new_here(
    judged: &Judged,
    here: &Here,
    at: usize,
    words: &str,
    ids: &mut dyn IdSource,
) -> (Making, Stage) {
    let steps = &judged.document.steps;
    let before = at.checked_sub(1).and_then(|before| steps.get(before)).map(|step| &step.stage);
    let behind = steps.get(at).map(|step| &step.stage);
    let stage = before.or(behind).cloned().unwrap_or(Stage::Prepare);
    let mut step = Step::new(Id::new(""), stage, words);
    let mut made = making_here(judged, here, at, &step, &[], ids);
    let own = stage_between(&made.reading.actions, before, behind);
    if own != step.stage {
        step.stage = own;
        made = making_here(judged, here, at, &step, &[], ids);
    }
    (made, step.stage)
}

/// The edit that puts what was made on the map, before the one of the step.
pub(super) fn with_things(making: &Making, step: Edit) -> Vec<Edit> {
    let map = making.changes_map().then(|| Edit::SetMap(making.map.clone()));
    map.into_iter().chain([step]).collect()
}

impl EditorStore {
    /// Adds a step with what its words name for the first time.
    pub(super) fn insert_made(self, at: usize, id: &Id, words: &str) -> bool {
        let judged = self.judged_now();
        let (making, stage) = making_new(&judged, at, words, &mut RandomIds);
        let actions = making.reading.actions.clone();
        let when = self.branch_at(&judged.document, at);
        let step = Arc::new(Step { actions, when, ..Step::new(id.clone(), stage, words) });
        let mut edits = with_things(&making, Edit::InsertStep { at, step });
        // A step with an open question is read once more when it is answered.
        if !making.has_answers() {
            edits = with_neighbours(&judged.document, edits, id);
        }
        let done = self.edit(&edits, &format!("add step {}", at + 1), None);
        if done {
            self.tell_made(id, &making);
        }
        done
    }

    /// Makes what the words of a step name, once they have been typed; keeps actions that were set by hand.
    pub(super) fn make_things(self, id: &Id, answers: &[Answer], act: Option<&Act>) -> bool {
        let judged = self.judged_now();
        let Some(position) = judged.document.position(id) else { return false };
        let Some(step) = judged.document.steps.get(position) else { return false };
        if !rereading::is_as_read(&judged, position, step) {
            return false;
        }
        let mut making = making(&judged, position, step, answers, &mut RandomIds);
        rereading::drop_declined(&mut making.reading.actions, &step.declined, &step.words);
        if !making.changes_map() && making.reading.actions == step.actions {
            return false;
        }
        let step = Arc::new(Step { actions: making.reading.actions.clone(), ..Step::clone(step) });
        let own = || format!("make what step {} names", position + 1);
        let label = act.map_or_else(own, |act| act.label.clone());
        let mut edits = with_things(&making, Edit::SetStep { step });
        if !making.has_answers() {
            edits = with_neighbours(&judged.document, edits, id);
        }
        let done = self.edit(&edits, &label, act.and_then(|act| act.group.as_deref()));
        if done {
            self.tell_made(id, &making);
        }
        done
    }

    fn tell_made(self, step: &Id, making: &Making) {
        let names: Vec<String> = making.made.iter().map(|made| made.name.clone()).collect();
        let first = making.made.iter().find(|made| made.span.is_some()).or(making.made.first());
        self.fresh().set(first.map(|made| Fresh { step: step.clone(), names, thing: made.thing.clone() }));
    }
}
