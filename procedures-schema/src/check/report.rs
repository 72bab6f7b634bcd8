//! The report on a document: verdict, standing, findings, and what the checker was told of.

use super::catalogue::catalogue;
use super::cause::findings_of_unmet;
use super::context::Context;
use super::finding::{Finding, Level};
use super::rule::{Looks, Rule};
use super::sayings::{Heard, Sayings};
use crate::model::{CensusAnswer, Date, Id, Procedure, open_values};
use crate::simulate::{Replacement, Run, Trace, simulate};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// Whether a document may be followed as far as the checker can tell. Never "safe".
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// No finding rejects it.
    Accepted,
    /// At least one finding rejects it.
    Rejected,
}

/// How far the writing is, whatever the verdict.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// Values are still to be found out.
    Draft,
    /// Nothing is left for later.
    Ready,
}

/// What the checker says of a document.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Report {
    /// The verdict.
    pub verdict: Verdict,
    /// The standing.
    pub standing: Standing,
    /// Findings in the order of the steps, those that reject first within a step.
    pub findings: Vec<Finding>,
    /// How many rules judged.
    pub n_rules: usize,
    /// Values left for later.
    pub n_later: usize,
    /// Warnings that somebody has waived, with reason and name; in the same order.
    pub waived: Vec<Waived>,
    /// Demands of the tables in whose place the document puts others, with their sources.
    pub n_replaced: usize,
    /// The kinds of circuits that the document names; the checker cannot know of others.
    pub told_of: Vec<String>,
    /// The date for which it was judged.
    pub today: Date,
}

/// A warning that somebody has decided to accept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Waived {
    /// The warning.
    pub finding: Finding,
    /// The position of the waiver in the document's list.
    pub waiver: usize,
}

impl Report {
    /// How many findings reject.
    pub fn n_rejecting(&self) -> usize {
        self.findings.iter().filter(|finding| finding.level == Level::Reject).count()
    }
}

/// Checks a document along its own run.
pub fn check(procedure: &Procedure, today: Date) -> Report {
    check_trace(procedure, &simulate(procedure, &Run::of(procedure)), today)
}

/// Checks a document along a trace that the caller has already.
pub fn check_trace(procedure: &Procedure, trace: &Trace, today: Date) -> Report {
    check_with(procedure, trace, today, catalogue())
}

/// As [`check_trace`] where another state of the document was checked before: sooner, with the same report.
/// Gives what the next check begins with.
pub fn check_after(
    before: Option<&Sayings>,
    procedure: &Procedure,
    trace: &Arc<Trace>,
    today: Date,
) -> (Report, Sayings) {
    let mut sayings = before.map_or_else(|| Sayings::of(procedure), |before| before.followed_by(procedure));
    let open = sayings.open();
    let context = Context::new(procedure, trace, &sayings.heard, &open);
    let known = before.and_then(|before| before.found_in(procedure, trace));
    let unmet = known.unwrap_or_else(|| findings_of_unmet(&context, catalogue()).into());
    let (report, clean) = report(&context, today, catalogue(), unmet.to_vec());
    (sayings.clean, sayings.unmet) = (clean, Some((trace.clone(), unmet)));
    (report, sayings)
}

/// Checks a document by some of the rules; a verdict by fewer than all is worth less.
pub fn check_with(procedure: &Procedure, trace: &Trace, today: Date, rules: &[&'static Rule]) -> Report {
    let heard = Heard::of(procedure);
    let open: Vec<usize> = (0..procedure.steps.len()).collect();
    let context = Context::new(procedure, trace, &heard, &open);
    report(&context, today, rules, findings_of_unmet(&context, rules)).0
}

/// The report, of which the findings in the run are known; and by the position of the step whether nothing that is
/// written was found of it.
fn report(
    context: &Context<'_>,
    today: Date,
    rules: &[&'static Rule],
    unmet: Vec<Finding>,
) -> (Report, Vec<bool>) {
    let (procedure, trace) = (context.procedure, context.trace);
    let n_unmet = unmet.len();
    let mut findings = unmet;
    for rule in rules {
        if let Looks::AtDocument(look) = rule.looks {
            look(rule, context, &mut findings);
        }
    }
    let positions = positions_of(procedure, &findings);
    let mut clean = vec![true; procedure.steps.len()];
    let written =
        findings.get(n_unmet..).unwrap_or_default().iter().filter_map(|finding| finding.step.as_ref());
    for position in written.filter_map(|step| positions.get(step)) {
        if let Some(clean) = clean.get_mut(*position) {
            *clean = false;
        }
    }
    // A finding without a step concerns the whole document and stands first.
    findings.sort_by_key(|finding| {
        let position = finding.step.as_ref().and_then(|id| positions.get(id).copied());
        (position, finding.level, finding.action, finding.code)
    });
    let waived = take_waived(procedure, &mut findings);
    let rejected = findings.iter().any(|finding| finding.level == Level::Reject);
    let replacements = trace.plant().replacements();
    let n_later = open_values(procedure).len();
    let report = Report {
        verdict: if rejected { Verdict::Rejected } else { Verdict::Accepted },
        standing: if n_later > 0 { Standing::Draft } else { Standing::Ready },
        findings,
        n_rules: rules.len(),
        n_later,
        waived,
        n_replaced: replacements.iter().filter(|became| **became == Replacement::Applied).count(),
        told_of: told_of(procedure),
        today,
    };
    (report, clean)
}

/// Where the steps stand of which something is found.
fn positions_of<'p>(procedure: &'p Procedure, findings: &[Finding]) -> BTreeMap<&'p Id, usize> {
    let mut told: BTreeSet<&Id> = BTreeSet::new();
    told.extend(findings.iter().filter_map(|finding| finding.step.as_ref()));
    let mut positions = BTreeMap::new();
    for (position, step) in procedure.steps.iter().enumerate() {
        if told.contains(&step.id) {
            positions.insert(&step.id, position);
        }
    }
    positions
}

/// Takes out what somebody has waived.
fn take_waived(procedure: &Procedure, findings: &mut Vec<Finding>) -> Vec<Waived> {
    let mut waived = Vec::new();
    if !procedure.waivers.is_empty() {
        findings.retain(|finding| match waiver_of(procedure, finding) {
            Some(at) => {
                waived.push(Waived { finding: finding.clone(), waiver: at });
                false
            }
            None => true,
        });
    }
    waived
}

/// Only a warning can be waived, and only with a reason and a name.
fn waiver_of(procedure: &Procedure, finding: &Finding) -> Option<usize> {
    if finding.level != Level::Warn {
        return None;
    }
    procedure.waivers.iter().position(|waiver| {
        waiver.code == finding.code
            && (waiver.step.is_none() || waiver.step == finding.step)
            && !waiver.reason.trim().is_empty()
            && !waiver.by.trim().is_empty()
    })
}

fn told_of(procedure: &Procedure) -> Vec<String> {
    let mut kinds: Vec<String> = Vec::new();
    let named = procedure.map.circuits.iter().map(|circuit| &circuit.kind);
    let answered = procedure.census.iter().filter(|entry| entry.answer != CensusAnswer::Absent);
    for kind in named.chain(answered.map(|entry| &entry.kind)) {
        if !kinds.iter().any(|known| known == kind.word()) {
            kinds.push(kind.word().to_owned());
        }
    }
    kinds
}

#[cfg(test)]
mod tests;
