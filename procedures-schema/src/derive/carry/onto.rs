//! Things of one map put onto another: which of them are there already, what they need, and the rest under new ids.
//!
//! What is there stays as it is; a circuit only gains sections.

use crate::model::{
    ApplianceMap, Circuit, Component, Connection, Id, Isolator, Known, References, SUPPLY, Seal, Setting,
    Temporary, ThingKind,
};
use std::collections::{BTreeMap, BTreeSet};

/// The things of a map that another has already, each with the one there: equal names of one kind, in their order.
///
/// Equal names are not enough where two things cannot be the same: on two circuits, of two sizes, or joined to what
/// is in `apart`. Whatever is in `apart` is another one.
pub(in crate::derive) fn the_same(
    from: &ApplianceMap,
    into: &ApplianceMap,
    apart: &BTreeSet<Id>,
) -> BTreeMap<Id, Id> {
    let pair = Pair { from, into, apart };
    let mut same = BTreeMap::new();
    let mut taken = BTreeSet::new();
    for (kind, id, name, _) in from.things().filter(|(_, id, ..)| !apart.contains(*id)) {
        let is_free = |here: &Id| !taken.contains(here) && pair.agree(kind, id, here, &same);
        let found = into.things().find(|(known, here, other, _)| {
            *known == kind && other.eq_ignore_ascii_case(name) && is_free(here)
        });
        if let Some((_, here, ..)) = found {
            taken.insert(here.clone());
            same.insert(id.clone(), here.clone());
        }
    }
    same
}

/// Two maps that are held against each other.
struct Pair<'m> {
    from: &'m ApplianceMap,
    into: &'m ApplianceMap,
    apart: &'m BTreeSet<Id>,
}

impl Pair<'_> {
    /// Whether two things of equal names can be the same, as far as is known of what they hang on.
    fn agree(&self, kind: ThingKind, id: &Id, here: &Id, same: &BTreeMap<Id, Id>) -> bool {
        let both = match kind {
            ThingKind::Circuit => self.circuits(id, here),
            ThingKind::Section => self.sections(id, here, same),
            ThingKind::Isolator => self.isolators(id, here, same),
            ThingKind::Connection => self.connections(id, here, same),
            ThingKind::Seal => self.seals(id, here),
            ThingKind::Setting => {
                let of = self.from.settings.iter().find(|one| one.id == *id).and_then(|one| one.of.as_ref());
                Some(!of.is_some_and(|of| self.apart.contains(of)))
            }
            ThingKind::Component | ThingKind::Temporary => Some(true),
        };
        both.unwrap_or(false)
    }

    fn circuits(&self, id: &Id, here: &Id) -> Option<bool> {
        let find = |map: &'_ ApplianceMap, id: &Id| map.circuits.iter().find(|c| c.id == *id).cloned();
        Some(find(self.from, id)?.kind == find(self.into, here)?.kind)
    }

    fn sections(&self, id: &Id, here: &Id, same: &BTreeMap<Id, Id>) -> Option<bool> {
        Some(same.get(&circuit_of(self.from, id)?.id) == Some(&circuit_of(self.into, here)?.id))
    }

    fn isolators(&self, id: &Id, here: &Id, same: &BTreeMap<Id, Id>) -> Option<bool> {
        let sides = |map: &ApplianceMap, id: &Id| {
            map.isolators.iter().find(|one| one.id == *id).map(|one| one.between.clone())
        };
        let (one, other) = sides(self.from, id)?;
        let beside = sides(self.into, here)?;
        let touches = |side: &Id| same.get(side).is_some_and(|side| *side == beside.0 || *side == beside.1);
        Some(touches(&one) || touches(&other))
    }

    fn connections(&self, id: &Id, here: &Id, same: &BTreeMap<Id, Id>) -> Option<bool> {
        let (one, other) = (self.from.connection(id)?, self.into.connection(here)?);
        let carries_alike = match (&one.section, &other.section) {
            (Some(section), Some(there)) => same.get(section) == Some(there),
            _ => true,
        };
        let joins_another = one.joins.iter().any(|joined| self.apart.contains(joined));
        Some(one.family == other.family && carries_alike && !joins_another)
    }

    fn seals(&self, id: &Id, here: &Id) -> Option<bool> {
        let size = |map: &ApplianceMap, id: &Id| {
            map.seals.iter().find(|one| one.id == *id).map(|one| one.size.clone())
        };
        Some(match (size(self.from, id)?, size(self.into, here)?) {
            (Some(Known::Value(one)), Some(Known::Value(other))) => one == other,
            _ => true,
        })
    }
}

fn circuit_of<'m>(map: &'m ApplianceMap, section: &Id) -> Option<&'m Circuit> {
    map.sections().find(|(_, known)| known.id == *section).map(|(circuit, _)| circuit)
}

