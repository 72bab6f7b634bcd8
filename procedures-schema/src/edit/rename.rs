//! Giving a thing of the map another name, in the words of the steps too.
//!
//! Ids stay. Where two things go by the same old name, only the words of steps that act on the one renamed,
//! and on no other of that name, are changed: elsewhere nobody can tell which is meant. A circuit in one piece
//! and its section may share a name; then the section follows its circuit.

use super::EditError;
use super::in_words::{Found, Sought, replaced, shifted};
use crate::model::{Action, ApplianceMap, Id, Procedure, Step};
use std::sync::Arc;

/// In how many steps the name of a thing occurs, with the steps that follow a failed test; those steps are
/// what a rename in words changes.
pub fn occurrences(document: &Procedure, thing: &Id) -> usize {
    let Some(sought) = Named::of(&document.map, thing) else { return 0 };
    document.steps.iter().filter(|step| sought.occurs_in(step)).count()
}

/// Renames a thing, and gives the steps whose words were changed.
pub(super) fn rename(
    document: &mut Procedure,
    thing: &Id,
    name: &str,
    in_words: bool,
) -> Result<Vec<Id>, EditError> {
    let name = name.trim();
    if name.is_empty() {
        return Err(EditError::NameEmpty);
    }
    let sought = Named::of(&document.map, thing).ok_or_else(|| EditError::NoSuchThing(thing.clone()))?;
    if let Some(other) = taken_by(&document.map, thing, name) {
        return Err(EditError::NameTaken { name: name.to_owned(), by: other });
    }
    rename_in_aliases(Arc::make_mut(&mut document.map), thing, name);
    let follows = section_of_same_name(&document.map, thing);
    for id in std::iter::once(thing).chain(&follows) {
        if let Some(place) = name_of(Arc::make_mut(&mut document.map), id) {
            name.clone_into(place);
        }
    }
    let mut touched = Vec::new();
    if in_words {
        for step in &mut document.steps {
            if sought.occurs_in(step) {
                sought.replace_in(Arc::make_mut(step), name);
                touched.push(step.id.clone());
            }
        }
    }
    Ok(touched)
}

/// A further name that holds the old name holds the new one from now on: "bolts of the discharge flange".
fn rename_in_aliases(map: &mut ApplianceMap, thing: &Id, name: &str) {
    let Some(old) = name_of(map, thing).cloned() else { return };
    let sought = Sought::new(&old, std::iter::empty());
    let connections = map.connections.iter_mut().map(|one| (&one.id, &mut one.aliases));
    let components = map.components.iter_mut().map(|one| (&one.id, &mut one.aliases));
    let isolators = map.isolators.iter_mut().map(|one| (&one.id, &mut one.aliases));
    let mut all = connections.chain(components).chain(isolators);
    let Some((_, aliases)) = all.find(|(id, _)| *id == thing) else { return };
    for alias in aliases {
        let found = sought.find(alias);
        if !found.is_empty() {
            *alias = replaced(alias, &found, name);
        }
    }
}

/// Whether a further name has the words of a name in another order: "bolts of the pump flange" of "pump flange bolts".
fn says_the_same(name: &str, alias: &str) -> bool {
    let content = |text: &str| {
        let mut words: Vec<String> = text
            .to_lowercase()
            .split_whitespace()
            .filter(|word| !matches!(*word, "of" | "the"))
            .map(str::to_owned)
            .collect();
        words.sort_unstable();
        words
    };
    !same_name(name, alias) && content(name) == content(alias)
}

/// The name of another thing that is called so already, in whatever case.
pub(super) fn taken_by(map: &ApplianceMap, thing: &Id, name: &str) -> Option<String> {
    let same = |other: &str| same_name(other, name);
    let mut others = map.things().filter(|(_, id, ..)| *id != thing && !is_kin(map, thing, id));
    others
        .find(|(_, _, other, aliases)| same(other) || aliases.iter().any(|alias| same(alias)))
        .map(|(_, _, other, _)| other.to_owned())
}

/// The only section of a circuit, if both go by one name.
fn section_of_same_name(map: &ApplianceMap, circuit: &Id) -> Option<Id> {
    let circuit = map.circuits.iter().find(|known| known.id == *circuit)?;
    match circuit.sections.as_slice() {
        [section] if same_name(&section.name, &circuit.name) => Some(section.id.clone()),
        _ => None,
    }
}

/// Whether one of two things is a circuit and the other its only section, so that one name is enough.
fn is_kin(map: &ApplianceMap, one: &Id, other: &Id) -> bool {
    map.circuits.iter().any(|circuit| match circuit.sections.as_slice() {
        [section] => {
            let pair = (&circuit.id, &section.id);
            pair == (one, other) || pair == (other, one)
        }
        _ => false,
    })
}

