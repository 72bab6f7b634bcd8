//! Another state of the same document in place of this one.

use super::EditError;
use crate::model::{Id, Procedure, Step};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// Takes the other state over and names the steps that differ. What is equal stays the very same value, so
/// that whoever compares by pointer sees only what differs.
pub(super) fn replace(next: &mut Procedure, other: &Procedure) -> Result<Vec<Id>, EditError> {
    if other.id != next.id {
        return Err(EditError::AnotherDocument(other.title.clone()));
    }
    let before = std::mem::replace(next, other.clone());
    if before.map == next.map {
        next.map = before.map;
    }
    let known: BTreeMap<&Id, &Arc<Step>> = before.steps.iter().map(|step| (&step.id, step)).collect();
    let mut touched = Vec::new();
    for step in &mut next.steps {
        match known.get(&step.id) {
            Some(known) if *known == step => *step = Arc::clone(known),
            _ => touched.push(step.id.clone()),
        }
    }
    let stay: BTreeSet<&Id> = next.steps.iter().map(|step| &step.id).collect();
    touched.extend(before.steps.iter().map(|step| &step.id).filter(|id| !stay.contains(id)).cloned());
    Ok(touched)
}
