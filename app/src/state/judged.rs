//! A document together with everything that is worked out from it: trace, verdict, lanes.
//!
//! Worked out once per edit and shared; views pick their part by step.

use super::clock;
use procedures_schema::check::{self, Finding, Level, Report, Sayings, Verdict};
use procedures_schema::derive::lanes::{self, LaneRow, Lanes};
use procedures_schema::model::{Country, Id, Procedure};
use procedures_schema::simulate::{Run, Trace, runs_alike, simulate};
use std::cmp::Ordering;
use std::sync::Arc;

/// A document and what the core says about it.
pub struct Judged {
    /// The document.
    pub document: Arc<Procedure>,
    /// What is true when.
    pub trace: Arc<Trace>,
    /// What the checker says.
    pub report: Report,
    /// The picture of the trace.
    pub lanes: Arc<Lanes>,
    /// What the words of its steps say, for the next check.
    sayings: Sayings,
}

/// How many findings there are of each level.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counts {
    /// Those that reject.
    pub n_to_mend: usize,
    /// Those that must be mended or accepted with a reason.
    pub n_doubts: usize,
    /// Those that only advise.
    pub n_advice: usize,
}

impl Counts {
    /// What stands beside the stamp: `3 doubts, 2 advice`; nothing, if there are neither.
    pub fn beside_the_stamp(self) -> String {
        let doubts = (self.n_doubts > 0).then(|| doubts(self.n_doubts));
        let advice = (self.n_advice > 0).then(|| format!("{} advice", self.n_advice));
        doubts.into_iter().chain(advice).collect::<Vec<_>>().join(", ")
    }

    /// What has changed since another state: `+1 to mend, −2 doubts`.
    pub fn since(self, before: Self) -> String {
        let differs = |before: usize, now: usize| match now.cmp(&before) {
            Ordering::Less => Some(('−', before - now)),
            Ordering::Equal => None,
            Ordering::Greater => Some(('+', now - before)),
        };
        let rejects = differs(before.n_to_mend, self.n_to_mend).map(|(sign, n)| format!("{sign}{n} to mend"));
        let doubts = differs(before.n_doubts, self.n_doubts).map(|(sign, n)| format!("{sign}{}", doubts(n)));
        let changes: Vec<String> = rejects.into_iter().chain(doubts).collect();
        if changes.is_empty() { "verdict unchanged".to_owned() } else { changes.join(", ") }
    }
}

fn doubts(n: usize) -> String {
    if n == 1 { "1 doubt".to_owned() } else { format!("{n} doubts") }
}

/// How many things apart the width of the curve stands for: the largest count in some lanes or, so that a thing more
/// seldom draws the curve anew beside every row, the next of 4, 6, 8, 12, 16, 24 and so on.
pub fn most_apart(lanes: &Lanes) -> u32 {
    let most = lanes.rows.iter().map(|row| row.apart_after.max(row.apart_before)).max().unwrap_or(0).max(4);
    let below = 1 << (most.max(2) - 1).ilog2();
    if most <= below / 2 * 3 { below / 2 * 3 } else { 2 * below }
}

impl Judged {
    /// Runs and checks a document.
    pub fn of(document: Arc<Procedure>) -> Self {
        Self::after(None, document)
    }

    /// As [`Judged::of`] for the next state of a document: what does not hang on words is taken over from the
    /// one before where nothing but words has changed, and of the words what steps say that are the same.
    pub fn after(before: Option<&Arc<Self>>, document: Arc<Procedure>) -> Self {
        let alike = before.filter(|before| runs_alike(&before.document, &document));
        let run = || {
            let trace = simulate(&document, &Run::of(&document));
            let lanes = lanes::lanes(&document, &trace);
            (Arc::new(trace), Arc::new(lanes))
        };
        let (trace, lanes) = alike.map_or_else(run, |before| (before.trace.clone(), before.lanes.clone()));
        let said = before.map(|before| &before.sayings);
        let (report, sayings) = check::check_after(said, &document, &trace, clock::today());
        Self { document, trace, report, lanes, sayings }
    }

