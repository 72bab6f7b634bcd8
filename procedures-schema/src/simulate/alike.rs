//! Whether two documents run alike, so that the trace of one is the trace of the other.
//!
//! While words are typed, most keys change no action. Whoever shows a document after each key need not
//! simulate it again then.

use crate::model::{Procedure, Step};
use std::sync::Arc;

/// Whether two documents have the same trace: they differ at most in words, in the places of words that say an
/// action, and in what the simulator does not look at. May say no where the traces would be equal.
pub fn runs_alike(one: &Procedure, other: &Procedure) -> bool {
    let steps = || one.steps.iter().zip(&other.steps);
    starts_alike(one, other)
        && one.steps.len() == other.steps.len()
        && steps().all(|(one, other)| Arc::ptr_eq(one, other) || unworded(one) == unworded(other))
}

/// Whether two documents run alike up to the step at a position, so that the same is true of everything before it.
/// May say no where that is so.
pub fn begins_alike(one: &Procedure, other: &Procedure, position: usize) -> bool {
    let begun = |document: &Procedure| document.steps.len() >= position;
    let mut steps = one.steps.iter().zip(&other.steps).take(position);
    starts_alike(one, other)
        && begun(one)
        && begun(other)
        && steps.all(|(one, other)| Arc::ptr_eq(one, other))
}

/// Whether everything but the steps is the same to the simulator.
fn starts_alike(one: &Procedure, other: &Procedure) -> bool {
    (Arc::ptr_eq(&one.map, &other.map) || one.map == other.map)
        && one.questions == other.questions
        && one.overrides == other.overrides
        && one.sources == other.sources
        && one.goals == other.goals
        && one.variants == other.variants
}

/// A step without its words and without what only points at them.
fn unworded(step: &Step) -> Step {
    let mut step = step.clone();
    step.words.clear();
    step.declined.clear();
    let mut open = vec![&mut step];
    while let Some(step) = open.pop() {
        for action in &mut step.actions {
            action.says.clear();
            action.meant_by = None;
            open.extend(action.on_fail.iter_mut().flat_map(|on_fail| &mut on_fail.steps));
        }
    }
    step
}
