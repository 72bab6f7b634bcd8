//! Gathering unmet demands of one cause, so that one forgotten valve is one finding.

use super::code::code_of;
use super::context::Context;
use super::finding::{Because, Finding, Level};
use super::rule::{Looks, Rule};
use super::wording::{Words, since};
use crate::model::{Id, Verb};
use crate::simulate::{CauseOf, Demand, Place, Reason, Thing, Unmet};
use std::cell::LazyCell;
use std::collections::BTreeMap;

/// One cause and everything that met it, in the order of the run.
pub(super) struct Cause<'t> {
    met: Vec<(&'t Unmet, &'static Rule)>,
}

impl<'t> Cause<'t> {
    /// Whether a finding is the one that tells this cause.
    pub(super) fn tells(&self, context: &Context<'_>, told: &Finding) -> bool {
        self.met.iter().any(|(_, rule)| rule.code == told.code)
            && finding(context, self).as_ref() == Some(told)
    }

    /// What one rule found of it.
    pub(super) fn of_rule(&self, code: &str) -> Vec<&'t Unmet> {
        self.met.iter().filter(|(_, rule)| rule.code == code).map(|(unmet, _)| *unmet).collect()
    }
}

/// One finding a cause, by the most serious rule that it breaks and, of those, the first.
pub(super) fn findings_of_unmet(context: &Context<'_>, rules: &[&'static Rule]) -> Vec<Finding> {
    causes(context, rules).iter().filter_map(|cause| finding(context, cause)).collect()
}

/// Every cause of an unmet demand that one of these rules tells, in the order of the run.
pub(super) fn causes<'t>(context: &Context<'t>, rules: &[&'static Rule]) -> Vec<Cause<'t>> {
    let by_code: LazyCell<BTreeMap<&str, &'static Rule>, _> =
        LazyCell::new(|| rules.iter().map(|rule| (rule.code, *rule)).collect());
    let mut position: BTreeMap<(CauseOf, Place), usize> = BTreeMap::new();
    let mut causes: Vec<Cause<'_>> = Vec::new();
    for unmet in context.trace.unmet() {
        let Some(rule) = by_code.get(code_of(unmet, context.trace.plant())).copied() else { continue };
        let cause = unmet.cause();
        // A test that is missing is one cause, whenever the things were touched that it should have covered.
        let since = if matches!(cause, CauseOf::Missing(_)) { Place::START } else { unmet.since };
        let key = (cause, since);
        if let Some(cause) = position.get(&key).and_then(|at| causes.get_mut(*at)) {
            cause.met.push((unmet, rule));
        } else {
            position.insert(key, causes.len());
            causes.push(Cause { met: vec![(unmet, rule)] });
        }
    }
    causes
}

/// Whether a demand is met in the step since which it is unmet: "since step 13" tells nothing at step 13.
fn is_here(unmet: &Unmet) -> bool {
    unmet.place.execution().is_some_and(|execution| unmet.since.execution() == Some(execution))
}

fn finding(context: &Context<'_>, cause: &Cause<'_>) -> Option<Finding> {
    // The first of the most serious: a later one is met only because this was not mended.
    let (unmet, rule) = cause.met.iter().min_by_key(|(unmet, rule)| (level_of(unmet, rule), unmet.place))?;
    let Looks::AtUnmet(wording) = &rule.looks else { return None };
    let alike = cause.met.iter().filter(|(_, other)| other.code == rule.code).map(|(unmet, _)| *unmet);
    let words = Words::of(context, unmet, &alike.collect::<Vec<_>>());
    let place = if unmet.place == Place::END { unmet.since } else { unmet.place };
    let mut finding = rule.finding(words.agreeing((wording.title)(&words)));
    finding.level = level_of(unmet, rule);
    finding.step = context.step_id_at(place);
    finding.action = place.action();
    finding.span = context.action_at(place).and_then(|action| action.says.first().copied());
    finding.circuit = context.circuit_of(unmet);
    let because = words.agreeing((wording.because)(&words));
    finding.because.push(if is_here(unmet) {
        Because { text: because, step: context.step_id_at(unmet.since) }
    } else {
        since(context, unmet.since, &because)
    });
    if unmet.after_failure {
        let text = "this is met in the steps that follow a failed test".to_owned();
        finding.because.push(Because { text, step: None });
    }
    finding.remedy.push(words.agreeing((wording.remedy)(&words)));
    finding.answers = context.answers(&unmet.guard);
    for (_, other) in &cause.met {
        if other.code != rule.code && !finding.also.iter().any(|code| code == other.code) {
            finding.also.push(other.code.to_owned());
        }
    }
    finding.again = later_steps(context, cause, finding.step.as_ref());
    Some(finding)
}

/// A rule's level, unless what was done makes it less: a switch drawn under load spoils a switch.
fn level_of(unmet: &Unmet, rule: &Rule) -> Level {
    match (&unmet.reason, &unmet.verb) {
        (Reason::Demand { demand: Demand::NotShutDown, .. }, Some(Verb::Isolate)) => Level::Warn,
        _ => rule.level,
    }
}

fn later_steps(context: &Context<'_>, cause: &Cause<'_>, first: Option<&Id>) -> Vec<Id> {
    let mut steps: Vec<Id> = Vec::new();
    for (unmet, _) in &cause.met {
        if let Some(step) = context.step_id_at(unmet.place)
            && Some(&step) != first
            && !steps.contains(&step)
        {
            steps.push(step);
        }
    }
    steps
}

/// The thing of which an unmet demand speaks first.
pub(super) fn thing_of(unmet: &Unmet) -> Option<Thing> {
    match &unmet.reason {
        Reason::StillFed { section, .. }
        | Reason::NotLocked { section, .. }
        | Reason::NotReleased { section }
        | Reason::NotProved { section }
        | Reason::ProofLapsed { section, .. }
        | Reason::WrongContents { section, .. } => Some(Thing::Section(*section)),
        Reason::SealNotRenewed { connection, .. }
        | Reason::LeftOpen { connection }
        | Reason::LeftSlack { connection } => Some(Thing::Connection(*connection)),
        Reason::LeftOff { component } => Some(Thing::Component(*component)),
        Reason::TemporaryLeft { temporary } => Some(Thing::Temporary(*temporary)),
        Reason::NotNormal { isolator } => Some(Thing::Isolator(*isolator)),
        Reason::NotTested { thing, .. } | Reason::TestLate { thing, .. } => Some(*thing),
        Reason::FunctionNotShown => None,
        Reason::Demand { thing, .. } => *thing,
    }
}
