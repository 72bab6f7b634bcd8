//! `words/tolerance`: a sentence leaves a limit to be worked out.

use crate::check::context::Context;
use crate::check::document::steps_holding;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "words/tolerance",
    level: Level::Warn,
    summary: "a sentence leaves a limit to be worked out",
    documentation: documentation!("tolerance.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (at, _) in steps_holding(context, PHRASES) {
        let title = format!("Step {} leaves its limits to be worked out", at.number);
        findings.push(at.finding(rule, title, "Write both limits: 12 N·m to 14 N·m"));
    }
}

/// What gives it away.
const PHRASES: &[&str] = &["±", "+/-", "plus or minus"];
