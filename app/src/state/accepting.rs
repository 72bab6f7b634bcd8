//! Warnings that somebody decides to accept: with reason, name and date, each one entry of undo.
//!
//! Which findings that takes away is the checker's to say; what rejects cannot be accepted.

use super::clock;
use super::editor_store::EditorStore;
use super::judged::Judged;
use leptos::prelude::*;
use procedures_schema::check::{Finding, Level};
use procedures_schema::model::{Date, Id, Waiver};
use procedures_schema::units::Rest;

/// A warning that was accepted, or the acceptance of one that is found no more.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Accepted {
    /// The code of its rule.
    pub code: String,
    /// What is wrong; nothing, if it is found no more.
    pub title: Option<String>,
    /// Why it was accepted.
    pub reason: String,
    /// Who did.
    pub by: String,
    /// When.
    pub date: Option<Date>,
    /// Its position in the document's list.
    pub at: usize,
}

impl Accepted {
    fn of(judged: &Judged, at: usize, title: Option<String>) -> Option<Self> {
        let waiver = judged.document.waivers.get(at)?;
        let Waiver { code, reason, by, date, .. } = waiver.clone();
        Some(Self { code, title, reason, by, date, at })
    }
}

impl Judged {
    /// What was accepted at a step; at the end what belongs to no step, and what is found no more.
    fn accepted_at(&self, step: Option<&Id>) -> Vec<Accepted> {
        let has = |id: &Id| self.document.position(id).is_some();
        let is_here = |finding: &Finding| finding.step.as_ref().filter(|id| has(id)) == step;
        let here = self.report.waived.iter().filter(|waived| is_here(&waived.finding));
        let found = here.filter_map(|one| Accepted::of(self, one.waiver, Some(one.finding.title.clone())));
        let is_idle = |at: &usize| self.report.waived.iter().all(|waived| waived.waiver != *at);
        let all = if step.is_none() { self.document.waivers.len() } else { 0 };
        found.chain((0..all).filter(is_idle).filter_map(|at| Accepted::of(self, at, None))).collect()
    }
}

impl EditorStore {
    /// What was accepted at a step, or at the end, once typing has paused.
    pub fn accepted(self, step: Option<Id>) -> Memo<Vec<Accepted>> {
        let settled = self.settled();
        Memo::new(move |_| settled.with(|judged| judged.accepted_at(step.as_ref())))
    }

    /// How many warnings are accepted.
    pub fn n_accepted(self) -> Memo<usize> {
        let judged = self.judged();
        Memo::new(move |_| judged.with(|judged| judged.document.waivers.len()))
    }

    /// How many warnings would be accepted together with one: the core tells them by rule and step alone.
    pub fn n_alike(self, finding: &Finding) -> usize {
        let is_alike = |other: &&Finding| {
            other.level == Level::Warn
                && other.code == finding.code
                && (finding.step.is_none() || other.step == finding.step)
        };
        self.judged_now().report.findings.iter().filter(is_alike).count()
    }

    /// Who accepted a warning of this document last.
    pub fn last_to_accept(self) -> String {
        self.document_now().waivers.last().map(|waiver| waiver.by.clone()).unwrap_or_default()
    }

    /// Accepts a warning.
    pub fn accept(self, finding: &Finding, reason: &str, by: &str) {
        let waiver = Waiver {
            code: finding.code.to_owned(),
            step: finding.step.clone(),
            reason: reason.trim().to_owned(),
            by: by.trim().to_owned(),
            date: Some(clock::today()),
            rest: Rest::default(),
        };
        if finding.level == Level::Warn && !waiver.reason.is_empty() && !waiver.by.is_empty() {
            self.change_scope("accept a warning", None, |scope| scope.waivers.push(waiver));
        }
    }

    /// Takes an acceptance back.
    pub fn take_acceptance_back(self, at: usize) {
        self.change_scope("take back that a warning is accepted", None, |scope| {
            if at < scope.waivers.len() {
                scope.waivers.remove(at);
            }
        });
    }

    /// Goes to the next step at which something was accepted, round the end.
    pub(super) fn select_accepted(self) {
        let judged = self.judged_now();
        let document = &judged.document;
        let steps = judged.report.waived.iter().filter_map(|waived| waived.finding.step.as_ref());
        let mut places: Vec<usize> = steps.filter_map(|step| document.position(step)).collect();
        places.sort_unstable();
        let here = self.selected_now().and_then(|step| document.position(&step));
        let next = places.iter().find(|at| here.is_none_or(|here| **at > here)).or(places.first());
        match next.and_then(|at| document.steps.get(*at)) {
            Some(step) => self.select(Some(step.id.clone())),
            None => self.look_at(super::attention::Focus::End),
        }
    }
}
