//! `words/vague`: a sentence says how in a word that means nothing.

use crate::check::context::Context;
use crate::check::document::steps_holding;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "words/vague",
    level: Level::Warn,
    summary: "a sentence says how in a word that means nothing",
    documentation: documentation!("vague.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (at, _) in steps_holding(context, PHRASES) {
        let title = format!("Step {} uses a word that everybody reads otherwise", at.number);
        findings.push(at.finding(rule, title, "Give the limit, the count or the method"));
    }
}

/// What gives it away.
const PHRASES: &[&str] = &[
    "as required",
    "as necessary",
    "properly",
    "adequately",
    "suitable",
    "appropriate",
    "a few",
    "securely",
    "sufficiently",
];
