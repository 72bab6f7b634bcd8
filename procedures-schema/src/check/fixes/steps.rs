//! Fixes that add a ready step: a test, the making of a joint, the taking away of an item, a supply given
//! back. The step is offered for several positions; which of them holds is found by trying.

use super::Fix;
use super::places::on_the_way_back;
use crate::check::context::Context;
use crate::derive::way_back::{missing_test, restoring, taking_away, way_back as making};
use crate::edit::Edit;
use crate::model::{Action, Answer, Id, IdSource, Procedure, Reading, Step, TestKind, Verb};
use crate::simulate::{Place, Reason, Thing, Unmet};
use crate::units::Quantity;
use std::sync::Arc;

/// The missing test, as early behind the last touch as it loads what it should.
pub(super) fn test(context: &Context<'_>, met: &[&Unmet], ids: &mut dyn IdSource) -> Vec<Fix> {
    let Some(step) = met.first().and_then(|unmet| missing_test(&unmet.reason, ids)) else {
        return Vec::new();
    };
    let step = as_filled(context, step);
    let last_touch = met.iter().map(|unmet| unmet.since).max().unwrap_or(Place::START);
    inserted(context, step, met, &positions(context, last_touch))
}

/// A test of the fill pressure reads what it was filled to last, if a step says that: its kind has no limits of its own.
fn as_filled(context: &Context<'_>, mut step: Step) -> Step {
    let is_pressure = |reading: &&Reading| {
        reading.limits.as_ref().is_some_and(|limits| limits.unit.quantity() == Quantity::Pressure)
    };
    let mut actions = context.procedure.steps.iter().rev().flat_map(|step| step.actions.iter().rev());
    let filled = actions.find(|action| action.verb == Verb::Charge);
    let Some(filled) = filled.and_then(|action| action.readings.iter().find(is_pressure)) else {
        return step;
    };
    let Some(limits) = filled.limits.clone() else { return step };
    let tests =
        |action: &&mut Action| action.test == Some(TestKind::FillPressure) && action.readings.is_empty();
    let Some(test) = step.actions.iter_mut().find(tests) else { return step };
    let source = if filled.source.is_empty() { "as it is filled here" } else { &filled.source };
    step.words = format!("{}: {limits}.", step.words.trim_end_matches('.'));
    test.readings = vec![Reading {
        what: "fill pressure".to_owned(),
        limits: Some(limits),
        source: source.to_owned(),
        ..Reading::default()
    }];
    step
}

/// The way back of a joint: behind what is done to it and to the parts that it joins.
pub(super) fn way_back(context: &Context<'_>, met: &[&Unmet], ids: &mut dyn IdSource) -> Vec<Fix> {
    let Some(unmet) = met.first() else { return Vec::new() };
    let (Reason::LeftOpen { connection } | Reason::LeftSlack { connection }) = &unmet.reason else {
        return Vec::new();
    };
    let Some(id) = context.trace.plant().id_of(Thing::Connection(*connection)) else { return Vec::new() };
    let Some(step) = making(context.procedure, id, ids) else { return Vec::new() };
    inserted(context, step, met, &on_the_way_back(context, id, unmet.since))
}

/// The taking away of a temporary item, as late as it can be.
pub(super) fn take_away(context: &Context<'_>, met: &[&Unmet], ids: &mut dyn IdSource) -> Vec<Fix> {
    late(context, met, &mut |procedure, id| taking_away(procedure, id, ids))
}

/// A supply given back, as late as it can be.
pub(super) fn restore(context: &Context<'_>, met: &[&Unmet], ids: &mut dyn IdSource) -> Vec<Fix> {
    let is_locked = met.first().is_some_and(|unmet| match unmet.reason {
        Reason::NotNormal { isolator } => {
            context.trace.at(&isolator, Place::END).is_some_and(|state| state.locked)
        }
        _ => false,
    });
    late(context, met, &mut |procedure, id| restoring(procedure, id, is_locked, ids))
}

fn late(
    context: &Context<'_>,
    met: &[&Unmet],
    step: &mut dyn FnMut(&Procedure, &Id) -> Option<Step>,
) -> Vec<Fix> {
    let Some(unmet) = met.first() else { return Vec::new() };
    let thing = match unmet.reason {
        Reason::TemporaryLeft { temporary } => Thing::Temporary(temporary),
        Reason::NotNormal { isolator } => Thing::Isolator(isolator),
        _ => return Vec::new(),
    };
    let id = context.trace.plant().id_of(thing);
    let Some(step) = id.and_then(|id| step(context.procedure, id)) else { return Vec::new() };
    let mut positions = positions(context, unmet.since);
    positions.reverse();
    inserted(context, step, met, &positions)
}

/// Where a step may be added behind a place, from early to late: not behind what ends the job. Of very many,
/// those behind steps that only tell, show or look are left out.
pub(super) fn positions(context: &Context<'_>, since: Place) -> Vec<usize> {
    let steps = &context.procedure.steps;
    let first = since.execution().map_or(0, |at| at + 1);
    let ends = |step: &Arc<Step>| step.actions.iter().any(|action| action.verb == Verb::Finish);
    let last = steps.iter().position(ends).unwrap_or(steps.len());
    let all: Vec<usize> = (first..=last).collect();
    if all.len() <= super::MOST_TRIED {
        return all;
    }
    let changes = |at: &usize| {
        let before = at.checked_sub(1).and_then(|at| steps.get(at));
        before.is_some_and(|step| step.actions.iter().any(|action| !only_looks(&action.verb)))
    };
    all.into_iter().filter(changes).collect()
}

fn only_looks(verb: &Verb) -> bool {
    matches!(
        verb,
        Verb::Photograph
            | Verb::Tell
            | Verb::Hold
            | Verb::Ask
            | Verb::Read
            | Verb::Inspect
            | Verb::RecordSetting
    )
}

/// The step at each position, done on the answers on which it is missing.
pub(super) fn inserted(context: &Context<'_>, step: Step, met: &[&Unmet], positions: &[usize]) -> Vec<Fix> {
    let guard = met.first().map(|unmet| unmet.guard.answers()).unwrap_or_default();
    let answers = guard.iter().filter_map(|(q, a)| context.trace.plant().answer_named(*q, *a));
    let when = answers.map(|(question, answer)| Answer::new(question.clone(), answer)).collect();
    let step = Arc::new(Step { when, ..step });
    let fix = |at: &usize| Fix {
        label: format!("add step {}, \"{}\"", at + 1, step.words),
        edits: vec![Edit::InsertStep { at: *at, step: step.clone() }],
    };
    positions.iter().map(fix).collect()
}
