//! `seal/not-renewed`: a seal that is always renewed goes back after its joint was disturbed.

use crate::check::cause::causes;
use crate::check::context::Context;
use crate::check::finding::{Finding, Level};
use crate::check::ladder::since;
use crate::check::rule::Rule;
use crate::check::wording::capital;
use crate::simulate::{Reason, Thing};

pub(in crate::check) static RULE: Rule = Rule {
    code: "seal/not-renewed",
    level: Level::Reject,
    summary: "a seal that is always renewed goes back after its joint was disturbed",
    documentation: include_str!("not_renewed.md"),
    check,
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    let found = causes(context, |unmet| match &unmet.reason {
        Reason::SealNotRenewed { connection, seal } => Some((*connection, *seal, unmet.since)),
        _ => None,
    });
    for cause in found {
        let Reason::SealNotRenewed { connection, seal } = &cause.first.reason else { continue };
        let joint = context.the(Thing::Connection(*connection));
        let name = context.procedure.map.seals.get(*seal).map_or("seal", |seal| seal.name.as_str());
        let step = capital(&context.step_name(cause.first.place));
        let mut finding = rule.finding(format!("{step} makes {joint} without a new {name}"));
        finding.step = context.step_id_at(cause.first.place);
        finding.action = cause.first.place.action();
        finding.span = context.action_at(cause.first.place).and_then(|action| action.says.first().copied());
        let plan = context.trace.plant().connection(*connection);
        finding.circuit = plan.and_then(|plan| plan.section).and_then(|s| context.circuit_id(s));
        finding.because.push(since(context, cause.first.since, &format!("{joint} was opened")));
        finding.remedy.push(format!("Say in this step that a new {name} goes in"));
        finding.again = cause.later_steps(context);
        findings.push(finding);
    }
}
