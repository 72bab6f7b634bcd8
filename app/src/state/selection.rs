//! Several steps at once: the stretch from where the selection began to where it is, and what is done to it.
//!
//! What is copied lies in the memory of the page and on the clipboard of the device: as words for other programs, and as a
//! procedure of these steps alone for another tab, another window, or this one after a reload.

use super::attention::Focus;
use super::carried::DUPLICATE;
use super::editor_store::EditorStore;
use leptos::prelude::*;
use procedures_schema::derive::carry::{Carried, stage_around};
use procedures_schema::edit::Edit;
use procedures_schema::format;
use procedures_schema::model::{Id, Procedure};
use std::collections::BTreeSet;
use std::sync::Arc;

/// The selected steps in order. Every row looks at them, so they hang on the order of the steps and not on the document,
/// which is another one with each key.
pub(super) fn memo(
    order: RwSignal<Arc<Vec<Id>>>,
    selected: RwSignal<Option<Id>>,
    anchor: RwSignal<Option<Id>>,
) -> Memo<Vec<Id>> {
    Memo::new(move |_| order.with(|order| stretch(order, anchor.get().as_ref(), selected.get().as_ref())))
}

/// What a copy is called as a procedure of its own: the next who reads it has to know whether it is a stage.
const COPIED_STEPS: &str = "Copied steps";
const COPIED_STAGE: &str = "Copied stage";

impl EditorStore {
    fn selection_now(self) -> Vec<Id> {
        self.selection().get_untracked()
    }

    /// Moves the end of the selection by a step and keeps its beginning.
    pub(super) fn extend(self, by: isize) {
        let Some(selected) = self.selected_now() else { return };
        let document = self.document_now();
        let to = document.position(&selected).and_then(|at| at.checked_add_signed(by));
        let Some(to) = to.and_then(|to| document.steps.get(to)) else { return };
        let anchor = self.anchor().get_untracked().unwrap_or(selected);
        self.select(Some(to.id.clone()));
        self.anchor().set(Some(anchor));
    }

    /// Selects from the beginning of the selection, or the selected step, to a step.
    pub(super) fn extend_to(self, step: Id) {
        let anchor = self.anchor().get_untracked().or_else(|| self.selected_now());
        self.select(Some(step));
        self.anchor().set(anchor);
    }

    /// Selects every step.
    pub(super) fn select_all(self) {
        let document = self.document_now();
        if let (Some(first), Some(last)) = (document.steps.first(), document.steps.last()) {
            self.select(Some(last.id.clone()));
            self.anchor().set(Some(first.id.clone()));
        }
    }

    /// Selects the stage in which a step stands, from its heading down.
    pub(super) fn select_stage(self, step: &Id) {
        let document = self.document_now();
        let Some(run) = document.position(step).map(|at| stage_around(&document, at)) else { return };
        let steps = document.steps.get(run).unwrap_or_default();
        if let (Some(first), Some(last)) = (steps.first(), steps.last()) {
            // The first one is open, so that the keys are below the heading.
            self.select(Some(first.id.clone()));
            self.anchor().set(Some(last.id.clone()));
        }
    }

    /// Whether a stage as a whole is selected; of a stage of one step only if it was meant as such.
    pub fn is_stage_selected(self) -> Memo<bool> {
        let (anchor, selection, stages) = (self.anchor(), self.selection(), self.stages());
        Memo::new(move |_| {
            let is_several = anchor.with(Option::is_some);
            stages.track();
            is_several && selection.with(|steps| is_stage(&self.document_now(), steps))
        })
    }

    /// The selected steps as something to be carried.
    fn carried_now(self) -> Carried {
        let (document, steps) = (self.document_now(), self.selection_now());
        let is_stage = self.anchor().with_untracked(Option::is_some) && is_stage(&document, &steps);
        Carried { is_stage, ..Carried::of(&document, &steps) }
    }

    /// Takes the selected steps out and selects what then stands in their place.
    pub(super) fn remove_selection(self) {
        let steps = self.selection_now();
        let document = self.document_now();
        let Some(first) = steps.first().and_then(|step| document.position(step)) else { return };
        let behind = document.steps.get(first + steps.len());
        let heir = behind.or_else(|| document.steps.get(first.checked_sub(1)?)).map(|step| step.id.clone());
        let removes: Vec<Edit> = steps.iter().map(|step| Edit::RemoveStep { step: step.clone() }).collect();
        let label = format!("take out {}", self.carried_now().called(first));
        if self.edit(&removes, &label, None) {
            let is_left = heir.is_some();
            self.select(heir);
            if !is_left {
                self.look_at(Focus::LastLine);
            }
        }
    }

    /// Takes a copy of the selected steps into memory; gives their words, and the steps as a procedure of their own.
    pub fn copy_selection(self) -> Option<(String, String)> {
        let carried = self.carried_now();
        if carried.steps.is_empty() {
            return None;
        }
        let both = (carried.text(), as_procedure(&carried));
        self.copied().set(Some(carried));
        Some(both)
    }

    /// Puts steps that came as a procedure of their own below a step, or at the end. Says whether they were such.
    pub fn paste_steps(self, after: Option<Id>, text: &str) -> bool {
        let Ok(document) = format::read(text.as_bytes()) else { return false };
        let all: Vec<Id> = document.steps.iter().map(|step| step.id.clone()).collect();
        let is_stage = document.title == COPIED_STAGE;
        let carried = Carried { is_stage, ..Carried::of(&document, &all) };
        self.put_in(&carried, after, "paste", BTreeSet::new());
        self.copied().set(Some(carried));
        true
    }

    /// The last of the selected steps, below which what is pasted goes.
    pub fn end_of_selection(self) -> Option<Id> {
        self.selection_now().pop()
    }

    /// Puts what was copied below the selected step, or at the end.
    pub(super) fn paste_copied(self) {
        if let Some(carried) = self.copied().get_untracked() {
            let after = self.selection_now().pop();
            self.put_in(&carried, after, "paste", BTreeSet::new());
        }
    }

    /// Puts a copy of the selected steps below them.
    pub(super) fn duplicate(self) {
        let carried = self.carried_now();
        self.put_in(&carried, self.end_of_selection(), DUPLICATE, BTreeSet::new());
    }
}

/// Carried steps as a procedure of their own, with the map that they speak of.
fn as_procedure(carried: &Carried) -> String {
    let title = if carried.is_stage { COPIED_STAGE } else { COPIED_STEPS };
    let mut document = Procedure::new(carried.from.clone(), title);
    document.map = carried.map.clone();
    document.steps.clone_from(&carried.steps);
    format::write(&document)
}

/// Whether steps are all that a stage has.
fn is_stage(document: &Procedure, steps: &[Id]) -> bool {
    let first = steps.first().and_then(|first| document.position(first));
    first.is_some_and(|first| stage_around(document, first) == (first..first + steps.len()))
}

/// The steps from one to another, in whichever order; only the second, if there is no first.
fn stretch(order: &[Id], from: Option<&Id>, to: Option<&Id>) -> Vec<Id> {
    let position = |step: &Id| order.iter().position(|known| known == step);
    let Some(to) = to.and_then(position) else { return Vec::new() };
    let from = from.and_then(position).unwrap_or(to);
    order.get(from.min(to)..=from.max(to)).unwrap_or_default().to_vec()
}
