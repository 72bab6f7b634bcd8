//! `words/left-out`: a sentence names a thing beside those of its actions.

use crate::capture::{begins_with_a_seal, left_out};
use crate::check::context::Context;
use crate::check::document::steps;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "words/left-out",
    level: Level::Warn,
    summary: "a sentence names a thing beside those of its actions",
    documentation: documentation!("left_out.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for at in steps(context).filter(|at| context.heard.may_leave_out(at.number - 1)) {
        for span in left_out(&at.step.words, &context.procedure.map, &at.step.actions) {
            let text = span.of(&at.step.words);
            if at.step.declined.iter().any(|known| known.eq_ignore_ascii_case(text)) {
                continue;
            }
            let title = format!("Step {} names \"{text}\" too, and no action holds it", at.number);
            let advice = if begins_with_a_seal(text) {
                "Name the joint that it seals, or decline the reading"
            } else {
                "Give it a sentence of its own, or decline the reading"
            };
            let mut finding = at.finding(rule, title, advice);
            finding.span = Some(span);
            findings.push(finding);
        }
    }
}
