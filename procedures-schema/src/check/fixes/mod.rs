//! Fixes: changes that would mend a finding, made and tried on demand.
//!
//! A fix is a list of ordinary edits with a label. None is offered that was not tried: the edits are applied
//! to a copy, the copy is simulated and checked, and the finding must be gone and no new one may reject. So
//! [`fixes`] costs a check for every place that is tried, which is why [`super::check`] makes none.
//!
//! Not every rule has a fix; most mistakes need what only the writer knows. Where he is asked which of two figures
//! holds, there are two.

mod before;
mod differs;
mod order;
mod places;
mod proof;
mod reach;
mod restated;
mod steps;
mod words;

use super::cause::causes;
use super::context::Context;
use super::finding::{Finding, Level};
use super::report::{Report, check_after};
use super::sayings::Sayings;
use crate::edit::{Edit, apply};
use crate::model::{Date, Id, IdSource, Procedure};
use crate::simulate::{Run, Unmet, simulate};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// How many changes are tried for one finding; beyond that a mend is looked for by hand.
const MOST_TRIED: usize = 96;

/// A change that mends a finding.
#[derive(Clone, Debug, PartialEq)]
pub struct Fix {
    /// What it does, as a command: `add step 23, "Close the vent."`.
    pub label: String,
    /// The edits, to be applied in order as one entry of the undo.
    pub edits: Vec<Edit>,
}

impl Fix {
    /// Whether it leaves words of a document unread, which nobody does by a key for whatever mends.
    pub fn declines(&self, document: &Procedure) -> bool {
        self.edits.iter().any(|edit| {
            let Edit::SetStep { step } = edit else { return false };
            let before = document.position(&step.id).and_then(|at| document.steps.get(at));
            before.is_some_and(|before| step.declined.len() > before.declined.len())
        })
    }
}

/// The fixes of a finding that the checker gave for this document. Each was tried: applied alone it removes
/// the finding and adds none that rejects.
///
/// There are none for a finding of another document, and none where nothing that was tried helps.
pub fn fixes(procedure: &Procedure, finding: &Finding, today: Date) -> Vec<Fix> {
    let trace = Arc::new(simulate(procedure, &Run::of(procedure)));
    let sayings = Sayings::of(procedure);
    let open = sayings.open();
    let context = Context::new(procedure, &trace, &sayings.heard, &open);
    if finding.code == "words/differs" {
        let (before, sayings) = check_after(Some(&sayings), procedure, &trace, today);
        let trial =
            Trial { document: Arc::new(procedure.clone()), before, sayings: &sayings, finding, today };
        return differs::either(&context, finding).into_iter().filter_map(|one| trial.clean(one)).collect();
    }
    let cause = causes(&context, super::catalogue()).into_iter().find(|cause| cause.tells(&context, finding));
    let met = |code: &str| cause.as_ref().map(|cause| cause.of_rule(code)).unwrap_or_default();
    let mut ids = FreeIds::of(procedure);
    let mut candidates = candidates(&context, finding.code, finding, &met(finding.code), &mut ids);
    // What the same cause leads to later often says best what was forgotten: a joint that is still open.
    for code in &finding.also {
        candidates.extend(self::candidates(&context, code, finding, &met(code), &mut ids));
    }
    if comes_too_early(finding.code) {
        candidates.extend(order::later(&context, finding));
    }
    if candidates.is_empty() {
        return Vec::new();
    }
    let (before, sayings) = check_after(Some(&sayings), procedure, &trace, today);
    let trial = Trial { document: Arc::new(procedure.clone()), before, sayings: &sayings, finding, today };
    trial.best(candidates).into_iter().collect()
}

/// What might mend what a rule found, the best place first.
fn candidates(
    context: &Context<'_>,
    code: &str,
    finding: &Finding,
    met: &[&Unmet],
    ids: &mut FreeIds<'_>,
) -> Vec<Fix> {
    match code {
        "retest/missing" => steps::test(context, met, ids),
        "putback/left-open" | "putback/left-slack" => steps::way_back(context, met, ids),
        "putback/temp-left" => steps::take_away(context, met, ids),
        "putback/supply-off" => steps::restore(context, met, ids),
        "putback/out-of-reach" => reach::in_place(context, met).into_iter().collect(),
        "seal/not-renewed" => words::new_seal(context, met).into_iter().collect(),
        "isolation/not-locked" | "pressure/not-locked" => words::lock(context, met).into_iter().collect(),
        "isolation/proof-incomplete" | "gas/proof-incomplete" | "pressure/proof-incomplete" => {
            proof::complete(context, met).into_iter().collect()
        }
        "words/left-out" | "words/not-typed" => words::decline(context, finding).into_iter().collect(),
        "putback/left-off" | "putback/setting-not-restored" | "putback/run-with-lost-setting" => {
            before::put_back(context, met, ids)
        }
        // Whatever else there is a ready step for; for other rules there is none.
        _ => before::missed(context, met, ids),
    }
}

/// Whether a rule finds a step that comes before what it waits for, so that it helps to move it.
fn comes_too_early(code: &str) -> bool {
    matches!(
        code,
        "isolation/guard-off-live"
            | "isolation/can-start"
            | "isolation/still-fed"
            | "isolation/restored-open"
            | "isolation/restored-guard-off"
            | "isolation/drained-live"
            | "gas/still-fed"
            | "gas/restored-open"
            | "gas/fired-case-open"
            | "gas/fired-before-tested"
            | "gas/purged-before-tested"
            | "pressure/still-fed"
            | "pressure/restored-open"
            | "pressure/energised-dry"
            | "retest/about-to-be-covered"
            | "retest/order"
            | "putback/still-held"
            | "putback/covers-unfinished"
            | "reading/wrong-state"
    )
}

