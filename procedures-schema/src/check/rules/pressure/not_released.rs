//! `pressure/not-released`: a joint is touched while its section is cut off but under pressure.

use crate::check::context::Context;
use crate::check::finding::{Finding, Level};
use crate::check::ladder;
use crate::check::rule::Rule;
use crate::simulate::Hazard;

pub(in crate::check) static RULE: Rule = Rule {
    code: "pressure/not-released",
    level: Level::Reject,
    summary: "a joint is touched while its section is cut off but under pressure",
    documentation: include_str!("not_released.md"),
    check,
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    ladder::not_released(rule, context, Hazard::Pressure, findings);
}
