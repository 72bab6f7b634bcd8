//! `control/census-unanswered`: kinds of circuits are not answered in the census.

use crate::check::context::Context;
use crate::check::finding::{Because, Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::derive::brings::brought;
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
    let open_kinds: Vec<&CircuitKind> = CircuitKind::ALL.iter().filter(|kind| !answered(kind)).collect();
    if open_kinds.is_empty() {
        return;
    }
    // What a component on the map mostly comes with is named first.
    let mut brought = brought(&context.procedure.map);
    brought.retain(|brought| open_kinds.contains(&brought.kind));
    let is_brought = |kind: &&&CircuitKind| brought.iter().any(|brought| brought.kind == **kind);
    let first = open_kinds.iter().filter(is_brought);
    let others = open_kinds.iter().filter(|kind| !is_brought(kind));
    let mut open: Vec<String> = first.chain(others).map(ToString::to_string).collect();
    // A long list is read by nobody; the census itself shows which are open.
    if open.len() > MOST_NAMED {
        let others = format!("{} other kinds", open.len() - MOST_NAMED + 1);
        open.truncate(MOST_NAMED - 1);
        open.push(others);
    }
    let kinds = listed(&open);
    let mut finding = rule.finding(format!("The census does not answer for {kinds}, before the first step"));
    for asking in brought.chunk_by(|one, next| one.by == next.by) {
        let kinds: Vec<String> = asking.iter().map(|brought| brought.kind.to_string()).collect();
        let by = asking.first().map_or("", |brought| brought.by);
        let text = format!("\"{by}\" is on the map, which mostly comes with {}", listed(&kinds));
        finding.because.push(Because { text, step: None });
    }
    finding
        .remedy
        .push("Answer for each: here and touched, here and not touched, not on this appliance".to_owned());
    findings.push(finding);
}
