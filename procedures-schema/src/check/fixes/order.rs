//! Fixes of an order: the step that comes too early is moved behind what it waits for.

use super::Fix;
use crate::check::context::Context;
use crate::check::finding::Finding;
use crate::edit::Edit;
use crate::model::Verb;

/// The step of a finding at each later position, the nearest first; not behind what ends the job.
pub(super) fn later(context: &Context<'_>, finding: &Finding) -> Vec<Fix> {
    let steps = &context.procedure.steps;
    let Some(at) = finding.step.as_ref().and_then(|id| context.procedure.position(id)) else {
        return Vec::new();
    };
    let Some(moved) = steps.get(at) else { return Vec::new() };
    let ends = |at: &usize| {
        steps.get(*at).is_some_and(|step| step.actions.iter().any(|action| action.verb == Verb::Finish))
    };
    let behind = (at + 1..steps.len()).take_while(|at| !ends(at));
    let fix = |to: usize| Fix {
        label: format!("move step {}, \"{}\", behind step {}", at + 1, moved.words, to + 1),
        edits: vec![Edit::MoveStep { step: moved.id.clone(), to }],
    };
    behind.map(fix).collect()
}
