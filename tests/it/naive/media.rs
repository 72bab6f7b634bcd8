//! What is inside the sections: let out, shown to be at zero, let in, driven out.

use super::reach::{Seen, group, is_joined_to_supply};
use super::run::Job;
use super::world::{less, row_of, sections_named};
use procedures_schema::model::{Action, ApplianceMap, CircuitKind, Energy, Handle, Id, Means, Verb};
use procedures_schema::simulate::{Contents, Lapse};
use std::collections::BTreeSet;

pub fn act(job: &mut Job<'_>, action: &Action) {
    let mut named: Vec<Id> = action.on.iter().flat_map(|id| sections_named(job.map(), id)).collect();
    named.dedup();
    match action.verb {
        Verb::Release => release(job, action, &named),
        Verb::Prove => prove(job, action, &named),
        Verb::Charge => charge(job, action, &joined(job, &named)),
        _ => purge(job, action, &joined(job, &named)),
    }
}

/// The sections named, and those that filling or purging reaches through them.
fn joined(job: &Job<'_>, named: &[Id]) -> Vec<Id> {
    let mut all: BTreeSet<Id> = named.iter().cloned().collect();
    for section in named {
        all.extend(group(job.map(), &job.world, section, Seen::Safely));
    }
    all.into_iter().collect()
}

fn release(job: &mut Job<'_>, action: &Action, named: &[Id]) {
    let what = action.what.clone().unwrap_or(Energy::Pressure);
    for section in named {
        let now = job.now;
        let Some(inside) = job.world.sections.get_mut(section) else { continue };
        inside.stored = less(inside.stored, &what);
        inside.filled = Some(now);
        match action.by {
            Some(Means::Drain) => inside.contents = Contents::Air,
            Some(Means::Recover) => inside.contents = Contents::Residual,
            Some(Means::Evacuate) => inside.contents = Contents::Vacuum,
            _ => {}
        }
    }
    for id in action.through.iter().chain(&action.vent) {
        crack(job, id);
    }
}

/// A port named on the way opens; another joint is made slack.
fn crack(job: &mut Job<'_>, id: &Id) {
    let Some(connection) = job.map().connections.iter().find(|c| c.id == *id) else { return };
    let now = job.now;
    let Some(held) = job.world.connections.get_mut(id) else { return };
    if held.made == 0 && (connection.port.is_none() || held.slack == 0) {
        return;
    }
    if connection.port.is_some() {
        held.open += held.made + held.slack;
        held.slack = 0;
    } else {
        held.slack += held.made;
    }
    held.made = 0;
    held.disturbed = true;
    held.most_open = held.most_open.max(held.open);
    held.touched = Some(now);
    held.opened = Some(now);
}

/// A reading taken at a closed port opens it.
pub fn take_at(job: &mut Job<'_>, action: &Action) {
    if let Some(at) = &action.at {
        open_port(job, at);
    }
}

fn open_port(job: &mut Job<'_>, id: &Id) {
    if job.map().connections.iter().any(|c| c.id == *id && c.port.is_some()) {
        crack(job, id);
    }
}

fn prove(job: &mut Job<'_>, action: &Action, named: &[Id]) {
    let mut proved = named.to_vec();
    for section in named {
        proved.extend(behind_automatic(job, section));
    }
    for section in proved {
        let second = job.world.second;
        let Some(inside) = job.world.sections.get_mut(&section) else { continue };
        for gone in [Energy::Heat, Energy::Charge, Energy::Motion] {
            inside.stored = less(inside.stored, &gone);
        }
        inside.proved = Some(second);
        inside.lapsed = None;
    }
    take_at(job, action);
}

