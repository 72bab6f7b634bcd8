//! `control/cannot-judge`: the document says something that this version keeps and cannot judge.

use crate::check::context::Context;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::check::wording::capital;

pub(in crate::check) static RULE: Rule = Rule {
    code: "control/cannot-judge",
    level: Level::Reject,
    summary: "the document says something that this version keeps and cannot judge",
    documentation: documentation!("cannot_judge.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for unknown in context.trace.cannot_judge() {
        let step = capital(&context.step_name(unknown.place));
        let mut finding = rule.finding(format!("{step} cannot be judged: it has {}", unknown.what));
        finding.step = context.step_id_at(unknown.place);
        finding.action = unknown.place.action();
        finding.remedy.push(
            "Name it otherwise, add what is missing to the appliance map, or use a version that knows it"
                .to_owned(),
        );
        findings.push(finding);
    }
}
