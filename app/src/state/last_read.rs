//! The step that was read from its words last. At the same key the line shows what it heard, and at the next
//! one asks whether the step is still as it was read: neither has to read it again.

use super::judged::Judged;
use procedures_schema::capture::LineReading;
use procedures_schema::model::{ApplianceMap, Step};
use procedures_schema::simulate::Trace;
use std::sync::Arc;

/// What was read of a step, and in which state.
#[derive(Clone)]
pub(super) struct LastRead {
    step: Arc<Step>,
    position: usize,
    map: Arc<ApplianceMap>,
    trace: Arc<Trace>,
    reading: LineReading,
}

impl LastRead {
    /// A reading of a step at a position.
    pub(super) fn new(judged: &Judged, position: usize, step: Arc<Step>, reading: LineReading) -> Self {
        Self { step, position, map: judged.document.map.clone(), trace: judged.trace.clone(), reading }
    }

    /// The reading, if it is of this very step in this very state.
    pub(super) fn of(&self, judged: &Judged, position: usize, step: &Arc<Step>) -> Option<&LineReading> {
        let is_same = Arc::ptr_eq(&self.step, step)
            && self.position == position
            && Arc::ptr_eq(&self.map, &judged.document.map)
            && Arc::ptr_eq(&self.trace, &judged.trace);
        is_same.then_some(&self.reading)
    }
}
