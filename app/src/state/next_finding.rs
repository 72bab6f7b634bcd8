//! From finding to finding, on every screen but Follow.
//!
//! On Write each finding stands at its step. Elsewhere a finding that is mended on the map is shown at its place on
//! Appliance, and all others at their steps on Write.

use super::attention::Focus;
use super::doubts::AskedFrom;
use super::editor_store::EditorStore;
use super::judged::Judged;
use leptos::prelude::*;
use procedures_schema::check::{Finding, Level};
use procedures_schema::model::Id;

/// A place of Appliance.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Spot {
    /// What the document says of itself.
    Scope,
    /// The census of circuits.
    Census,
    /// The row of a thing.
    Thing(Id),
}

/// Where a finding is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShownOn {
    /// At a place of Appliance.
    Appliance,
    /// At its step, or at the end.
    Write,
}

impl Spot {
    /// The place of a finding that is mended on the map.
    pub(super) fn of(finding: &Finding) -> Option<Self> {
        match (&finding.thing, finding.code) {
            (Some(thing), _) => Some(Self::Thing(thing.clone())),
            (None, code) if code.starts_with("control/census") => Some(Self::Census),
            (None, code) if code.starts_with("control/scope") => Some(Self::Scope),
            _ => None,
        }
    }
}

/// The places of Appliance at which something is found, from its top down.
fn spots(judged: &Judged) -> Vec<Spot> {
    let found: Vec<Spot> = judged.report.findings.iter().filter_map(Spot::of).collect();
    let things = judged.document.map.things().map(|(_, id, ..)| Spot::Thing(id.clone()));
    [Spot::Scope, Spot::Census].into_iter().chain(things).filter(|spot| found.contains(spot)).collect()
}

impl EditorStore {
    /// The place of Appliance that is to be shown next, until it is.
    pub fn spot(self) -> RwSignal<Option<Spot>> {
        self.parts().spot
    }

    /// What is found of a thing, once typing has paused.
    pub fn findings_of_thing(self, thing: &Id) -> Memo<Vec<Finding>> {
        let (settled, thing) = (self.settled(), thing.clone());
        Memo::new(move |_| {
            settled.with(|judged| {
                let found = judged.report.findings.iter();
                found.filter(|finding| finding.thing.as_ref() == Some(&thing)).cloned().collect()
            })
        })
    }

    /// Goes on Write from finding to finding; from the last on to the first.
    pub(super) fn select_finding(self, forward: bool) {
        self.select_finding_of(self.selected_at(), forward, |_| true);
    }

    /// Goes on Write to the next finding that does not reject.
    pub(super) fn select_doubt(self) {
        self.select_finding_of(self.selected_at(), true, |finding| finding.level != Level::Reject);
    }

    /// Goes on Write, from another screen, to the first finding that does not reject.
    pub(super) fn select_first_doubt(self) {
        self.select_finding_of(None, true, |finding| finding.level != Level::Reject);
    }

    /// The position of the selected step.
    fn selected_at(self) -> Option<usize> {
        self.selected_now().and_then(|step| self.document_now().position(&step))
    }

    fn select_finding_of(self, here: Option<usize>, forward: bool, is_meant: impl Fn(&Finding) -> bool) {
        let judged = self.judged_now();
        let document = &judged.document;
        let found = judged.report.findings.iter().filter(|finding| is_meant(finding));
        let found = found.filter_map(|finding| finding.step.as_ref());
        let mut positions: Vec<usize> = found.filter_map(|step| document.position(step)).collect();
        positions.sort_unstable();
        if judged.report.findings.is_empty() {
            self.say_nothing_is_found();
        } else if positions.is_empty() {
            self.look_at(Focus::End);
        }
        let next = if forward {
            positions.iter().find(|at| here.is_none_or(|here| **at > here)).or(positions.first())
        } else {
            positions.iter().rev().find(|at| here.is_none_or(|here| **at < here)).or(positions.last())
        };
        if let Some(step) = next.and_then(|at| document.steps.get(*at)) {
            self.select_found(&step.id);
        }
    }

    /// Goes on Write to a step at which something is found.
    pub(super) fn select_found(self, step: &Id) {
        // A question of a pasted text takes the keyboard, so that F8 leads from one to the next.
        if !(self.is_in_review(step) && self.ask(step, AskedFrom::Review)) {
            self.select(Some(step.clone()));
        }
    }

    fn say_nothing_is_found(self) {
        self.notice().set(Some("Nothing is found.".to_owned()));
    }

    /// Goes from another screen than Write to the next finding or the one before, seen from a place of Appliance if the
    /// keyboard is at one: through the places of Appliance first, then to the steps. Says where it is shown; nowhere, if
    /// nothing is found.
    pub fn go_to_finding(self, here: Option<&Spot>, forward: bool) -> Option<ShownOn> {
        let judged = self.judged_now();
        if judged.report.findings.is_empty() {
            self.say_nothing_is_found();
            return None;
        }
        let spots = spots(&judged);
        let has_others = judged.report.findings.iter().any(|finding| Spot::of(finding).is_none());
        let at = here.and_then(|here| spots.iter().position(|spot| spot == here));
        let next = match (at, forward) {
            (Some(at), true) => spots.get(at + 1),
            (Some(at), false) => at.checked_sub(1).and_then(|at| spots.get(at)),
            (None, true) => spots.first(),
            (None, false) => spots.last().filter(|_| here.is_some() || !has_others),
        };
        let around = || if forward { spots.first() } else { spots.last() };
        let next = next.or_else(|| around().filter(|_| !has_others));
        if let Some(spot) = next {
            self.spot().set(Some(spot.clone()));
            return Some(ShownOn::Appliance);
        }
        self.select_finding_of(self.selected_at(), forward, |finding| Spot::of(finding).is_none());
        Some(ShownOn::Write)
    }

    /// Takes note of the thing at which the keyboard is on Appliance.
    pub fn is_at_thing(self, thing: &Id) {
        self.parts().at_thing.set_value(Some(thing.clone()));
    }

    /// The thing at which the keyboard was on Appliance.
    pub fn was_at_thing(self) -> Option<Id> {
        self.parts().at_thing.get_value()
    }

    /// Selects the step with a number, as one that was named on another screen.
    pub fn select_numbered(self, number: usize) {
        let document = self.document_now();
        let step = number.checked_sub(1).and_then(|at| document.steps.get(at));
        self.select(step.map(|step| step.id.clone()));
    }
}
