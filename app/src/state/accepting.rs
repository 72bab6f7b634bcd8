//! Warnings that somebody decides to accept: with reason, name and date, each one entry of undo.
//!
//! Which findings that takes away is the checker's to say; what rejects cannot be accepted.

use super::attention::Focus;
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
    /// The step at which it is found, with its number from 1.
    pub step: Option<(Id, usize)>,
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

impl Judged {
    /// What was accepted: in the order of the steps, and then what is found no more.
    fn accepted(&self) -> Vec<Accepted> {
        let of = |at: usize, finding: Option<&Finding>| {
            let Waiver { code, reason, by, date, .. } = self.document.waivers.get(at)?.clone();
            let step = finding.and_then(|finding| finding.step.clone());
            let step = step.and_then(|id| Some((id.clone(), self.document.position(&id)? + 1)));
            let title = finding.map(|finding| finding.title.clone());
            Some(Accepted { step, code, title, reason, by, date, at })
        };
        let waived = &self.report.waived;
        let found = waived.iter().filter_map(|one| of(one.waiver, Some(&one.finding)));
        let is_idle = |at: &usize| waived.iter().all(|one| one.waiver != *at);
        let idle = (0..self.document.waivers.len()).filter(is_idle).filter_map(|at| of(at, None));
        found.chain(idle).collect()
    }
}

impl EditorStore {
    /// What was accepted, once typing has paused.
    pub fn accepted(self) -> Memo<Vec<Accepted>> {
        let settled = self.settled();
        Memo::new(move |_| settled.with(|judged| judged.accepted()))
    }

    /// What was accepted at a step, once typing has paused.
    pub fn accepted_at(self, step: Id) -> Memo<Vec<Accepted>> {
        let settled = self.settled();
        let is_here = move |one: &Accepted| one.step.as_ref().is_some_and(|(id, _)| *id == step);
        Memo::new(move |_| {
            // Most documents have none, and every row asks.
            settled.with(|judged| match judged.document.waivers.as_slice() {
                [] => Vec::new(),
                _ => judged.accepted().into_iter().filter(&is_here).collect(),
            })
        })
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

    /// Goes to the list of what was accepted.
    pub(super) fn look_at_accepted(self) {
        self.look_at(Focus::End);
    }

    /// Takes an acceptance back.
    pub fn take_acceptance_back(self, at: usize) {
        self.change_scope("take back that a warning is accepted", None, |scope| {
            if at < scope.waivers.len() {
                scope.waivers.remove(at);
            }
        });
    }
}
