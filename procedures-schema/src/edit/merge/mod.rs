//! Two things of the map that are one.
//!
//! What only one of them says is taken over; where both say something else, somebody has to choose, field by
//! field. Circuits and sections are not put together: what shuts them off tells them apart.

mod everywhere;
mod fields;

use super::EditError;
use super::rename::same_name;
use crate::model::{ApplianceMap, Id, Procedure, ThingKind};
use everywhere::exchange;
pub(super) use everywhere::in_step;
use fields::{Fields, Joining};
use std::collections::BTreeSet;
use std::sync::Arc;

/// Something that two things say differently.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Difference {
    /// What it is, in words.
    pub field: &'static str,
    /// What the thing that stays says.
    pub kept: String,
    /// What the thing that goes says.
    pub other: String,
}

/// What holds where two things differ.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Choice {
    /// What it is, as the [`Difference`] calls it.
    pub field: &'static str,
    /// Whether it is what the thing that goes says.
    pub of_other: bool,
}

/// What two things say differently and somebody has to choose before they are one.
///
/// # Errors
/// If they cannot be one; the reason is for people.
pub fn differences(document: &Procedure, keep: &Id, gone: &Id) -> Result<Vec<Difference>, EditError> {
    can_be_one(&document.map, keep, gone)?;
    let mut joining = Joining::new(document.map.clone(), &[]);
    join(&mut ApplianceMap::clone(&document.map), keep, gone, &mut joining);
    Ok(joining.found)
}

/// Makes one of two things, and gives the steps that named the second.
pub(super) fn merge(
    document: &mut Procedure,
    keep: &Id,
    gone: &Id,
    choices: &[Choice],
) -> Result<Vec<Id>, EditError> {
    can_be_one(&document.map, keep, gone)?;
    let mut joining = Joining::new(document.map.clone(), choices);
    join(Arc::make_mut(&mut document.map), keep, gone, &mut joining);
    let open = joining.undecided();
    if !open.is_empty() {
        return Err(EditError::Undecided(open));
    }
    Ok(exchange(document, gone, keep))
}

/// Whether two things can be one at all.
fn can_be_one(map: &ApplianceMap, keep: &Id, gone: &Id) -> Result<(), EditError> {
    let find = |id: &Id| {
        let found = map.things().find(|(_, known, ..)| *known == id);
        found.map(|(kind, _, name, _)| (kind, name)).ok_or_else(|| EditError::NoSuchThing(id.clone()))
    };
    let ((kind, name), (other_kind, other)) = (find(keep)?, find(gone)?);
    let two = |why: String| Err(EditError::CannotBe(format!("The {name} and the {other} stay two: {why}.")));
    if keep == gone {
        return two("both are the same thing already".to_owned());
    }
    if kind != other_kind {
        return two(format!("the first is a {}, the other a {}", kind.word(), other_kind.word()));
    }
    if matches!(kind, ThingKind::Circuit | ThingKind::Section) {
        return two("what shuts them off tells circuits and sections apart".to_owned());
    }
    let joins_both = map.connections.iter().find(|k| k.joins.contains(keep) && k.joins.contains(gone));
    if let Some(between) = joins_both {
        return two(format!("the {} joins one to the other", between.name));
    }
    for (front, back, one, first) in [(keep, gone, other, name), (gone, keep, name, other)] {
        if stand_before(map, back).contains(front) {
            return two(format!("the {one} is behind the {first}, or comes off with it"));
        }
    }
    Ok(())
}

/// The components that stand before a component or carry it, and what stands before those.
fn stand_before(map: &ApplianceMap, component: &Id) -> BTreeSet<Id> {
    let mut found = BTreeSet::new();
    let mut open = vec![component.clone()];
    while let Some(id) = open.pop() {
        let Some(component) = map.components.iter().find(|known| known.id == id) else { continue };
        for before in component.behind.iter().chain(&component.carried_by) {
            if found.insert(before.clone()) {
                open.push(before.clone());
            }
        }
    }
    found
}

/// Takes the second thing off the map and what it says into the first.
fn join(map: &mut ApplianceMap, keep: &Id, gone: &Id, joining: &mut Joining<'_>) {
    macro_rules! join {
        ($($list:ident),*) => {$(
            if let Some(at) = map.$list.iter().position(|thing| thing.id == *gone) {
                let other = map.$list.remove(at);
                if let Some(thing) = map.$list.iter_mut().find(|thing| thing.id == *keep) {
                    thing.join(&other, joining);
                    name_also(&thing.name, &mut thing.aliases, &other.name, &other.aliases);
                    Joining::union(&mut thing.images, &other.images);
                    joining.rest(&mut thing.rest, &other.rest);
                }
            }
        )*};
    }
    join!(isolators, components, connections, seals, temporary, settings);
}

/// Takes the names of another thing as other names.
fn name_also(name: &str, aliases: &mut Vec<String>, other: &str, others: &[String]) {
    for new in std::iter::once(other).chain(others.iter().map(String::as_str)) {
        let is_known = same_name(name, new) || aliases.iter().any(|alias| same_name(alias, new));
        if !is_known && !new.trim().is_empty() {
            aliases.push(new.to_owned());
        }
    }
}

#[cfg(test)]
mod tests;
