//! `reading/unit-unfit`: a reading is in a unit that is not in the list.

use crate::check::context::Context;
use crate::check::document::actions;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::model::{Reading, Verb};
use crate::units::Quantity;

pub(in crate::check) static RULE: Rule = Rule {
    code: "reading/unit-unfit",
    level: Level::Reject,
    summary: "a reading is in a unit that is not in the list",
    documentation: documentation!("unit_unfit.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (at, action) in actions(context) {
        let judged = matches!(action.verb, Verb::Prove | Verb::Test);
        for reading in action.readings.iter().filter(|reading| judged && is_unfit(reading)) {
            let title = format!(
                "Step {} takes the reading \"{}\" in a unit that is not in the list",
                at.number, reading.what
            );
            findings.push(at.finding(rule, title, "Use a unit of the list, by its UCUM code"));
        }
    }
}

/// Whether the unit of a reading measures nothing that is known.
fn is_unfit(reading: &Reading) -> bool {
    reading.limits.as_ref().is_some_and(|range| range.unit.quantity() == Quantity::Unknown)
}
