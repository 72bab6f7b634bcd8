//! `torque/range-inverted`: a torque has its smallest value above its largest.

use crate::check::context::Context;
use crate::check::document::actions;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "torque/range-inverted",
    level: Level::Reject,
    summary: "a torque has its smallest value above its largest",
    documentation: documentation!("range_inverted.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (at, action) in actions(context) {
        let Some(torque) = &action.torque else { continue };
        if matches!((&torque.min, &torque.max), (Some(min), Some(max)) if min.value() > max.value()) {
            let title = format!("Step {} asks for a torque with its limits the wrong way round", at.number);
            findings.push(at.finding(rule, title, "Put the smaller value first"));
        }
    }
}
