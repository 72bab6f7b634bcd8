//! The step that the demonstration opens without, so that a newcomer can put it back and see the stamp turn.
//!
//! Kept beside the document, because undo does not survive a reload and nobody should be left with a
//! procedure that lacks a step.

use crate::storage::database::{self, Durability, Entry, Store};
use leptos::task::spawn_local;
use procedures_schema::format;
use procedures_schema::model::{ApplianceMap, Circuit, Id, Procedure, Step, Verb};
use serde::{Deserialize, Serialize};
use std::sync::Arc;

const TAKEN_OUT: &str = "taken-out";

/// The step that was taken out, and where it stood.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct TakenOut {
    /// The document it belongs to.
    pub document: Id,
    /// The step.
    pub step: Arc<Step>,
    /// Its position.
    pub at: usize,
    /// The map that it speaks of: what nothing names meanwhile may be taken out of it.
    #[serde(default)]
    pub map: Arc<ApplianceMap>,
    /// How many other steps prove the same; one more means that somebody has put another in its place.
    #[serde(default)]
    pub n_others: usize,
}

impl TakenOut {
    /// Picks the step whose absence shows best: the first that proves something to be at zero.
    pub fn pick(document: &Procedure) -> Option<Self> {
        let proves = |step: &Arc<Step>| step.actions.iter().any(|action| action.verb == Verb::Prove);
        let at = document.steps.iter().position(proves)?;
        let step = document.steps.get(at)?.clone();
        let n_others = n_proving_like(document, &step);
        Some(Self { document: document.id.clone(), step, at, map: document.map.clone(), n_others })
    }

    /// The name of the edit that takes it out.
    pub fn label(&self) -> String {
        format!("take out step {}", self.at + 1)
    }

    /// Whether it is still out of this document, and nothing has taken its place.
    pub fn is_out_of(&self, document: &Procedure) -> bool {
        self.document == document.id
            && document.position(&self.step.id).is_none()
            && n_proving_like(document, &self.step) <= self.n_others
    }

    /// Remembers it on this device.
    pub fn remember(&self) {
        let text = format::write_part(self);
        spawn_local(async move {
            let entry = Entry { store: Store::Meta, key: TAKEN_OUT, text: Some(&text) };
            // If this is lost, only the banner is missing after a reload; the document itself is kept apart.
            let _ = database::keep(&[entry], Durability::Default).await;
        });
    }

    /// The one remembered on this device.
    pub async fn remembered() -> Option<Self> {
        let text = database::kept(Store::Meta, TAKEN_OUT).await.ok().flatten()?;
        format::read_part(&text).ok()
    }
}

/// How many other steps prove what a step proves, by whichever of its circuit's sections they name it.
fn n_proving_like(document: &Procedure, step: &Step) -> usize {
    let circuits = |step: &Step| -> Vec<&Id> {
        let proved = step.actions.iter().filter(|action| action.verb == Verb::Prove);
        proved.flat_map(|action| &action.on).filter_map(|on| circuit_of(document, on)).collect()
    };
    let own = circuits(step);
    let like = |other: &&Arc<Step>| other.id != step.id && circuits(other).iter().any(|of| own.contains(of));
    document.steps.iter().filter(like).count()
}

fn circuit_of<'d>(document: &'d Procedure, on: &Id) -> Option<&'d Id> {
    let circuits = &document.map.circuits;
    let is_it =
        |circuit: &&Circuit| circuit.id == *on || circuit.sections.iter().any(|section| section.id == *on);
    circuits.iter().find(is_it).map(|circuit| &circuit.id)
}
