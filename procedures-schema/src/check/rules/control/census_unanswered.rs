//! `control/census-unanswered`: kinds of circuits are not answered in the census.

use crate::check::context::Context;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::model::{CircuitKind, listed};

pub(in crate::check) static RULE: Rule = Rule {
    code: "control/census-unanswered",
    level: Level::Warn,
    summary: "kinds of circuits are not answered in the census",
    documentation: documentation!("census_unanswered.md"),
    looks: Looks::AtDocument(check),
};

/// So many kinds are named at most.
const MOST_NAMED: usize = 4;

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    let answered = |kind: &&CircuitKind| context.procedure.census.iter().any(|entry| entry.kind == **kind);
    let mut open: Vec<String> =
        CircuitKind::ALL.iter().filter(|kind| !answered(kind)).map(ToString::to_string).collect();
    if open.is_empty() {
        return;
    }
    // A long list is read by nobody; the census itself shows which are open.
    if open.len() > MOST_NAMED {
        let others = format!("{} other kinds", open.len() - MOST_NAMED + 1);
        open.truncate(MOST_NAMED - 1);
        open.push(others);
    }
    let kinds = listed(&open);
    let mut finding = rule.finding(format!("The census does not answer for {kinds}, before the first step"));
    finding
        .remedy
        .push("Answer for each: here and touched, here and not touched, not on this appliance".to_owned());
    findings.push(finding);
}
