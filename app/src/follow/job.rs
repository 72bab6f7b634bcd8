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
    /// The times in which nobody watched.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub breaks: Vec<Break>,
    /// The proofs taken again after breaks, in order.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub proofs: Vec<ProofAgain>,
    /// What has been done of the proof that is taken again now.
    #[serde(default, skip_serializing_if = "Progress::is_empty")]
    pub proving: Progress,
}

/// A time in which nobody watched: what was proved before it has to be proved again.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Break {
    /// When something was done last before it.
    pub from_ms: u64,
    /// When somebody was there again.
    pub until_ms: u64,
    /// How many steps were ticked before it.
    pub ticks: usize,
    /// How many proofs were taken again before it.
    pub proofs: usize,
}

/// A proof taken again after a break.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ProofAgain {
    /// The step that proved it first.
    pub step: Id,
    /// The action of that step, by position.
    pub action: usize,
    /// How many steps were ticked when it was taken.
    pub after_ticks: usize,
    /// When.
    pub at_ms: u64,
    /// What was read for it.
    pub done: Progress,
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
    /// Questions that were answered.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub answers: Vec<Answered>,
}

/// A question that was answered.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Answered {
    /// The question.
    pub question: Id,
    /// The answer to it.
    pub answer: String,
    /// When.
    pub at_ms: u64,
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
        Self {
            id,
            begun_ms,
            all_the_same,
            ticks: Vec::new(),
            progress: Progress::default(),
            breaks: Vec::new(),
            proofs: Vec::new(),
            proving: Progress::default(),
        }
    }

    /// The job with a step ticked.
    #[must_use]
    pub fn ticked(mut self, step: Id, at_ms: u64) -> Self {
        let done = std::mem::take(&mut self.progress);
        self.ticks.push(Tick { step, at_ms, done });
        self
    }

    /// The job without its last tick, or without an answer that was given since; what had been read and taken for that
    /// step stays, and what it asked is asked again.
    #[must_use]
    pub fn unticked(mut self) -> Self {
        if self.progress.answers.pop().is_some() {
            return self;
        }
        if let Some(tick) = self.ticks.pop() {
            self.progress = tick.done;
            self.progress.answers.pop();
        }
        self
    }

    /// The job after a time in which nobody watched.
    #[must_use]
    pub fn after_break(mut self, until_ms: u64) -> Self {
        let (ticks, proofs) = (self.ticks.len(), self.proofs.len());
        let from_ms = self.last_ms();
        // Two breaks between which nothing was done are one.
        let again = self.breaks.pop_if(|known| known.ticks == ticks && known.proofs == proofs);
        let from_ms = again.map_or(from_ms, |again| again.from_ms);
        self.breaks.push(Break { from_ms, until_ms, ticks, proofs });
        self.proving = Progress::default();
        self
    }

    /// The job with a proof taken again.
    #[must_use]
    pub fn proved_again(mut self, step: Id, action: usize, at_ms: u64) -> Self {
        let done = std::mem::take(&mut self.proving);
        self.proofs.push(ProofAgain { step, action, after_ticks: self.ticks.len(), at_ms, done });
        self
    }

    /// When something was done last.
    pub fn last_ms(&self) -> u64 {
        let ticks = self.ticks.iter().map(|tick| tick.at_ms);
        let proofs = self.proofs.iter().map(|proof| proof.at_ms);
        let open = [self.progress.last_ms(), self.proving.last_ms()].into_iter().flatten();
        ticks.chain(proofs).chain(open).fold(self.begun_ms, u64::max)
    }
}

impl Progress {
    /// Whether nothing has been done.
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    fn last_ms(&self) -> Option<u64> {
        let taken = self.taken.iter().map(|taken| taken.at_ms);
        let waits = self.waits.iter().map(|wait| wait.from_ms);
        taken.chain(waits).chain(self.answers.iter().map(|answer| answer.at_ms)).max()
    }
}

#[cfg(test)]
mod tests {
    use super::{Acknowledged, Answered, Id, Job};
    use procedures_schema::format;
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

    #[wasm_bindgen_test]
    fn an_answer_is_taken_back_with_its_tick() {
        let answer = |at_ms| Answered { question: Id::new("q"), answer: "yes".to_owned(), at_ms };
        let mut job = Job::new(Id::new("job"), 0, None);
        let unasked = job.clone();
        job.progress.answers.push(answer(4));
        assert_eq!(job.clone().ticked(Id::new("step"), 5).unticked(), unasked);
        assert_eq!(job.unticked(), unasked);
    }

    #[wasm_bindgen_test]
    fn a_job_from_before_answers_and_proofs_reads() {
        let text = r#"{"id":"job","begun_ms":1,"ticks":[{"step":"s","at_ms":2,"done":{"acknowledged":[]}}],
            "progress":{"acknowledged":[],"taken":[],"waits":[]}}"#;
        let job: Job = format::read_part(text).expect("a job");
        assert_eq!((job.last_ms(), job.breaks.len()), (2, 0));
        assert!(!format::write_part(&job).contains("proofs"), "what is not there is not written");
    }

    #[wasm_bindgen_test]
    fn breaks_without_anything_between_are_one() {
        let job = Job::new(Id::new("job"), 1, None).ticked(Id::new("step"), 5);
        let job = job.after_break(100).after_break(200);
        assert_eq!(job.breaks.len(), 1);
        assert_eq!((job.breaks[0].from_ms, job.breaks[0].until_ms), (5, 200));
        let job = job.proved_again(Id::new("step"), 0, 210).after_break(900);
        assert_eq!((job.breaks.len(), job.last_ms()), (2, 210));
    }
}
