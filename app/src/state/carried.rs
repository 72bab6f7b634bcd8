//! Steps put into another procedure: what they name is taken for what has the same name there, and somebody may say
//! that it is another.

use super::editor_store::EditorStore;
use super::ids::RandomIds;
use super::rereading;
use leptos::prelude::*;
use procedures_schema::derive::carry::{Arrival, Carried};
use procedures_schema::model::Id;
use std::collections::BTreeSet;

/// What is done to steps of which a copy is put below them.
pub(super) const DUPLICATE: &str = "duplicate";

/// The steps that were put here last, as long as nothing has been done since.
#[derive(Clone)]
pub struct CarriedHere {
    /// What was taken for what is there: its id where it comes from, and its name.
    pub same: Vec<(Id, String)>,
    carried: Carried,
    after: Option<Id>,
    verb: &'static str,
    apart: BTreeSet<Id>,
    label: String,
}

impl EditorStore {
    /// What has just been taken for what is there; nothing once something else has been done.
    pub fn carried_here(self) -> Memo<Vec<(Id, String)>> {
        let (here, labels) = (self.here(), self.undo_labels());
        Memo::new(move |_| {
            let undo = labels.with(|(undo, _)| undo.clone());
            here.with(|here| {
                let here = here.as_ref().filter(|here| Some(&here.label) == undo.as_ref());
                here.map(|here| here.same.clone()).unwrap_or_default()
            })
        })
    }

    pub(super) fn put_in(
        self,
        carried: &Carried,
        after: Option<Id>,
        verb: &'static str,
        apart: BTreeSet<Id>,
    ) {
        let document = self.document_now();
        let at = carried.place(&document, rereading::place_after(&document, after.as_ref()));
        let arrival = carried.arrive_apart(&document, at, &mut RandomIds, &apart);
        let (Some(first), Some(last)) = (arrival.steps.first(), arrival.steps.last()) else { return };
        // What is copied is called by where it stands, what comes from elsewhere by where it goes.
        let named = if verb == DUPLICATE { at.saturating_sub(carried.steps.len()) } else { at };
        let label = format!("{verb} {}", carried.called(named));
        if self.edit(&arrival.edits, &label, None) {
            self.notice().set(told(&arrival));
            self.select(Some(last.clone()));
            self.anchor().set((first != last || carried.is_stage).then(|| first.clone()));
            let same = arrival.same;
            self.here().set(Some(CarriedHere { same, carried: carried.clone(), after, verb, apart, label }));
        }
    }

    /// Puts the same steps here once more, with a thing that is another than the one of its name.
    pub fn carry_apart(self, thing: Id) {
        let Some(mut here) = self.here().get_untracked() else { return };
        if self.undo_label_now().as_ref() != Some(&here.label) {
            return;
        }
        self.undo();
        here.apart.insert(thing);
        self.put_in(&here.carried, here.after, here.verb, here.apart);
    }

    /// Leaves everything as it was taken.
    pub fn carried_well(self) {
        self.here().set(None);
    }
}

/// What a person should know of an arrival; nothing if all went as a matter of course.
fn told(arrival: &Arrival) -> Option<String> {
    let mut words = Vec::new();
    if !arrival.things.is_empty() {
        words.push(format!("New on the appliance: {}.", arrival.things.join(", ")));
    }
    if !arrival.back.is_empty() {
        words.push(format!("Back on the appliance: {}.", arrival.back.join(", ")));
    }
    if !arrival.left_behind.is_empty() {
        words.push(format!("Left behind: {}.", arrival.left_behind.join(", ")));
    }
    (!words.is_empty()).then(|| words.join(" "))
}
