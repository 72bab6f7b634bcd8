//! Isolators, and what comes back through them.

use super::reach::{Seen, group, is_fed, is_still_fed};
use super::run::Job;
use super::world::{circuit_of, row_of};
use procedures_schema::model::{Action, Id, Verb};
use procedures_schema::simulate::{Contents, Lapse};
use std::collections::BTreeSet;

pub fn act(job: &mut Job<'_>, action: &Action) {
    let isolators = job.map().isolators.iter().filter(|isolator| action.on.contains(&isolator.id));
    let named: Vec<Id> = isolators.map(|isolator| isolator.id.clone()).collect();
    match action.verb {
        Verb::Isolate => job.world.open_isolators.retain(|id| !named.contains(id)),
        Verb::Lock => job.world.locked.extend(named),
        _ => restore(job, &named),
    }
}

/// Writes down which sections have lost their supply and which have it again.
pub fn look(job: &mut Job<'_>) {
    let all: Vec<Id> = job.world.sections.keys().cloned().collect();
    for section in all {
        let fed = is_still_fed(job.map(), &job.world, &section, &[]);
        let second = job.world.second;
        if let Some(inside) = job.world.sections.get_mut(&section) {
            inside.off_since = if fed { None } else { inside.off_since.or(Some(second)) };
        }
    }
}

fn restore(job: &mut Job<'_>, named: &[Id]) {
    for id in named {
        job.world.open_isolators.insert(id.clone());
        job.world.locked.remove(id);
    }
    let map = job.map();
    let opened = map.isolators.iter().filter(|isolator| named.contains(&isolator.id));
    let opened: Vec<&Id> = opened
        .flat_map(|isolator| [&isolator.between.0, &isolator.between.1])
        .filter(|side| job.world.sections.contains_key(*side))
        .collect();
    for section in &opened {
        let joined = group(map, &job.world, section, Seen::Safely);
        come_back(job, &joined);
    }
    // What hangs on a circuit that is on again comes back with it.
    let mut on: BTreeSet<&Id> =
        opened.iter().filter_map(|section| circuit_of(map, section)).map(|circuit| &circuit.id).collect();
    loop {
        let hanging = map.circuits.iter().filter(|c| c.fed_by.iter().any(|feeder| on.contains(feeder)));
        let new: Vec<_> = hanging.filter(|circuit| !on.contains(&circuit.id)).collect();
        if new.is_empty() {
            return;
        }
        for circuit in new {
            on.insert(&circuit.id);
            for section in &circuit.sections {
                let joined = group(map, &job.world, &section.id, Seen::Safely);
                if is_fed(map, &job.world, &joined, Seen::Safely) {
                    come_back(job, &BTreeSet::from([section.id.clone()]));
                }
            }
        }
    }
}

/// What a supply, or a neighbour under pressure, brings back into these sections.
fn come_back(job: &mut Job<'_>, joined: &BTreeSet<Id>) {
    let fed = joined.iter().any(|section| {
        is_fed(job.map(), &job.world, &group(job.map(), &job.world, section, Seen::Safely), Seen::Safely)
    });
    let pressed = fed || joined.iter().any(|s| job.world.sections.get(s).is_some_and(|s| s.stored.pressure));
    for section in joined {
        job.world.lapse(section, Lapse::Restored);
        let Some(row) = row_of(job.map(), section) else { continue };
        let Some(inside) = job.world.sections.get_mut(section) else { continue };
        inside.stored.pressure |= pressed && row.stores.pressure;
        inside.stored.heat |= pressed && row.heat_with_supply;
        inside.stored.charge |= fed && row.stores.charge;
        if pressed && inside.contents == Contents::Air {
            inside.contents = Contents::Mixed;
        }
    }
}

/// The appliance runs: everything that is fed stores again what it stores in service.
pub fn run_up(job: &mut Job<'_>) {
    let all: Vec<Id> = job.world.sections.keys().cloned().collect();
    for section in all {
        let joined = group(job.map(), &job.world, &section, Seen::Safely);
        let fed = is_fed(job.map(), &job.world, &joined, Seen::Safely);
        let Some(row) = row_of(job.map(), &section) else { continue };
        let Some(inside) = job.world.sections.get_mut(&section) else { continue };
        if fed || inside.stored.pressure || row.hangs_on_running {
            // What holds nothing but air has nothing that could be pressed or heated.
            if inside.contents != Contents::Air {
                inside.stored = inside.stored.with(row.stores);
            }
            job.world.lapse(&section, Lapse::Started);
        }
    }
}
