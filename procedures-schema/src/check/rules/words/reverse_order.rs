//! `words/reverse-order`: a sentence refers to other steps in reverse.

use crate::check::context::Context;
use crate::check::document::steps_holding;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "words/reverse-order",
    level: Level::Warn,
    summary: "a sentence refers to other steps in reverse",
    documentation: documentation!("reverse_order.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (at, _) in steps_holding(context, PHRASES) {
        let title = format!("Step {} refers to other steps instead of saying what to do", at.number);
        findings.push(at.finding(rule, title, "Write the steps out, with seals, torques and tests"));
    }
}

/// What gives it away.
const PHRASES: &[&str] =
    &["reverse order", "reversal of", "as above", "step above", "step below", "previous step"];