    /// The findings at a step, or at the end if `step` is none or no longer there.
    pub fn findings_at(&self, step: Option<&Id>) -> Vec<Finding> {
        let at_end = |finding: &Finding| {
            finding.step.as_ref().is_none_or(|step| self.document.position(step).is_none())
        };
        let here = |finding: &&Finding| match step {
            Some(step) => finding.step.as_ref() == Some(step),
            None => at_end(finding),
        };
        self.report.findings.iter().filter(here).cloned().collect()
    }

    /// Whether the verdict is *rejected*.
    pub fn is_rejected(&self) -> bool {
        self.report.verdict == Verdict::Rejected
    }

    /// How many findings there are of each level.
    pub fn counts(&self) -> Counts {
        let mut counts = Counts::default();
        for finding in &self.report.findings {
            match finding.level {
                Level::Reject => counts.n_to_mend += 1,
                Level::Warn => counts.n_doubts += 1,
                Level::Advise => counts.n_advice += 1,
            }
        }
        counts
    }

    /// The stamp: `REJECTED · 2 to mend`, `ACCEPTED · DRAFT, 3 later` or `ACCEPTED`.
    pub fn stamp(&self) -> String {
        if self.is_rejected() {
            format!("REJECTED · {} to mend", self.counts().n_to_mend)
        } else if self.is_draft() {
            format!("ACCEPTED · DRAFT, {} later", self.report.n_later)
        } else {
            "ACCEPTED".to_owned()
        }
    }

    /// Whether it is accepted, and something in it is still to be found out.
    pub fn is_draft(&self) -> bool {
        !self.is_rejected() && self.report.n_later > 0
    }

    /// By what it was judged: how many rules, and whose limits.
    pub fn judged_by(&self) -> String {
        let limits = match &self.document.country {
            None => "country not said".to_owned(),
            Some(Country::Elsewhere) => "by the author's limits only".to_owned(),
            Some(country) => format!("written for {}", country.word()),
        };
        format!("by {} rules, {limits}, not for work yet", self.report.n_rules)
    }

    /// What a file of this document carries in its name: `REJECTED`, `DRAFT` or nothing.
    pub fn mark_of_file(&self) -> Option<&'static str> {
        if self.is_rejected() {
            Some("REJECTED")
        } else if self.is_draft() {
            Some("DRAFT")
        } else {
            None
        }
    }
}

/// The lanes beside a step at a position.
pub fn row_of<'l>(lanes: &'l Lanes, position: usize, step: &Id) -> Option<&'l LaneRow> {
    let at_once = lanes.rows.get(position).filter(|row| row.step == *step);
    at_once.or_else(|| lanes.rows.iter().find(|row| row.step == *step))
}

#[cfg(test)]
mod tests {
    use super::{Counts, LaneRow, Lanes, most_apart};
    use procedures_schema::model::Id;
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test]
    fn what_a_move_changes_counts_doubts_too() {
        let counts = |n_to_mend, n_doubts, n_advice| Counts { n_to_mend, n_doubts, n_advice };
        let before = counts(1, 1, 0);
        assert_eq!(before.since(before), "verdict unchanged");
        assert_eq!(counts(1, 2, 0).since(before), "+1 doubt");
        assert_eq!(counts(3, 0, 5).since(before), "+2 to mend, −1 doubt");
        assert_eq!(counts(0, 3, 0).since(before), "−1 to mend, +2 doubts");
    }

    #[wasm_bindgen_test]
    fn doubts_and_advice_stand_beside_the_stamp() {
        let said = |n_doubts, n_advice| Counts { n_to_mend: 4, n_doubts, n_advice }.beside_the_stamp();
        assert_eq!(said(0, 0), "");
        assert_eq!(said(1, 0), "1 doubt");
        assert_eq!(said(0, 1), "1 advice");
        assert_eq!(said(3, 2), "3 doubts, 2 advice");
    }

    #[wasm_bindgen_test]
    fn the_curve_is_as_wide_as_the_largest_count_or_a_little_wider() {
        let width = |most: u32| {
            let row =
                |apart_after| LaneRow { step: Id::new("s"), cells: Vec::new(), apart_before: 0, apart_after };
            most_apart(&Lanes { rows: vec![row(0), row(most), row(1)], ..Lanes::default() })
        };
        for (most, is) in [(0, 4), (4, 4), (5, 6), (7, 8), (8, 8), (9, 12), (13, 16), (24, 24), (25, 32)] {
            assert_eq!(width(most), is, "{most}");
        }
    }
}
