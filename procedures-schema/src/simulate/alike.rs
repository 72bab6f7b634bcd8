//! Whether two documents run alike, so that the trace of one is the trace of the other.
//!
//! While words are typed, most keys change no action. Whoever shows a document after each key need not
//! simulate it again then.

use crate::model::{Procedure, Step};
use std::sync::Arc;

/// Whether two documents have the same trace: they differ at most in words, in the places of words that say an
/// action, and in what the simulator does not look at. May say no where the traces would be equal.
pub fn runs_alike(one: &Procedure, other: &Procedure) -> bool {
    let is_same_map = Arc::ptr_eq(&one.map, &other.map) || one.map == other.map;
    let steps = || one.steps.iter().zip(&other.steps);
    is_same_map
        && one.steps.len() == other.steps.len()
        && one.questions == other.questions
        && one.overrides == other.overrides
        && one.sources == other.sources
        && one.goals == other.goals
        && one.variants == other.variants
        && steps().all(|(one, other)| Arc::ptr_eq(one, other) || unworded(one) == unworded(other))
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
            open.extend(action.on_fail.iter_mut().flat_map(|on_fail| &mut on_fail.steps));
        }
    }
    step
}
