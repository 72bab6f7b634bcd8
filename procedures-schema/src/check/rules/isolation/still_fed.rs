//! `isolation/still-fed`: something is touched while electricity still reaches it.

use crate::check::context::Context;
use crate::check::finding::{Finding, Level};
use crate::check::ladder;
use crate::check::rule::Rule;
use crate::simulate::Hazard;

pub(in crate::check) static RULE: Rule = Rule {
    code: "isolation/still-fed",
    level: Level::Reject,
    summary: "something is touched while electricity still reaches it",
    documentation: include_str!("still_fed.md"),
    check,
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    ladder::still_fed(rule, context, Hazard::Isolation, findings);
}
