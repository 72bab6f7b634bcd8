//! `words/placeholder`: a sentence holds a place-holder.

use crate::check::context::Context;
use crate::check::document::steps_holding;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "words/placeholder",
    level: Level::Warn,
    summary: "a sentence holds a place-holder",
    documentation: documentation!("placeholder.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (at, _) in steps_holding(context, PHRASES) {
        let title = format!("Step {} holds a place-holder", at.number);
        findings.push(at.finding(rule, title, "Fill it in, or mark the value as later in the appliance map"));
    }
}

/// What gives it away.
const PHRASES: &[&str] = &["tbd", "tbc", "todo", "??", "xxx", "lorem"];
