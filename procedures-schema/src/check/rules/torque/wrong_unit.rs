//! `torque/wrong-unit`: a torque is in a unit of something else.

use crate::check::context::Context;
use crate::check::document::actions;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::units::Quantity;

pub(in crate::check) static RULE: Rule = Rule {
    code: "torque/wrong-unit",
    level: Level::Reject,
    summary: "a torque is in a unit of something else",
    documentation: documentation!("wrong_unit.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (at, action) in actions(context) {
        let Some(torque) = &action.torque else { continue };
        if torque.unit.quantity() != Quantity::Torque {
            let title = format!(
                "Step {} asks for a torque in {}, which is no unit of torque",
                at.number,
                torque.unit.shown()
            );
            findings.push(at.finding(rule, title, "Give it in N·m or lbf·ft"));
        }
    }
}
