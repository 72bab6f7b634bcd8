//! `gas/still-fed`: a gas joint is touched while gas still reaches it.

use crate::check::context::Context;
use crate::check::finding::{Finding, Level};
use crate::check::ladder;
use crate::check::rule::Rule;
use crate::simulate::Hazard;

pub(in crate::check) static RULE: Rule = Rule {
    code: "gas/still-fed",
    level: Level::Reject,
    summary: "a gas joint is touched while gas still reaches it",
    documentation: include_str!("still_fed.md"),
    check,
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    ladder::still_fed(rule, context, Hazard::Gas, findings);
}