/// A document, what is wrong with it, and which of its findings is to be mended.
struct Trial<'t> {
    document: Arc<Procedure>,
    before: Report,
    sayings: &'t Sayings,
    finding: &'t Finding,
    today: Date,
}

impl Trial<'_> {
    /// The first that leads to nothing new of any level.
    fn clean(&self, candidates: Vec<Fix>) -> Option<Fix> {
        candidates.into_iter().find(|fix| self.left_after(fix).is_some_and(|left| left.new == 0))
    }

    /// The first of those that leave least to be mended.
    fn best(&self, candidates: Vec<Fix>) -> Option<Fix> {
        let mut best: Option<(Left, Fix)> = None;
        for fix in candidates.into_iter().take(MOST_TRIED) {
            let Some(left) = self.left_after(&fix) else { continue };
            let is_all = left.rejecting == 0 && left.new == 0;
            if best.as_ref().is_none_or(|(least, _)| left < *least) {
                best = Some((left, fix));
            }
            if is_all {
                break;
            }
        }
        best.map(|(_, fix)| fix)
    }

    /// What is left once a fix is applied; none if it does not mend, or breaks something else.
    fn left_after(&self, fix: &Fix) -> Option<Left> {
        let mut document = self.document.clone();
        for edit in &fix.edits {
            document = apply(&document, edit).ok()?.document;
        }
        let trace = Arc::new(simulate(&document, &Run::of(&document)));
        let (after, _) = check_after(Some(self.sayings), &document, &trace, self.today);
        let mended = Key::of(self.finding);
        let is_gone = !after.findings.iter().any(|finding| Key::of(finding) == mended);
        let n_new = |level: fn(Level) -> bool| self.n_new(&after, level);
        let breaks_something = n_new(|level| level == Level::Reject) > 0;
        (is_gone && !breaks_something).then(|| Left {
            rejecting: after.n_rejecting(),
            new: n_new(|_| true),
            all: after.findings.len(),
        })
    }

    /// How many findings of some levels were not there before. One that was is known again at a step that the
    /// fix adds: a test that is missing is told behind the last touch.
    fn n_new(&self, after: &Report, level: impl Fn(Level) -> bool) -> usize {
        let (before, after) = (counted(&self.before, &level), counted(after, &level));
        let mended = Key::of(self.finding);
        let mut went: Vec<(&Key<'_>, usize)> = Vec::new();
        for (key, n) in before.iter().filter(|(key, _)| **key != mended) {
            went.push((key, n.saturating_sub(after.get(key).copied().unwrap_or(0))));
        }
        let mut n_new = 0;
        for (key, n) in &after {
            let mut more = n.saturating_sub(before.get(key).copied().unwrap_or(0));
            let is_added = key.step.is_some_and(|step| self.document.position(step).is_none());
            let alike = |(gone, _): &&mut (&Key<'_>, usize)| gone.code == key.code && gone.title == key.title;
            for (_, n_gone) in went.iter_mut().filter(|_| is_added).filter(alike) {
                let n_again = more.min(*n_gone);
                *n_gone -= n_again;
                more -= n_again;
            }
            n_new += more;
        }
        n_new
    }
}

/// How many findings a fix leaves; less is better, by the first that differs.
#[derive(PartialEq, Eq, PartialOrd, Ord)]
struct Left {
    rejecting: usize,
    /// Findings of any level that were not there before.
    new: usize,
    all: usize,
}

/// How often there is each finding of some levels.
fn counted(report: &Report, level: impl Fn(Level) -> bool) -> BTreeMap<Key<'_>, usize> {
    let mut keys = BTreeMap::new();
    for finding in report.findings.iter().filter(|finding| level(finding.level)) {
        *keys.entry(Key::of(finding)).or_insert(0) += 1;
    }
    keys
}

/// By what a finding is known again in a changed document: the numbers of steps are not part of it, for a
/// step that is added moves them.
#[derive(PartialEq, Eq, PartialOrd, Ord)]
struct Key<'f> {
    code: &'static str,
    step: Option<&'f Id>,
    title: String,
}

impl<'f> Key<'f> {
    fn of(finding: &'f Finding) -> Self {
        let mut follows_step = false;
        let mut title = String::new();
        for word in finding.title.split(' ') {
            if !follows_step {
                title.push_str(word);
                title.push(' ');
            }
            follows_step = word.eq_ignore_ascii_case("step");
        }
        Self { code: finding.code, step: finding.step.as_ref(), title }
    }
}

/// Ids `x1`, `x2` … that no step of a document has. They follow from the document, so the same finding gets
/// the same fix each time.
struct FreeIds<'p> {
    used: BTreeSet<&'p Id>,
    last: u32,
}

impl<'p> FreeIds<'p> {
    fn of(procedure: &'p Procedure) -> Self {
        let steps = procedure.steps.iter().flat_map(|step| step.with_after_failures());
        Self { used: steps.map(|step| &step.id).collect(), last: 0 }
    }
}

impl IdSource for FreeIds<'_> {
    fn next_id(&mut self, _hint: &str) -> Id {
        loop {
            self.last += 1;
            let id = Id::new(&format!("x{}", self.last));
            if !self.used.contains(&id) {
                return id;
            }
        }
    }
}
