//! What was left at the end, worded once for the rules that share it.

use super::cause::causes;
use super::context::Context;
use super::finding::Finding;
use super::ladder::since;
use super::rule::Rule;
use super::wording::capital;
use crate::simulate::{Reason, Thing};

/// How a rule speaks of something left.
pub(super) struct Omission {
    /// What is wrong with the thing, after its name.
    pub(super) title: &'static str,
    /// How it came about, after its name.
    pub(super) because: &'static str,
    /// What to do, from the name with its article.
    pub(super) remedy: fn(&str) -> String,
}

/// Findings for things left, at the step that left them.
pub(super) fn omissions(
    rule: &Rule,
    context: &Context<'_>,
    wanted: impl Fn(&Reason) -> Option<Thing>,
    omission: &Omission,
    findings: &mut Vec<Finding>,
) {
    for cause in causes(context, |unmet| wanted(&unmet.reason)) {
        let Some(thing) = wanted(&cause.first.reason) else { continue };
        let the = context.the(thing);
        let since_place = cause.first.since;
        let mut finding = rule.finding(format!(
            "{} {} since {}",
            capital(&the),
            omission.title,
            context.step_name(since_place)
        ));
        finding.step = context.step_id_at(since_place);
        finding.action = since_place.action();
        finding.span = context.action_at(since_place).and_then(|action| action.says.first().copied());
        if let Thing::Connection(connection) = thing {
            let section = context.trace.plant().connection(connection).and_then(|plan| plan.section);
            finding.circuit = section.and_then(|section| context.circuit_id(section));
        }
        finding.because.push(since(context, since_place, &format!("{the} was {}", omission.because)));
        finding.remedy.push((omission.remedy)(&the));
        findings.push(finding);
    }
}