/// Gives a thing a name that none of those before it has: the same with a number behind it, if it is taken.
pub(in crate::derive) fn tell_apart(map: &mut ApplianceMap, id: &Id, before: &ApplianceMap) {
    let named = map.things().find(|(_, known, ..)| *known == id).map(|(kind, _, name, _)| (kind, name));
    let Some((kind, name)) = named.map(|(kind, name)| (kind, name.to_owned())) else { return };
    let is_taken =
        before.things().any(|(known, _, other, _)| known == kind && other.eq_ignore_ascii_case(&name));
    let is_free = |name: &String| map.things().all(|(_, _, other, _)| !other.eq_ignore_ascii_case(name));
    let free = (2..10_000_u32).map(|n| format!("{name} {n}")).find(is_free);
    let Some(free) = free.filter(|_| is_taken) else { return };
    macro_rules! rename {
        ($($list:ident),*) => {$(
            map.$list.iter_mut().filter(|thing| thing.id == *id).for_each(|thing| thing.name.clone_from(&free));
        )*};
    }
    // Sections are told apart by their circuits.
    rename!(circuits, isolators, components, connections, seals, temporary, settings);
}

/// Some things, and what those need, down to the last.
pub(in crate::derive) fn needed(map: &ApplianceMap, mut open: Vec<Id>) -> BTreeSet<Id> {
    let mut found = BTreeSet::new();
    while let Some(id) = open.pop() {
        if id.as_str() != SUPPLY && found.insert(id.clone()) {
            open.extend(needs(map, &id));
        }
    }
    found
}

/// Those of some things that are gone, and what those need that is gone too.
pub(super) fn lacking(map: &ApplianceMap, mut open: Vec<Id>, is_gone: &dyn Fn(&Id) -> bool) -> BTreeSet<Id> {
    let mut found = BTreeSet::new();
    while let Some(id) = open.pop() {
        if is_gone(&id) && found.insert(id.clone()) {
            open.extend(needs(map, &id));
        }
    }
    found
}

/// What one thing needs.
fn needs(map: &ApplianceMap, id: &Id) -> Vec<Id> {
    let mut all = Vec::new();
    let mut note = |id: &mut Id| all.push(id.clone());
    let is = |known: &Id| known == id;
    for circuit in map.circuits.iter().filter(|c| is(&c.id) || c.sections.iter().any(|s| is(&s.id))) {
        circuit.clone().each_thing(&mut note);
        note(&mut circuit.id.clone());
        circuit.sections.iter().for_each(|section| note(&mut section.id.clone()));
        let borders = |side: &Id| circuit.sections.iter().any(|section| section.id == *side);
        let around = |isolator: &&Isolator| borders(&isolator.between.0) || borders(&isolator.between.1);
        map.isolators.iter().filter(around).for_each(|isolator| note(&mut isolator.id.clone()));
    }
    let mut of = |thing: &mut dyn References| thing.each_thing(&mut note);
    map.isolators.iter().filter(|t| is(&t.id)).for_each(|t| of(&mut Isolator::clone(t)));
    map.components.iter().filter(|t| is(&t.id)).for_each(|t| of(&mut Component::clone(t)));
    map.connections.iter().filter(|t| is(&t.id)).for_each(|t| of(&mut Connection::clone(t)));
    map.temporary.iter().filter(|t| is(&t.id)).for_each(|t| of(&mut Temporary::clone(t)));
    map.settings.iter().filter(|t| is(&t.id)).for_each(|t| of(&mut Setting::clone(t)));
    all
}

/// A map with the things of another that it lacks, under their new ids, with names of their own. Images stay behind,
/// since they belong to a document.
pub(in crate::derive) fn with_missing(
    into: &ApplianceMap,
    from: &ApplianceMap,
    missing: &BTreeSet<Id>,
    renamed: &BTreeMap<Id, Id>,
) -> ApplianceMap {
    let mut map = into.clone();
    let known = |id: &Id| renamed.get(id).unwrap_or(id).clone();
    for circuit in &from.circuits {
        let mut copy = circuit.clone();
        copy.images.clear();
        copy.sections.retain(|section| missing.contains(&section.id));
        for section in &mut copy.sections {
            section.id = known(&section.id);
            section.images.clear();
        }
        if missing.contains(&circuit.id) {
            copy.id = known(&circuit.id);
            copy.each_thing(&mut |id| exchange(id, renamed));
            map.circuits.push(copy);
        } else if let Some(there) = map.circuits.iter_mut().find(|there| there.id == known(&circuit.id)) {
            there.sections.append(&mut copy.sections);
        }
    }
    macro_rules! bring {
        ($($list:ident: $thing:ident),*) => {$(
            for thing in from.$list.iter().filter(|thing| missing.contains(&thing.id)) {
                let mut copy = $thing::clone(thing);
                copy.id = known(&thing.id);
                copy.images.clear();
                copy.each_thing(&mut |id| exchange(id, renamed));
                map.$list.push(copy);
            }
        )*};
    }
    bring!(
        isolators: Isolator, components: Component, connections: Connection, seals: Seal,
        temporary: Temporary, settings: Setting
    );
    for id in missing {
        tell_apart(&mut map, &known(id), into);
    }
    map
}

pub(super) fn exchange(id: &mut Id, renamed: &BTreeMap<Id, Id>) {
    if let Some(other) = renamed.get(id) {
        *id = other.clone();
    }
}
