//! `control/hold-incomplete`: a hold does not say who lifts it.

use crate::check::context::Context;
use crate::check::document::actions;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::model::Verb;

pub(in crate::check) static RULE: Rule = Rule {
    code: "control/hold-incomplete",
    level: Level::Reject,
    summary: "a hold does not say who lifts it",
    documentation: documentation!("hold_incomplete.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (at, action) in actions(context).filter(|(_, action)| action.verb == Verb::Hold) {
        if action.text.as_deref().is_none_or(|who| who.trim().is_empty()) {
            let title = format!("Step {} holds and does not say who lifts it", at.number);
            findings.push(at.finding(rule, title, "Name the role that lifts it, and what it looks at"));
        }
    }
}
