//! `isolation/not-proved`: something is touched that was not proved dead.

use crate::check::context::Context;
use crate::check::finding::{Finding, Level};
use crate::check::ladder;
use crate::check::rule::Rule;
use crate::simulate::Hazard;

pub(in crate::check) static RULE: Rule = Rule {
    code: "isolation/not-proved",
    level: Level::Reject,
    summary: "something is touched that was not proved dead",
    documentation: include_str!("not_proved.md"),
    check,
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    ladder::not_proved(rule, context, Hazard::Isolation, findings);
}
