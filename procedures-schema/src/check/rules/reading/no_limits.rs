//! `reading/no-limits`: a reading of a proof or test has nothing to decide by.

use crate::check::context::Context;
use crate::check::document::actions;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::model::{Reading, Verb};
use crate::simulate::default_readings;
use std::borrow::Cow;

pub(in crate::check) static RULE: Rule = Rule {
    code: "reading/no-limits",
    level: Level::Reject,
    summary: "a reading of a proof or test has nothing to decide by",
    documentation: documentation!("no_limits.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (at, action) in actions(context) {
        if !matches!(action.verb, Verb::Prove | Verb::Test) {
            continue;
        }
        // The readings of the tables have limits, but not for every country.
        let of_country = context.procedure.country.as_ref().filter(|_| action.readings.is_empty());
        let readings = if of_country.is_some() {
            Cow::Owned(default_readings(context.procedure, action))
        } else {
            Cow::Borrowed(&action.readings)
        };
        for reading in readings.iter().filter(|reading| is_open(reading)) {
            let of_country = of_country.map(|country| format!(", for none are known for {country}"));
            let title = format!(
                "Step {} takes the reading \"{}\" without limits{}",
                at.number,
                reading.what,
                of_country.unwrap_or_default()
            );
            findings.push(at.finding(
                rule,
                title,
                "Give the smallest and largest accepted value, or what must be seen",
            ));
        }
    }
}

/// Whether a reading has neither a limit nor something to see.
fn is_open(reading: &Reading) -> bool {
    let limited = reading.limits.as_ref().is_some_and(|range| range.min.is_some() || range.max.is_some());
    !limited && reading.seen.trim().is_empty()
}
