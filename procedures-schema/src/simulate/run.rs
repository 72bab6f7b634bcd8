//! Runs: what is executed, in which order, and with which outcome.

use super::guard::{AnswerIndex, QuestionIndex};
use super::{Guard, Plant};
use crate::model::{Action, Answer, Procedure};

/// One execution of a step.
#[derive(Clone, Debug, PartialEq)]
pub struct Execution {
    /// The step, by position in the document.
    pub step: usize,
    /// What was done instead of what is written, if somebody did it differently.
    pub instead: Option<Vec<Action>>,
    /// Whether its tests failed.
    pub failed: bool,
}

/// A sequence of step executions. A step may occur more than once, or not at all.
#[derive(Clone, Debug, PartialEq)]
pub struct Run {
    executions: Vec<Execution>,
    steps: Vec<usize>,
    complete: bool,
    way: Guard,
}

impl Run {
    /// The run of the document itself: every step once, in order, on every way, to the end of the job.
    pub fn of(procedure: &Procedure) -> Self {
        Self { complete: true, ..Self::of_steps(&(0..procedure.steps.len()).collect::<Vec<_>>()) }
    }

    /// A run of these steps, by position. The job is still going on: nothing is demanded of its end.
    pub fn of_steps(steps: &[usize]) -> Self {
        Self::of_executions(
            steps.iter().map(|step| Execution { step: *step, instead: None, failed: false }).collect(),
        )
    }

    /// A run of what was really done. The job is still going on.
    pub fn of_executions(executions: Vec<Execution>) -> Self {
        let steps = executions.iter().map(|execution| execution.step).collect();
        Self { executions, steps, complete: false, way: Guard::ALWAYS }
    }

    /// The same run with answers that are known; steps of other answers are passed over.
    #[must_use]
    pub fn answered(mut self, procedure: &Procedure, answers: &[Answer]) -> Self {
        let plant = Plant::of(procedure);
        for answer in answers {
            if let Some((question, answer)) = plant.answer(answer) {
                self.way = self.way.with(question, answer);
            }
        }
        self
    }

    /// The same run on one way.
    #[must_use]
    pub fn on_way(mut self, way: &[(QuestionIndex, AnswerIndex)]) -> Self {
        self.way = way.iter().fold(Guard::ALWAYS, |guard, (q, a)| guard.with(*q, *a));
        self
    }

    /// The executions.
    pub fn executions(&self) -> &[Execution] {
        &self.executions
    }

    /// The positions of the executed steps.
    pub fn steps(&self) -> &[usize] {
        &self.steps
    }

    /// Whether the job is over after the last execution.
    pub fn is_complete(&self) -> bool {
        self.complete
    }

    /// The answers that are known beforehand.
    pub fn way(&self) -> &Guard {
        &self.way
    }
}