pub(super) fn same_name(one: &str, other: &str) -> bool {
    one.trim().to_lowercase() == other.trim().to_lowercase()
}

/// Where the map keeps the name of a thing.
fn name_of<'m>(map: &'m mut ApplianceMap, thing: &Id) -> Option<&'m mut String> {
    let circuits = map.circuits.iter_mut().flat_map(|c| {
        let sections = c.sections.iter_mut().map(|s| (&s.id, &mut s.name));
        std::iter::once((&c.id, &mut c.name)).chain(sections)
    });
    let mut all = circuits
        .chain(map.isolators.iter_mut().map(|i| (&i.id, &mut i.name)))
        .chain(map.components.iter_mut().map(|c| (&c.id, &mut c.name)))
        .chain(map.connections.iter_mut().map(|c| (&c.id, &mut c.name)))
        .chain(map.seals.iter_mut().map(|s| (&s.id, &mut s.name)))
        .chain(map.temporary.iter_mut().map(|t| (&t.id, &mut t.name)))
        .chain(map.settings.iter_mut().map(|s| (&s.id, &mut s.name)));
    all.find(|(id, _)| *id == thing).map(|(_, name)| name)
}

/// A thing whose name is looked for in steps.
pub(super) struct Named {
    thing: Id,
    /// Its name, and what says the same in another order: "bolts of the pump flange".
    sought: Vec<Sought>,
    /// Other things that go by the same name.
    doubles: Vec<Id>,
}

impl Named {
    pub(super) fn of(map: &ApplianceMap, thing: &Id) -> Option<Self> {
        let (_, _, name, own) = map.things().find(|(_, id, ..)| *id == thing)?;
        let called = |other: &str| same_name(other, name);
        let doubles = map
            .things()
            .filter(|(_, id, other, aliases)| {
                *id != thing
                    && !is_kin(map, thing, id)
                    && (called(other) || aliases.iter().any(|alias| called(alias)))
            })
            .map(|(_, id, ..)| id.clone())
            .collect();
        // Within a name of its own that is longer, the thing is meant all the same.
        let others: Vec<&str> = map
            .things()
            .filter(|(_, id, ..)| *id != thing)
            .flat_map(|(_, _, name, aliases)| std::iter::once(name).chain(aliases.iter().map(String::as_str)))
            .collect();
        let same = own.iter().filter(|alias| says_the_same(name, alias)).map(String::as_str);
        let sought = std::iter::once(name).chain(same).map(|name| Sought::new(name, others.iter().copied()));
        Some(Self { thing: thing.clone(), sought: sought.collect(), doubles })
    }

    /// Where the thing is named in words, from left to right.
    fn find(&self, words: &str) -> Vec<Found> {
        let mut found: Vec<Found> = self.sought.iter().flat_map(|sought| sought.find(words)).collect();
        if self.sought.len() > 1 {
            found.sort_by_key(Found::begin_and_length);
            let mut end = 0;
            found.retain(|place| {
                let is_free = place.begin_and_length().0 >= end;
                end = if is_free { place.end() } else { end };
                is_free
            });
        }
        found
    }

    fn occurs_in(&self, step: &Step) -> bool {
        (self.is_meant_in(step) && !self.find(&step.words).is_empty())
            || step.after_failures().any(|inner| self.occurs_in(inner))
    }

    /// Whether the name can only mean this thing in the words of a step.
    fn is_meant_in(&self, step: &Step) -> bool {
        let acts_on = |id: &Id| step.actions.iter().any(|action| names(action, id));
        self.doubles.is_empty() || (acts_on(&self.thing) && !self.doubles.iter().any(acts_on))
    }

    pub(super) fn replace_in(&self, step: &mut Step, name: &str) {
        let found = if self.is_meant_in(step) { self.find(&step.words) } else { Vec::new() };
        let length = name.chars().count();
        step.words = replaced(&step.words, &found, name);
        for action in &mut step.actions {
            for span in &mut action.says {
                *span = shifted(*span, &found, length);
            }
        }
        step.after_failures_mut().for_each(|inner| self.replace_in(inner, name));
    }
}

/// Whether an action names a thing, as what it acts on or as where it is done.
fn names(action: &Action, id: &Id) -> bool {
    let places = [&action.through, &action.vent, &action.at].into_iter().flatten();
    action.on.iter().chain(&action.with_new).chain(places).any(|named| named == id)
}

#[cfg(test)]
mod tests;
