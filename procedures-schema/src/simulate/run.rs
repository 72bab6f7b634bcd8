//! Runs: what is executed, in which order.

use crate::model::Procedure;

/// A sequence of step executions. A step may occur more than once, or not at all.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Run {
    steps: Vec<usize>,
    complete: bool,
}

impl Run {
    /// The run of the document itself: every step once, in order, to the end of the job.
    pub fn of(procedure: &Procedure) -> Self {
        Self { steps: (0..procedure.steps.len()).collect(), complete: true }
    }

    /// A run of these steps, by position. The job is still going on: nothing is demanded of its end.
    pub fn of_steps(steps: &[usize]) -> Self {
        Self { steps: steps.to_vec(), complete: false }
    }

    /// The positions of the executed steps.
    pub fn steps(&self) -> &[usize] {
        &self.steps
    }

    /// Whether the job is over after the last execution.
    pub fn is_complete(&self) -> bool {
        self.complete
    }
}
