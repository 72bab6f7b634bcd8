//! `control/override-unsupported`: a demand that the document replaces is judged as if it were not replaced.

use crate::check::context::Context;
use crate::check::finding::{Because, Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::simulate::Replacement;

pub(in crate::check) static RULE: Rule = Rule {
    code: "control/override-unsupported",
    level: Level::Reject,
    summary: "a demand that the document replaces is judged as if it were not replaced",
    documentation: documentation!("override_unsupported.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    let replaced = context.procedure.overrides.iter().zip(context.trace.plant().replacements());
    for (number, (given, became)) in (1..).zip(replaced) {
        let Some((because, remedy)) = told(*became) else { continue };
        let demand = given.demand.word();
        let title = format!("Replaced demand {number}, \"{demand}\", does not count since the start");
        let mut finding = rule.finding(title);
        finding.because.push(Because { text: because.to_owned(), step: None });
        finding.remedy.push(remedy.to_owned());
        findings.push(finding);
    }
}

/// Why a replaced demand does not count, and what to do.
fn told(became: Replacement) -> Option<(&'static str, &'static str)> {
    match became {
        Replacement::Applied => None,
        Replacement::NoWords => {
            Some(("it does not say in words what takes its place", "Say what takes its place"))
        }
        Replacement::NoSource => Some(("it has no source", "Say what allows it")),
        Replacement::SourceNotListed => {
            Some(("it cites a source that is not listed", "List the source, or cite one that is listed"))
        }
        Replacement::NotOnMap => Some((
            "it is confined to what the appliance map does not know",
            "Name circuits, sections, connections, parts or settings of the map",
        )),
        Replacement::NotReplaceable => Some((
            "nothing can take the place of a demand of this sort",
            "Take it out and do what is demanded, or use a version that knows it",
        )),
        Replacement::NothingToReplace => Some((
            "there is no such demand here, or what takes its place does not fit it",
            "Name the kind, test and reading as the tables do, with a test, limits or a duration that fits",
        )),
    }
}
