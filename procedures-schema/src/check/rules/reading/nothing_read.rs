//! `reading/nothing-read`: a test says nothing of what is read or seen.

use crate::check::context::Context;
use crate::check::document::actions;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::model::Verb;
use crate::simulate::is_read;

pub(in crate::check) static RULE: Rule = Rule {
    code: "reading/nothing-read",
    level: Level::Warn,
    summary: "a test says nothing of what is read or seen",
    documentation: documentation!("nothing_read.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (at, action) in actions(context) {
        if action.verb == Verb::Test && !is_read(action) {
            let test = action.test.as_ref().map_or("test", |test| test.word());
            let title = format!("Step {} does a {test} test without a reading", at.number);
            findings.push(at.finding(rule, title, "Say what is read or seen, its limits and their source"));
        }
    }
}
