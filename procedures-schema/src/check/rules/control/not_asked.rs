//! `control/not-asked`: a step hangs on an answer that no step before it asks for.

use crate::check::context::Context;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::model::{Id, Procedure};
use std::collections::BTreeMap;

pub(in crate::check) static RULE: Rule = Rule {
    code: "control/not-asked",
    level: Level::Reject,
    summary: "a step hangs on an answer that no step before it asks for",
    documentation: documentation!("not_asked.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    let procedure = context.procedure;
    if procedure.steps.iter().all(|step| step.when.is_empty()) {
        return;
    }
    let asked_at = places(procedure);
    let mut told: Vec<&Id> = Vec::new();
    for (number, step) in (1..).zip(&procedure.steps) {
        for when in &step.when {
            let place = asked_at.get(&when.question).copied();
            if place.is_some_and(|place| place < number) || told.contains(&&when.question) {
                continue;
            }
            told.push(&when.question);
            let asked = procedure.questions.iter().find(|question| question.id == when.question);
            let words = asked.map_or("a question that is not listed", |question| question.words.as_str());
            let title = match place {
                Some(place) => {
                    format!("Step {number} hangs on the answer to \"{words}\", which step {place} asks")
                }
                None => format!("Step {number} hangs on the answer to \"{words}\", which no step asks"),
            };
            let mut finding = rule.finding(title);
            finding.step = Some(step.id.clone());
            finding.remedy.push("Ask it in a step before this one".to_owned());
            findings.push(finding);
        }
    }
}

/// The number of the first step that asks each question.
fn places(procedure: &Procedure) -> BTreeMap<&Id, usize> {
    let mut places = BTreeMap::new();
    for (number, step) in (1..).zip(&procedure.steps) {
        for question in step.actions.iter().filter_map(|action| action.ask.as_ref()) {
            places.entry(question).or_insert(number);
        }
    }
    places
}
