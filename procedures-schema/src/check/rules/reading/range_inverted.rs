//! `reading/range-inverted`: a reading has its smallest accepted value above its largest.

use crate::check::context::Context;
use crate::check::document::actions;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::model::{Reading, Verb};

pub(in crate::check) static RULE: Rule = Rule {
    code: "reading/range-inverted",
    level: Level::Reject,
    summary: "a reading has its smallest accepted value above its largest",
    documentation: documentation!("range_inverted.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (at, action) in actions(context) {
        let judged = matches!(action.verb, Verb::Prove | Verb::Test);
        for reading in action.readings.iter().filter(|reading| judged && is_inverted(reading)) {
            let title = format!(
                "Step {} takes the reading \"{}\" with its limits the wrong way round",
                at.number, reading.what
            );
            findings.push(at.finding(rule, title, "Put the smaller value first"));
        }
    }
}

/// Whether the limits of a reading are the wrong way round.
fn is_inverted(reading: &Reading) -> bool {
    let Some(range) = &reading.limits else { return false };
    matches!((&range.min, &range.max), (Some(min), Some(max)) if min.value() > max.value())
}
