//! What is so now: worked out from the procedure and the steps that were really done.

use super::job::{Job, Progress};
use procedures_schema::derive::apart::{StillApart, still_apart};
use procedures_schema::derive::lanes::{LaneLevel, LaneState, beyond, in_words, lane_states};
use procedures_schema::model::{Circuit, CircuitKind, Id, Procedure, Step, Verb};
use procedures_schema::simulate::{Place, Run, simulate};
use std::sync::Arc;

/// A circuit as it stands.
#[derive(Clone, Debug, PartialEq)]
pub struct CircuitNow {
    /// Its name.
    pub name: String,
    /// What it carries.
    pub kind: CircuitKind,
    /// Its state.
    pub state: LaneState,
    /// Its state in words.
    pub words: String,
    /// What is still under energy beyond the isolators.
    pub beyond: Option<&'static str>,
    /// When it was proved last in this job.
    pub proved_ms: Option<u64>,
}

/// What is so now.
pub struct Moment {
    /// The procedure followed.
    pub procedure: Arc<Procedure>,
    /// The position of the step to do; none at the end.
    pub position: Option<usize>,
    /// What has been done of it.
    pub progress: Progress,
    /// The steps done, by position, and when.
    pub done: Vec<(usize, u64)>,
    /// The circuits.
    pub circuits: Vec<CircuitNow>,
    /// What is still apart.
    pub apart: StillApart,
}

impl Moment {
    /// Works out the moment of a job, or the one before a job begins.
    pub fn of(procedure: Arc<Procedure>, job: Option<&Job>) -> Self {
        let ticks = job.map_or(&[][..], |job| job.ticks.as_slice());
        let done: Vec<(usize, u64)> =
            ticks.iter().filter_map(|tick| Some((procedure.position(&tick.step)?, tick.at_ms))).collect();
        let next = done.last().map_or(0, |(last, _)| last + 1);
        let position = (next < procedure.steps.len()).then_some(next);
        let run: Vec<usize> = done.iter().map(|(position, _)| *position).collect();
        let trace = simulate(&procedure, &Run::of_steps(&run));
        let now = Place::before(done.len());
        let apart = still_apart(&procedure, &trace, now);
        let states = lane_states(&procedure, &trace, now);
        let circuits = procedure.map.circuits.iter().zip(states).enumerate();
        let circuits = circuits
            .map(|(index, (circuit, state))| CircuitNow {
                name: circuit.name.clone(),
                kind: circuit.kind.clone(),
                state,
                words: in_words(&state, &circuit.kind),
                beyond: beyond(&procedure, &trace, index, now),
                proved_ms: proved_ms(&procedure, circuit, &done),
            })
            .collect();
        let progress = job.map(|job| job.progress.clone()).unwrap_or_default();
        Self { procedure, position, progress, done, circuits, apart }
    }

    /// The step to do.
    pub fn step(&self) -> Option<&Arc<Step>> {
        self.procedure.steps.get(self.position?)
    }

    /// A step by position.
    pub fn step_at(&self, position: usize) -> Option<&Arc<Step>> {
        self.procedure.steps.get(position)
    }

    /// The circuits whose proof stood, or has lapsed, and must be asked again after a break.
    pub fn to_prove_again(&self) -> impl Iterator<Item = &CircuitNow> {
        self.circuits
            .iter()
            .filter(|circuit| matches!(circuit.state.level, LaneLevel::Proved | LaneLevel::Lapsed))
    }
}

/// When a circuit was proved last.
fn proved_ms(procedure: &Procedure, circuit: &Circuit, done: &[(usize, u64)]) -> Option<u64> {
    let proves =
        |position: usize| procedure.steps.get(position).is_some_and(|step| step_proves(step, circuit));
    done.iter().rev().find(|(position, _)| proves(*position)).map(|(_, at_ms)| *at_ms)
}

fn step_proves(step: &Step, circuit: &Circuit) -> bool {
    let is_of = |id: &Id| circuit.id == *id || circuit.sections.iter().any(|section| section.id == *id);
    step.actions.iter().any(|action| action.verb == Verb::Prove && action.on.iter().any(is_of))
}
