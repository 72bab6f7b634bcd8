//! What several lines tell together.
//!
//! A proof is often told over more than one line: the tester is tried, the pairs are tested, the reading follows
//! with `read:`, the tester is tried again. And a `read:` line alone is a reading; whether it proves or tests
//! something shows only in the state where it stands. [`told_together`] looks at the step that a line has just
//! become, or was added to, and at its neighbours, and gives the steps that are changed by it.
//!
//! It decides with care, because a wrong proof is worse than a gap: a reading becomes a proof only if its limits
//! demand zero, if what is read is cut off and open, and if it is clear which circuit is meant; it becomes a test
//! only if the words name what a test shows and the appliance is in the state for it. Otherwise it stays a reading.

mod burner;
mod cooling;
mod holding;
mod led;
mod taken_at;
mod telling;
mod tester;
mod zero;

use crate::model::{Action, Procedure, Span, Step, Verb};
use crate::simulate::{Run, Trace, simulate};
use std::sync::Arc;

/// The steps that change by what a step at a position, and its neighbours, tell together.
///
/// To be called after a line has become a step or has been added to one. Pure: the same document gives the same.
pub fn told_together(procedure: &Procedure, at: usize) -> Vec<Step> {
    let mut document = procedure.clone();
    led::add_ends(&mut document, at);
    tester::read_pairs(&mut document, at);
    tell(&mut document, at);
    tester::add_tester(&mut document, at);
    taken_at::add_ports(&mut document, at);
    let pairs = document.steps.iter().zip(&procedure.steps);
    pairs.filter(|(new, old)| !Arc::ptr_eq(new, old) && new != old).map(|(new, _)| Step::clone(new)).collect()
}

/// What a reading shows, as the actions that say so and the verb that says it in its sentence.
struct Shown {
    says: &'static str,
    actions: Vec<Action>,
}

/// Makes a proof or test of the reading at the end of a step.
fn tell(document: &mut Procedure, at: usize) {
    let Some(step) = document.steps.get(at) else { return };
    let Some(action) = step.actions.last().filter(|action| is_told(step, action)) else { return };
    let trace = traced(document);
    let Some(telling) = telling::Telling::of(document, &trace, at, action) else { return };
    let shown =
        zero::proved(&telling).or_else(|| burner::figures(&telling)).or_else(|| holding::tested(&telling));
    let Some(shown) = shown else { return };
    let mut changed = Step::clone(step);
    if say(&mut changed, shown) {
        put(document, at, changed);
    }
}

/// Whether an action is a reading that a sentence "Read …" at the end of its step says.
fn is_told(step: &Step, action: &Action) -> bool {
    let [span] = action.says.as_slice() else { return false };
    action.verb == Verb::Read && action.readings.len() == 1 && span.of(&step.words) == "Read"
}

/// Puts actions in the place of the last of a step, and their verb in the place of its own.
fn say(step: &mut Step, shown: Shown) -> bool {
    let Some(last) = step.actions.pop() else { return false };
    let Some(span) = last.says.first().copied() else { return false };
    let (before, after) = (Span(0, span.0), Span(span.1, u32::MAX));
    let words = [before.of(&step.words), shown.says, ":", after.of(&step.words)].concat();
    let length = u32::try_from(shown.says.chars().count()).unwrap_or(0);
    step.words = words;
    let mut actions = shown.actions;
    for action in &mut actions {
        action.says = vec![Span(span.0, span.0 + length)];
    }
    // What to do when the value is out of its limits belongs to the first that reads it.
    if let Some(first) = actions.iter_mut().find(|action| !action.readings.is_empty()) {
        first.on_fail = last.on_fail;
    }
    step.actions.extend(actions);
    true
}

fn put(document: &mut Procedure, at: usize, step: Step) {
    if let Some(place) = document.steps.get_mut(at) {
        *place = Arc::new(step);
    }
}

fn traced(document: &Procedure) -> Trace {
    simulate(document, &Run::of(document))
}
