//! One thing of the map that is two: some steps name a copy of it.
//!
//! The copy says what the thing says, under a name of its own. What joins the thing, sits on it or is behind
//! it stays with the thing, because nobody but the writer knows which of the two it belongs to.

use super::EditError;
use super::merge::in_step;
use super::rename::{Named, taken_by};
use crate::model::{ApplianceMap, Id, Procedure, ThingKind, names};
use std::sync::Arc;

/// What is to be split, and how.
pub(super) struct Splitting<'e> {
    pub(super) thing: &'e Id,
    pub(super) new: &'e Id,
    pub(super) name: &'e str,
    pub(super) steps: &'e [Id],
    pub(super) in_words: bool,
}

/// Makes two of one thing, and gives the steps that name the copy.
pub(super) fn split(document: &mut Procedure, splitting: &Splitting<'_>) -> Result<Vec<Id>, EditError> {
    let Splitting { thing, new, steps, in_words, .. } = *splitting;
    let name = splitting.name.trim();
    can_be_two(document, splitting, name)?;
    let sought = Named::of(&document.map, thing);
    copy(Arc::make_mut(&mut document.map), thing, new, name);
    for step in document.steps.iter_mut().filter(|step| steps.contains(&step.id)) {
        let step = Arc::make_mut(step);
        if let Some(sought) = sought.as_ref().filter(|_| in_words) {
            sought.replace_in(step, name);
        }
        in_step(step, thing, new);
    }
    Ok(steps.to_vec())
}

fn can_be_two(document: &Procedure, splitting: &Splitting<'_>, name: &str) -> Result<(), EditError> {
    let Splitting { thing, new, steps, .. } = *splitting;
    let find = |id: &Id| document.map.things().find(|(_, known, ..)| *known == id);
    let (kind, _, old, _) = find(thing).ok_or_else(|| EditError::NoSuchThing(thing.clone()))?;
    let one = |why: &str| Err(EditError::CannotBe(format!("The {old} stays one thing: {why}.")));
    if find(new).is_some() {
        return Err(EditError::ThingThereAlready(new.clone()));
    }
    if matches!(kind, ThingKind::Circuit | ThingKind::Section) {
        return one("a circuit is cut into sections by its isolators; add a section to it instead");
    }
    if name.is_empty() {
        return Err(EditError::NameEmpty);
    }
    if let Some(by) = taken_by(&document.map, new, name) {
        return Err(EditError::NameTaken { name: name.to_owned(), by });
    }
    for id in steps {
        let at = document.position(id).ok_or_else(|| EditError::NoSuchStep(id.clone()))?;
        if document.steps.get(at).is_none_or(|step| !names(&**step, thing)) {
            return one(&format!("step {} does not name it", at + 1));
        }
    }
    if steps.is_empty() {
        return one("choose the steps for which the second one stands");
    }
    let is_left = |id: &Id| !steps.contains(id);
    if !document.steps.iter().any(|step| is_left(&step.id) && names(&**step, thing)) {
        return one("the second one would stand for it in every step; give it another name instead");
    }
    Ok(())
}

/// Puts a copy behind the thing, with an identity and a name of its own.
fn copy(map: &mut ApplianceMap, thing: &Id, new: &Id, name: &str) {
    macro_rules! copy {
        ($($list:ident),*) => {$(
            if let Some(at) = map.$list.iter().position(|known| known.id == *thing)
                && let Some(mut copy) = map.$list.get(at).cloned()
            {
                copy.id = new.clone();
                name.clone_into(&mut copy.name);
                copy.aliases.clear();
                map.$list.insert(at + 1, copy);
            }
        )*};
    }
    copy!(isolators, components, connections, seals, temporary, settings);
}

#[cfg(test)]
mod tests;
