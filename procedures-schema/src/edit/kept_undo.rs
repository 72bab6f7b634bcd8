//! The undo of a session in a form that can be kept and outlives a reload: what differs from one state of the
//! document to the next, and the names of the entries.
//!
//! Differences are found by comparing states that share what they have in common, so hardly more is kept than
//! what was changed. The document itself is kept elsewhere; an undo is of use beside the very document that it
//! belongs to.

use super::session::{Entry, Session};
use crate::model::{ApplianceMap, Id, Procedure, Step};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::sync::Arc;

/// The entries of a session, those that are reached first at the front.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct KeptUndo {
    undo: Vec<Way>,
    redo: Vec<Way>,
}

/// The way from one state to the next, and the name of the entry that lies between.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
struct Way {
    label: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    step: Option<Id>,
    /// The order of the steps there, if it is another.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    order: Option<Vec<Id>>,
    /// The steps that are different there, or are there only.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    steps: Vec<Arc<Step>>,
    /// The map there, if it is another.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    map: Option<Arc<ApplianceMap>>,
    /// Everything else there, if any of it is different.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    head: Option<Box<Procedure>>,
}

/// Writes the undo of a session again and again: of entries that are the same, the text is taken over.
#[derive(Debug, Default)]
pub struct UndoRewriter {
    /// The states on both sides of a way, and its text.
    known: Vec<(Arc<Procedure>, Arc<Procedure>, String)>,
}

impl UndoRewriter {
    /// The text of what [`Session::kept_undo`] gives.
    pub fn write(&mut self, session: &Session, most: usize) -> String {
        let mut known = std::mem::take(&mut self.known);
        let mut ways = |entries: &[Entry]| {
            let mut here = session.document().clone();
            let mut texts = Vec::new();
            for entry in entries.iter().rev().take(most) {
                let there = entry.document.clone();
                let is_it = |one: &(Arc<Procedure>, Arc<Procedure>, String)| {
                    Arc::ptr_eq(&one.0, &here) && Arc::ptr_eq(&one.1, &there)
                };
                let found = known.iter().position(is_it).map(|at| known.swap_remove(at));
                let text = found.map_or_else(|| Way::between(&here, entry).text(), |(.., text)| text);
                texts.push(text.clone());
                self.known.push((here, there.clone(), text));
                here = there;
            }
            texts.join(",")
        };
        let (undo, redo) = (ways(session.undo_entries()), ways(session.redo_entries()));
        format!(r#"{{"undo":[{undo}],"redo":[{redo}]}}"#)
    }
}

impl Session {
    /// The undo and redo of this session, at most so many entries each way.
    pub fn kept_undo(&self, most: usize) -> KeptUndo {
        let ways = |entries: &[Entry]| {
            let mut here = self.document().clone();
            let mut ways = Vec::new();
            for entry in entries.iter().rev().take(most) {
                ways.push(Way::between(&here, entry));
                here = entry.document.clone();
            }
            ways
        };
        KeptUndo { undo: ways(self.undo_entries()), redo: ways(self.redo_entries()) }
    }

    /// A session on a document with the undo that was kept beside it.
    pub fn with_undo(document: Arc<Procedure>, kept: &KeptUndo) -> Self {
        let entries = |ways: &[Way]| {
            let mut here = document.clone();
            let mut entries = Vec::new();
            for way in ways {
                here = Arc::new(way.taken_from(&here));
                entries.push(Entry {
                    document: here.clone(),
                    label: way.label.clone(),
                    step: way.step.clone(),
                });
            }
            entries.reverse();
            entries
        };
        let (undo, redo) = (entries(&kept.undo), entries(&kept.redo));
        Self::new(document).with_entries(undo, redo)
    }
}

impl Way {
    /// By way of a value, as documents are written, so that the page carries the code of that once.
    fn text(&self) -> String {
        serde_json::to_value(self).and_then(|value| serde_json::to_string(&value)).unwrap_or_default()
    }

    fn between(here: &Procedure, entry: &Entry) -> Self {
        let there = &entry.document;
        let (steps, order) = other_steps(here, there);
        let is_same_map = Arc::ptr_eq(&here.map, &there.map) || here.map == there.map;
        Self {
            label: entry.label.clone(),
            step: entry.step.clone(),
            steps,
            order,
            map: (!is_same_map).then(|| there.map.clone()),
            head: (!there.has_head_of(here)).then(|| Box::new(there.head())),
        }
    }

    fn taken_from(&self, here: &Procedure) -> Procedure {
        let mut there = self.head.as_ref().map_or_else(|| here.head(), |head| Procedure::clone(head));
        there.map = self.map.as_ref().unwrap_or(&here.map).clone();
        let other: BTreeMap<&Id, &Arc<Step>> = self.steps.iter().map(|step| (&step.id, step)).collect();
        let known: BTreeMap<&Id, &Arc<Step>> = here.steps.iter().map(|step| (&step.id, step)).collect();
        let step = |id: &Id| other.get(id).or_else(|| known.get(id)).map(|step| Arc::clone(step));
        there.steps = match &self.order {
            Some(order) => order.iter().filter_map(step).collect(),
            None => here.steps.iter().filter_map(|known| step(&known.id)).collect(),
        };
        there
    }
}

/// The steps that are different there, or are there only; and their order there, if it is another.
fn other_steps(here: &Procedure, there: &Procedure) -> (Vec<Arc<Step>>, Option<Vec<Id>>) {
    let is_other =
        |known: &Arc<Step>, step: &Arc<Step>| !Arc::ptr_eq(known, step) && *known.as_ref() != *step.as_ref();
    let mut pairs = here.steps.iter().zip(&there.steps);
    if here.steps.len() == there.steps.len()
        && pairs.all(|(known, step)| Arc::ptr_eq(known, step) || known.id == step.id)
    {
        let pairs = here.steps.iter().zip(&there.steps);
        let other = pairs.filter(|(known, step)| is_other(known, step)).map(|(_, step)| step.clone());
        return (other.collect(), None);
    }
    let known: BTreeMap<&Id, &Arc<Step>> = here.steps.iter().map(|step| (&step.id, step)).collect();
    let is_new = |step: &&Arc<Step>| known.get(&step.id).is_none_or(|known| is_other(known, step));
    let order = there.steps.iter().map(|step| step.id.clone()).collect();
    (there.steps.iter().filter(is_new).cloned().collect(), Some(order))
}

#[cfg(test)]
mod tests;
