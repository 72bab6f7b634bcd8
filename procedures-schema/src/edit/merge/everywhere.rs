//! One thing named in place of another, wherever a document names things.

use crate::model::{ApplianceMap, Id, Procedure, References, SealUse, Step, names};
use std::sync::Arc;

/// Names `new` wherever `old` was named, once where both were; gives the steps that named `old`.
pub(in crate::edit) fn exchange(document: &mut Procedure, old: &Id, new: &Id) -> Vec<Id> {
    in_map(Arc::make_mut(&mut document.map), old, new);
    let mut touched = Vec::new();
    for step in &mut document.steps {
        if names(&**step, old) {
            in_step(Arc::make_mut(step), old, new);
            touched.push(step.id.clone());
        }
    }
    document.each_thing_beside(&mut |_, id| put(id, old, new));
    for replaced in &mut document.overrides {
        once(&mut replaced.on, new);
    }
    let mut seen = Vec::new();
    document.goals.retain(|goal| {
        let is_new = !seen.contains(goal);
        seen.push(goal.clone());
        is_new
    });
    touched
}

/// The same in one step and in the steps that follow its failed tests.
pub(in crate::edit) fn in_step(step: &mut Step, old: &Id, new: &Id) {
    step.each_thing(&mut |id| put(id, old, new));
    for action in &mut step.actions {
        once(&mut action.on, new);
        once(&mut action.with_new, new);
    }
    step.after_failures_mut().for_each(|step| in_step(step, old, new));
}

fn in_map(map: &mut ApplianceMap, old: &Id, new: &Id) {
    let exchanged = |thing: &mut dyn References| thing.each_thing(&mut |id| put(id, old, new));
    map.circuits.iter_mut().for_each(|thing| exchanged(thing));
    map.isolators.iter_mut().for_each(|thing| exchanged(thing));
    map.components.iter_mut().for_each(|thing| exchanged(thing));
    map.connections.iter_mut().for_each(|thing| exchanged(thing));
    map.temporary.iter_mut().for_each(|thing| exchanged(thing));
    map.settings.iter_mut().for_each(|thing| exchanged(thing));
    for component in &mut map.components {
        once(&mut component.behind, new);
    }
    for connection in &mut map.connections {
        once(&mut connection.joins, new);
        once(&mut connection.looks_like, new);
        // A thing is not confused with itself.
        connection.looks_like.retain(|id| *id != connection.id);
        connection.reached_after.iter_mut().for_each(|ids| once(ids, new));
        together(&mut connection.seals, new);
    }
}

/// A joint that had both seals has as many of the one.
fn together(seals: &mut Vec<SealUse>, new: &Id) {
    let quantity = seals.iter().filter(|used| used.seal == *new).map(|used| used.quantity);
    let quantity = quantity.fold(0, u32::saturating_add);
    let mut is_first = true;
    seals.retain_mut(|used| {
        if used.seal != *new {
            return true;
        }
        used.quantity = quantity;
        std::mem::take(&mut is_first)
    });
}

/// Leaves a thing once in a list.
fn once(ids: &mut Vec<Id>, id: &Id) {
    let mut is_first = true;
    ids.retain(|known| known != id || std::mem::take(&mut is_first));
}

fn put(id: &mut Id, old: &Id, new: &Id) {
    if id == old {
        *id = new.clone();
    }
}
