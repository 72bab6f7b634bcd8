//! `reading/no-source`: a limit of a proof or test has no source.

use crate::check::context::Context;
use crate::check::document::actions;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::model::{Reading, Verb, listed};

pub(in crate::check) static RULE: Rule = Rule {
    code: "reading/no-source",
    level: Level::Warn,
    summary: "a limit of a proof or test has no source",
    documentation: documentation!("no_source.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (at, action) in actions(context) {
        let judged = matches!(action.verb, Verb::Prove | Verb::Test);
        let unsourced = action.readings.iter().filter(|reading| judged && is_unsourced(reading));
        let named: Vec<String> = unsourced.map(|reading| format!("\"{}\"", reading.what)).collect();
        if named.is_empty() {
            continue;
        }
        let readings = if named.len() == 1 { "reading" } else { "readings" };
        let title =
            format!("Step {} takes the {readings} {} with limits of no source", at.number, listed(&named));
        findings.push(at.finding(
            rule,
            title,
            "Name the source: maker, standard with edition, or common practice",
        ));
    }
}

/// Whether a reading has limits and no source for them.
fn is_unsourced(reading: &Reading) -> bool {
    reading.limits.is_some() && reading.source.trim().is_empty()
}
