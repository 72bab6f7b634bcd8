//! The step that was read from its words last. At the same key the line shows what it heard, and at the next
//! one asks whether the step is still as it was read: neither has to read it again.

use super::judged::Judged;
use procedures_schema::capture::{Here, LineReading, Making, SaidOtherwise};
use procedures_schema::model::{Action, Procedure, Step};
use procedures_schema::simulate::begins_alike;
use std::sync::Arc;

/// What was read of a step, and in which document.
#[derive(Clone)]
pub(super) struct LastRead {
    step: Arc<Step>,
    position: usize,
    document: Arc<Procedure>,
    read: Read,
    /// The step with which typing began, and what its words are read as.
    first: Option<(Arc<Step>, Vec<Action>)>,
}

/// What the words of a step are read as.
#[derive(Clone)]
pub(super) struct Read {
    /// What is true where the step stands.
    pub(super) here: Arc<Here>,
    /// Against the map as it is; without what the writer has declined.
    pub(super) reading: LineReading,
    /// What the words would make, if anybody asked.
    pub(super) making: Option<Making>,
    /// What the words state otherwise than the map of what the step did.
    pub(super) otherwise: SaidOtherwise,
}

impl LastRead {
    /// A reading of a step at a position.
    pub(super) fn new(judged: &Judged, position: usize, step: Arc<Step>, read: Read) -> Self {
        Self { step, position, document: judged.document.clone(), read, first: None }
    }

    /// With what the step is read as with which typing began, if that is known.
    pub(super) fn with_first(mut self, first: Arc<Step>, read: Option<Vec<Action>>) -> Self {
        self.first = read.map(|read| (first, read));
        self
    }

    pub(super) fn read(&self) -> &Read {
        &self.read
    }

    /// What the step is read as with which typing began.
    pub(super) fn of_first(&self, first: &Arc<Step>) -> Option<&Vec<Action>> {
        self.first.as_ref().filter(|(known, _)| Arc::ptr_eq(known, first)).map(|(_, read)| read)
    }

    /// The reading, if it is of this very step in the same state.
    pub(super) fn of(&self, judged: &Judged, position: usize, step: &Arc<Step>) -> Option<&Read> {
        let is_same = Arc::ptr_eq(&self.step, step)
            && self.position == position
            && self.document.census == judged.document.census
            && begins_alike(&self.document, &judged.document, position);
        is_same.then_some(&self.read)
    }
}
