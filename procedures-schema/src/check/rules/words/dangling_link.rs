//! `words/dangling-link`: a sentence points at a step that is not there.

use crate::check::context::Context;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule};
use crate::model::{Step, step_links};
use std::cell::LazyCell;
use std::collections::BTreeSet;

pub(in crate::check) static RULE: Rule = Rule {
    code: "words/dangling-link",
    level: Level::Reject,
    summary: "a sentence points at a step that is not there",
    documentation: include_str!("dangling_link.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    // Only the steps of the document have numbers, not those that follow a failed test.
    // Few documents have a link, so the list is made when the first is met.
    let there: LazyCell<BTreeSet<&str>, _> =
        LazyCell::new(|| context.procedure.steps.iter().map(|step| step.id.as_str()).collect());
    for (number, step) in (1..).zip(&context.procedure.steps) {
        let found = |title: String| {
            let mut finding = rule.finding(title);
            finding.step = Some(step.id.clone());
            finding.remedy.push("Point at a step of this document, or take the link out".to_owned());
            finding
        };
        for link in step_links(&step.words).into_iter().filter(|link| !there.contains(link.step)) {
            let title = format!("Step {number} points at a step \"{}\" that is not there", link.step);
            findings.push(Finding { span: Some(link.span), ..found(title) });
        }
        for block in after_failures(step) {
            for link in step_links(&block.words).into_iter().filter(|link| !there.contains(link.step)) {
                let link = link.step;
                let title = format!(
                    "What follows a failure at step {number} points at \"{link}\", which is not there"
                );
                findings.push(found(title));
            }
        }
    }
}

/// The steps that follow a failed test of a step, and those that follow theirs.
fn after_failures(step: &Step) -> Vec<&Step> {
    let mut found: Vec<&Step> = Vec::new();
    let mut here = step;
    let mut next = 0;
    loop {
        let blocks = here.actions.iter().filter_map(|action| action.on_fail.as_ref());
        found.extend(blocks.flat_map(|on_fail| &on_fail.steps));
        let Some(step) = found.get(next) else { return found };
        here = step;
        next += 1;
    }
}
