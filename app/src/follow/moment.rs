//! What is so now: worked out from the procedure and the steps that were really done.

use super::isolators::{IsolatorNow, isolators_now};
use super::job::{Job, Progress};
use super::proofs::{ProofDue, executions, proofs_due, proved_ms, proves};
use procedures_schema::derive::answered::{Condition, as_done, condition, next_position, open_question};
use procedures_schema::derive::apart::{StillApart, still_apart};
use procedures_schema::derive::lanes::{LaneLevel, LaneState, beyond, in_words, lane_states};
use procedures_schema::model::{Answer, CircuitKind, Procedure, Question, Step};
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

/// A step that was done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Done {
    /// The step, by position.
    pub position: usize,
    /// When.
    pub at_ms: u64,
    /// What was answered at it.
    pub answers: Vec<String>,
}

/// What is so now.
pub struct Moment {
    /// The procedure followed.
    pub procedure: Arc<Procedure>,
    /// The position of the step to do; none at the end.
    pub position: Option<usize>,
    /// What has been done of the step, or of the proof, that is to be done now.
    pub progress: Progress,
    /// The steps done.
    pub done: Vec<Done>,
    /// How many steps are of other answers than those given.
    pub n_passed_over: usize,
    /// The answers given, the latest last.
    pub answers: Vec<Answer>,
    /// When the last answer was given that no tick keeps yet.
    pub answered_ms: Option<u64>,
    /// The proofs to take again before anything else.
    pub proofs: Vec<ProofDue>,
    /// The circuits.
    pub circuits: Vec<CircuitNow>,
    /// The isolators that somebody can shut.
    pub isolators: Vec<IsolatorNow>,
    /// What is still apart.
    pub apart: StillApart,
}

impl Moment {
    /// Works out the moment of a job, or the one before a job begins.
    pub fn of(procedure: Arc<Procedure>, job: Option<&Job>) -> Self {
        let done = steps_done(&procedure, job);
        let answers = answers_of(job);
        let next = done.last().map_or(0, |last| last.position + 1);
        let position = next_position(&procedure, next, &answers);
        let positions: Vec<usize> = done.iter().map(|done| done.position).collect();
        let freed = as_done(&procedure, &positions);
        let executed = executions(&procedure, &positions, job);
        let now = Place::before(executed.len());
        let trace = simulate(&freed, &Run::of_executions(executed).answered(&freed, &answers));
        let states = lane_states(&freed, &trace, now);
        let proofs = match position {
            Some(_) => proofs_due(&procedure, &done, job, &states),
            None => Vec::new(),
        };
        let circuits = procedure.map.circuits.iter().zip(states).enumerate();
        let circuits = circuits.map(|(index, (circuit, mut state))| {
            if proofs.iter().any(|due| due.step.actions.iter().any(|action| proves(action, circuit))) {
                state.level = LaneLevel::Lapsed;
            }
            CircuitNow {
                name: circuit.name.clone(),
                kind: circuit.kind.clone(),
                state,
                words: in_words(&state, &circuit.kind),
                beyond: beyond(&freed, &trace, index, now),
                proved_ms: proved_ms(&procedure, circuit, &done, job),
            }
        });
        let circuits = circuits.collect();
        let is_missed = |(at, step): &(usize, &Arc<Step>)| {
            !positions.contains(at) && condition(step, &answers) == Condition::Missed
        };
        let n_passed_over = procedure.steps.iter().enumerate().filter(is_missed).count();
        let progress = job.map(|job| if proofs.is_empty() { &job.progress } else { &job.proving });
        Self {
            position,
            progress: progress.cloned().unwrap_or_default(),
            n_passed_over,
            answered_ms: job.and_then(|job| job.progress.answers.last()).map(|answer| answer.at_ms),
            proofs,
            circuits,
            isolators: isolators_now(&procedure, &trace, now),
            apart: still_apart(&freed, &trace, now),
            procedure,
            done,
            answers,
        }
    }

    /// The proof to take again now.
    pub fn proof(&self) -> Option<&ProofDue> {
        self.proofs.first()
    }

    /// What is to be done now: a proof to take again, else the step.
    pub fn step(&self) -> Option<&Arc<Step>> {
        self.proof().map_or_else(|| self.next_step(), |due| Some(&due.step))
    }

    /// The step to do once all proofs are taken.
    pub fn next_step(&self) -> Option<&Arc<Step>> {
        self.procedure.steps.get(self.position?)
    }

    /// A step by position.
    pub fn step_at(&self, position: usize) -> Option<&Arc<Step>> {
        self.procedure.steps.get(position)
    }

    /// A question whose answer says whether the step is done at all.
    pub fn question_before(&self) -> Option<&Question> {
        let step = self.next_step().filter(|_| self.proofs.is_empty())?;
        let id = open_question(step, &self.answers)?;
        self.procedure.questions.iter().find(|question| question.id == *id)
    }
}

fn steps_done(procedure: &Procedure, job: Option<&Job>) -> Vec<Done> {
    let ticks = job.map_or(&[][..], |job| job.ticks.as_slice());
    let done = ticks.iter().filter_map(|tick| {
        let position = procedure.position(&tick.step)?;
        let answers = tick.done.answers.iter().map(|given| given.answer.clone()).collect();
        Some(Done { position, at_ms: tick.at_ms, answers })
    });
    done.collect()
}

fn answers_of(job: Option<&Job>) -> Vec<Answer> {
    let Some(job) = job else { return Vec::new() };
    let kept = job.ticks.iter().flat_map(|tick| &tick.done.answers).chain(&job.progress.answers);
    kept.map(|given| Answer::new(given.question.clone(), &given.answer)).collect()
}