/// The sections joined to a section that nothing but an automatic isolator joins to a supply: they hold no
/// more than what stands before them.
fn behind_automatic(job: &Job<'_>, section: &Id) -> Vec<Id> {
    let mut by_hand = job.map().clone();
    by_hand.isolators.retain(|isolator| isolator.handle != Handle::Automatic);
    let mut all_open = job.world.clone();
    all_open.open_isolators = job.map().isolators.iter().map(|isolator| isolator.id.clone()).collect();
    let is_supplied = |map: &ApplianceMap, section: &Id| {
        let reached = group(map, &all_open, section, Seen::Safely);
        is_joined_to_supply(map, &all_open, &reached, Seen::Safely)
    };
    group(job.map(), &job.world, section, Seen::Safely)
        .into_iter()
        .filter(|other| is_supplied(job.map(), other) && !is_supplied(&by_hand, other))
        .collect()
}

fn charge(job: &mut Job<'_>, action: &Action, named: &[Id]) {
    for section in named {
        let Some(row) = row_of(job.map(), section) else { continue };
        job.world.lapse(section, Lapse::Filled);
        let now = job.now;
        let Some(inside) = job.world.sections.get_mut(section) else { continue };
        inside.stored.pressure |= row.stores.pressure;
        inside.filled = Some(now);
        let inert = action.with.as_deref().is_some_and(is_inert);
        inside.contents = match (&row.kind, inside.contents) {
            _ if row.only_off => Contents::Medium,
            _ if inert => Contents::Inert,
            (CircuitKind::Refrigerant, _) | (_, Contents::Medium | Contents::Vacuum) => Contents::Medium,
            _ => Contents::Mixed,
        };
    }
    if let Some(through) = &action.through {
        open_port(job, through);
    }
}

fn purge(job: &mut Job<'_>, action: &Action, named: &[Id]) {
    let inert = action.with.as_deref().is_some_and(is_inert);
    for section in named {
        job.world.lapse(section, Lapse::Filled);
        let now = job.now;
        let Some(inside) = job.world.sections.get_mut(section) else { continue };
        // What is air throughout stays air: there is nothing to drive it out with.
        if inert {
            inside.contents = Contents::Inert;
        } else if inside.contents == Contents::Mixed {
            inside.contents = Contents::Medium;
        }
        inside.filled = Some(now);
    }
    if let Some(through) = &action.through {
        open_port(job, through);
    }
}

fn is_inert(with: &str) -> bool {
    with.contains("nitrogen") || with.contains("inert")
}

/// Proofs older than the row of their kind lets them get; a wet section that is open does not age.
pub fn age(job: &mut Job<'_>) {
    let all: Vec<Id> = job.world.sections.keys().cloned().collect();
    for section in all {
        let Some(row) = row_of(job.map(), &section) else { continue };
        let proved = job.world.sections.get(&section).and_then(|inside| inside.proved);
        let (Some(life), Some(proved)) = (job.lives.get(&section), proved) else { continue };
        let too_old = job.world.second - proved > life * 60;
        let kept = !row.ages_open && is_open(job, &section);
        let still = row.kind == CircuitKind::DcBus && is_restrained(job, &section);
        if too_old && !kept && !still {
            job.world.lapse(&section, Lapse::Old);
        }
    }
}

/// Whether what leaks by would be seen: a vent, drain or joint of the section is open.
fn is_open(job: &Job<'_>, section: &Id) -> bool {
    let connections = job.map().connections.iter();
    connections
        .filter(|c| c.section.as_ref() == Some(section))
        .any(|c| job.world.connections.get(&c.id).is_some_and(|held| !held.is_made()))
}

/// Whether every movement that could charge the bus is held.
fn is_restrained(job: &Job<'_>, section: &Id) -> bool {
    let map = job.map();
    let Some(circuit) = super::world::circuit_of(map, section) else { return false };
    let mut moving = map
        .circuits
        .iter()
        .filter(|other| other.kind == CircuitKind::StoredMotion && circuit.fed_by.contains(&other.id));
    moving.all(|moving| {
        map.temporary
            .iter()
            .any(|t| t.restrains.as_ref() == Some(&moving.id) && job.world.placed.contains(&t.id))
    })
}
