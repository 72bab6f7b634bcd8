//! `isolation/not-locked`: something is touched while its supply is off but not locked.

use crate::check::context::Context;
use crate::check::finding::{Finding, Level};
use crate::check::ladder;
use crate::check::rule::Rule;
use crate::simulate::Hazard;

pub(in crate::check) static RULE: Rule = Rule {
    code: "isolation/not-locked",
    level: Level::Reject,
    summary: "something is touched while its supply is off but not locked",
    documentation: include_str!("not_locked.md"),
    check,
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    ladder::not_locked(rule, context, Hazard::Isolation, findings);
}
