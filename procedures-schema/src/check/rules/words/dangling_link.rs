//! `words/dangling-link`: a sentence points at a step that is not there.

use crate::check::context::Context;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::model::step_links;
use std::cell::LazyCell;
use std::collections::BTreeSet;

pub(in crate::check) static RULE: Rule = Rule {
    code: "words/dangling-link",
    level: Level::Reject,
    summary: "a sentence points at a step that is not there",
    documentation: documentation!("dangling_link.md"),
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
        if step.after_failures().next().is_none() {
            continue;
        }
        for block in step.with_after_failures().into_iter().skip(1) {
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
