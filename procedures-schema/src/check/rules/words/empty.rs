//! `words/empty`: a step has no words.

use crate::check::context::Context;
use crate::check::document::steps;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "words/empty",
    level: Level::Warn,
    summary: "a step has no words",
    documentation: documentation!("empty.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for at in steps(context) {
        if at.step.words.trim().is_empty() {
            let title = format!("Step {} has no words", at.number);
            findings.push(at.finding(rule, title, "Say what to do, or take the step out"));
        }
    }
}
