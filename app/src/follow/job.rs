//! A job: one following of one procedure, as data.
//!
//! What was done, when, with which readings; nothing that can be worked out from that.

use procedures_schema::model::Id;
use procedures_schema::units::Measured;
use serde::{Deserialize, Serialize};

/// One following of one procedure.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Job {
    /// Identity.
    pub id: Id,
    /// When it began.
    pub begun_ms: u64,
    /// Who goes on with a rejected procedure, and why.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub all_the_same: Option<String>,
    /// The steps done, in order.
    pub ticks: Vec<Tick>,
    /// What has been done of the step that is not ticked yet.
    pub progress: Progress,
}

/// A step that was done.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Tick {
    /// The step.
    pub step: Id,
    /// When.
    pub at_ms: u64,
    /// What was read, taken and waited for it.
    pub done: Progress,
}

/// What has been done of one step.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Progress {
    /// Positions of the messages and holds that were acknowledged.
    #[serde(default)]
    pub acknowledged: Vec<Acknowledged>,
    /// Readings, in the order in which they were taken; also those that were out.
    #[serde(default)]
    pub taken: Vec<Taken>,
    /// Waits that were begun.
    #[serde(default)]
    pub waits: Vec<Waiting>,
}

/// Something that was acknowledged.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Acknowledged {
    /// The message at this position of the step.
    Message(usize),
    /// The hold that is the action at this position.
    Hold(usize),
}

/// A reading that was taken.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Taken {
    /// The action that asks for it, by position.
    pub action: usize,
    /// The reading of that action, by position.
    pub reading: usize,
    /// What was read, in words.
    pub what: String,
    /// The figure, or none for something seen.
    pub value: Option<Measured>,
    /// Whether it was within the limits, or seen.
    pub is_inside: bool,
    /// Whether it is being read again; it stays in the record.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub is_read_again: bool,
    /// When.
    pub at_ms: u64,
}

/// A wait that was begun.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Waiting {
    /// The action, by position.
    pub action: usize,
    /// When it began.
    pub from_ms: u64,
}

impl Job {
    /// A job that begins.
    pub fn new(id: Id, begun_ms: u64, all_the_same: Option<String>) -> Self {
        Self { id, begun_ms, all_the_same, ticks: Vec::new(), progress: Progress::default() }
    }

    /// The job with a step ticked.
    #[must_use]
    pub fn ticked(mut self, step: Id, at_ms: u64) -> Self {
        let done = std::mem::take(&mut self.progress);
        self.ticks.push(Tick { step, at_ms, done });
        self
    }

    /// The job without its last tick; what had been read and taken for that step stays.
    #[must_use]
    pub fn unticked(mut self) -> Self {
        if let Some(tick) = self.ticks.pop() {
            self.progress = tick.done;
        }
        self
    }
}

#[cfg(test)]
mod tests {
    use super::{Acknowledged, Id, Job};
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test]
    fn taking_a_tick_back_keeps_what_was_read() {
        let mut job = Job::new(Id::new("job"), 0, None);
        job.progress.acknowledged.push(Acknowledged::Message(0));
        let before = job.clone();
        let ticked = job.ticked(Id::new("step"), 5);
        assert!(ticked.progress.acknowledged.is_empty());
        assert_eq!(ticked.unticked(), before);
    }
}
