//! Which sections hang together, and what still feeds them: searched anew each time, by id.

use super::world::{World, circuit_of};
use procedures_schema::model::{ApplianceMap, Handle, Id, Isolator};
use std::collections::BTreeSet;

pub const SUPPLY: &str = "supply";

/// How isolators count that are not simply open or closed.
#[derive(Clone, Copy, PartialEq)]
pub enum Seen {
    /// For safety: an automatic one as open, a relief device as closed.
    Safely,
    /// For loading by a test: as they stand.
    Loading { relief: bool },
}

/// Whether an isolator lets through.
pub fn lets_through(world: &World, isolator: &Isolator, seen: Seen) -> bool {
    let open = world.open_isolators.contains(&isolator.id);
    match (&isolator.handle, seen) {
        // What has no handle cannot be shut, whatever a step says of it.
        (Handle::None, _) | (Handle::Automatic, Seen::Safely) => true,
        (Handle::Automatic, Seen::Loading { .. }) => world.mode.is_some(),
        (Handle::Relief, Seen::Safely) => false,
        (Handle::Relief, Seen::Loading { relief }) => relief,
        _ => open,
    }
}

fn sides(isolator: &Isolator) -> [&Id; 2] {
    [&isolator.between.0, &isolator.between.1]
}

/// The sections joined to one by isolators that let through, itself among them.
pub fn group(map: &ApplianceMap, world: &World, section: &Id, seen: Seen) -> BTreeSet<Id> {
    let mut group = BTreeSet::from([section.clone()]);
    loop {
        let before = group.len();
        for isolator in map.isolators.iter().filter(|isolator| lets_through(world, isolator, seen)) {
            let [a, b] = sides(isolator);
            for (here, there) in [(a, b), (b, a)] {
                if group.contains(here) && world.sections.contains_key(there) {
                    group.insert(there.clone());
                }
            }
        }
        if group.len() == before {
            return group;
        }
    }
}

/// Whether a supply reaches any of these sections, or what feeds their circuits does.
pub fn is_fed(map: &ApplianceMap, world: &World, group: &BTreeSet<Id>, seen: Seen) -> bool {
    fed_but(map, world, group, seen, &mut BTreeSet::new())
}

/// Whether an isolator that lets through joins any of these sections to a supply.
pub fn is_joined_to_supply(map: &ApplianceMap, world: &World, group: &BTreeSet<Id>, seen: Seen) -> bool {
    map.isolators.iter().any(|isolator| {
        let [a, b] = sides(isolator);
        lets_through(world, isolator, seen)
            && ((a.as_str() == SUPPLY && group.contains(b)) || (b.as_str() == SUPPLY && group.contains(a)))
    })
}

fn fed_but(
    map: &ApplianceMap,
    world: &World,
    group: &BTreeSet<Id>,
    seen: Seen,
    asked: &mut BTreeSet<Id>,
) -> bool {
    is_joined_to_supply(map, world, group, seen)
        || group.iter().any(|section| by_another(map, world, section, seen, asked))
}

/// Whether the circuit of a section is fed by another that is fed. A movement that may still feed it is asked
/// for where it is proved; charge begins to go when the supply goes.
fn by_another(map: &ApplianceMap, world: &World, section: &Id, seen: Seen, asked: &mut BTreeSet<Id>) -> bool {
    let Some(circuit) = circuit_of(map, section) else { return false };
    if !asked.insert(circuit.id.clone()) {
        return false;
    }
    circuit.fed_by.iter().any(|id| {
        let feeding = map.circuits.iter().find(|other| other.id == *id);
        feeding.is_some_and(|feeding| {
            feeding.sections.iter().any(|s| {
                let group = group(map, world, &s.id, seen);
                fed_but(map, world, &group, seen, asked)
            })
        })
    })
}

/// Whether a supply, or a neighbour under pressure that is not named with it, still reaches a section.
pub fn is_still_fed(map: &ApplianceMap, world: &World, section: &Id, named: &[Id]) -> bool {
    let whole = group(map, world, section, Seen::Safely);
    if is_fed(map, world, &whole, Seen::Safely) {
        return true;
    }
    let near = group_without_automatic(map, world, section);
    let circuit = circuit_of(map, section).map(|circuit| &circuit.id);
    near.iter().any(|other| {
        other != section
            && !named.contains(other)
            && circuit_of(map, other).map(|circuit| &circuit.id) == circuit
            && world.sections.get(other).is_some_and(|inside| inside.stored.pressure)
    })
}

fn group_without_automatic(map: &ApplianceMap, world: &World, section: &Id) -> BTreeSet<Id> {
    let mut apart = map.clone();
    apart.isolators.retain(|isolator| isolator.handle != Handle::Automatic);
    group(&apart, world, section, Seen::Safely)
}

/// Whether every closed isolator around a section is locked, and there is one. Relief devices are none: they
/// are shut by themselves.
pub fn is_locked(map: &ApplianceMap, world: &World, section: &Id) -> bool {
    let group = group(map, world, section, Seen::Safely);
    let around = map.isolators.iter().filter(|isolator| {
        isolator.handle != Handle::Relief
            && sides(isolator).iter().any(|side| group.contains(*side))
            && !lets_through(world, isolator, Seen::Safely)
    });
    let around: Vec<&Isolator> = around.collect();
    !around.is_empty() && around.iter().all(|isolator| world.locked.contains(&isolator.id))
}
