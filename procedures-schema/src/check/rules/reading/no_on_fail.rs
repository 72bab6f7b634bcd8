//! `reading/no-on-fail`: a test does not say what follows when it fails.

use crate::check::context::Context;
use crate::check::document::actions;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::model::Verb;

pub(in crate::check) static RULE: Rule = Rule {
    code: "reading/no-on-fail",
    level: Level::Advise,
    summary: "a test does not say what follows when it fails",
    documentation: documentation!("no_on_fail.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (at, action) in actions(context) {
        if action.verb == Verb::Test && !action.readings.is_empty() && action.on_fail.is_none() {
            let test = action.test.as_ref().map_or("test", |test| test.word());
            let title = format!("Step {} does not say what follows when the {test} test fails", at.number);
            findings.push(at.finding(
                rule,
                title,
                "Say it: read again, the steps that mend it, or leave it safe",
            ));
        }
    }
}
