//! `control/census-unanswered`: kinds of circuits are not answered in the census.

use crate::check::context::Context;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::check::wording::listed;
use crate::model::CircuitKind;

pub(in crate::check) static RULE: Rule = Rule {
    code: "control/census-unanswered",
    level: Level::Warn,
    summary: "kinds of circuits are not answered in the census",
    documentation: documentation!("census_unanswered.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    let answered = |kind: &&CircuitKind| context.procedure.census.iter().any(|entry| entry.kind == **kind);
    let open: Vec<String> =
        CircuitKind::ALL.iter().filter(|kind| !answered(kind)).map(ToString::to_string).collect();
    if open.is_empty() {
        return;
    }
    let kinds = listed(&open);
    let mut finding = rule.finding(format!("The census does not answer for {kinds}, before the first step"));
    finding
        .remedy
        .push("Answer for each: here and touched, here and not touched, not on this appliance".to_owned());
    findings.push(finding);
}
