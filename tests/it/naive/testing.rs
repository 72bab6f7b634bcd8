//! Which tests stand for which things: what a test loads, and what of that it shows.

use super::reach::{Seen, group, is_fed, is_joined_to_supply, lets_through};
use super::run::Job;
use super::world::{circuit_of, row_of, sections_named};
use procedures_schema::model::{
    Action, CircuitKind, Component, Connection, Handle, Id, Mode, Role, TestKind,
};
use procedures_schema::simulate::{Contents, Loading, Stamps, TestRow, Whereabouts, test_row};

pub fn act(job: &mut Job<'_>, action: &Action) {
    if let Some(row) = action.test.as_ref().and_then(test_row) {
        let all: Vec<Id> = job.map().things().map(|(_, id, ..)| id.clone()).collect();
        let shown: Vec<Id> = all.into_iter().filter(|thing| shows(job, row, action, thing)).collect();
        for thing in shown {
            let rate = mode(action, job);
            job.world.passed.insert((stamp(&row.kind, rate.as_ref()), thing.clone()), job.now);
            job.world.passed.insert((stamp(&row.kind, None), thing), job.now);
        }
        if row.kind == TestKind::Function && job.world.mode.is_some() {
            job.world.worked = Some(job.now);
        }
    }
    super::media::take_at(job, action);
}

/// How a test is written down: its kind, and its mode if it has one.
pub fn stamp(kind: &TestKind, mode: Option<&Mode>) -> String {
    format!("{kind} {}", mode.map_or("", Mode::word))
}

/// The rate at which a test is taken: as it says, else as the appliance runs.
fn mode(action: &Action, job: &Job<'_>) -> Option<Mode> {
    action.mode.clone().or_else(|| job.world.mode.clone())
}

fn shows(job: &Job<'_>, row: &TestRow, action: &Action, thing: &Id) -> bool {
    let map = job.map();
    if let Some(connection) = map.connections.iter().find(|c| c.id == *thing) {
        return row.stamps != Stamps::Sections && shows_connection(job, row, action, connection);
    }
    if let Some(component) = map.components.iter().find(|c| c.id == *thing) {
        return row.stamps == Stamps::All && shows_component(job, row, action, component);
    }
    if let Some(setting) = map.settings.iter().find(|s| s.id == *thing) {
        let named = action.on.is_empty()
            || action.on.contains(thing)
            || setting.of.as_ref().is_some_and(|of| action.on.contains(of));
        return row.stamps == Stamps::All && named && setting.affects.contains(&row.kind) && runs(job, row);
    }
    let is_section = job.world.sections.contains_key(thing);
    is_section
        && row.stamps == Stamps::Sections
        && is_named(job, action, &[thing])
        && loads(job, row, action, thing)
}

fn runs(job: &Job<'_>, row: &TestRow) -> bool {
    row.loading != Loading::Running || job.world.mode.is_some()
}

/// Whether an action is confined to nothing, or to one of these or to a section of theirs.
fn is_named(job: &Job<'_>, action: &Action, any: &[&Id]) -> bool {
    let named: Vec<Id> = action
        .on
        .iter()
        .flat_map(|id| sections_named(job.map(), id).into_iter().chain([id.clone()]))
        .collect();
    action.on.is_empty() || any.iter().any(|id| named.contains(id))
}

fn shows_connection(job: &Job<'_>, row: &TestRow, action: &Action, connection: &Connection) -> bool {
    let mut names: Vec<&Id> = vec![&connection.id];
    names.extend(&connection.section);
    names.extend(&connection.joins);
    let Some(section) = &connection.section else { return false };
    let made = job.world.connections.get(&connection.id).is_some_and(super::world::Held::is_made);
    let capped = job
        .map()
        .temporary
        .iter()
        .any(|t| t.closes && t.on.as_ref() == Some(&connection.id) && job.world.placed.contains(&t.id));
    let taken_here = row.not_at && action.at.as_ref() == Some(&connection.id);
    let seen = !row.by_sight || reach(job, connection).iter().all(|part| is_out_of_the_way(job, part));
    made && !capped
        && !taken_here
        && seen
        && is_named(job, action, &names)
        && loads(job, row, action, section)
}

fn is_out_of_the_way(job: &Job<'_>, part: &Id) -> bool {
    job.world.components.get(part).is_none_or(|part| part.place != Whereabouts::Fitted)
}

/// What must be out of the way of a connection.
fn reach(job: &Job<'_>, connection: &Connection) -> Vec<Id> {
    if let Some(after) = &connection.reached_after {
        return after.clone();
    }
    let mut all: Vec<Id> = Vec::new();
    let mut open: Vec<Id> = connection.joins.clone();
    while let Some(part) = open.pop() {
        let behind = job.map().components.iter().find(|c| c.id == part).map(|c| c.behind.clone());
        for part in behind.unwrap_or_default() {
            if !all.contains(&part) && !connection.joins.contains(&part) {
                all.push(part.clone());
                open.push(part);
            }
        }
    }
    all
}

fn shows_component(job: &Job<'_>, row: &TestRow, action: &Action, component: &Component) -> bool {
    let fitted = job.world.components.get(&component.id).is_some_and(|c| c.place == Whereabouts::Fitted);
    let concerned = match row.kind {
        TestKind::Combustion => {
            matches!(component.role, Some(Role::Burner | Role::Fan | Role::GasValve))
        }
        TestKind::Insulation => component.role == Some(Role::Element),
        TestKind::ReliefLever => component.role == Some(Role::Relief),
        _ => true,
    };
    let own = job.map().connections.iter().filter(|c| c.joins.contains(&component.id));
    let mut sections = own.filter_map(|c| c.section.as_ref());
    let loaded = row.loading == Loading::Running || sections.any(|s| loads(job, row, action, s));
    fitted && concerned && is_named(job, action, &[&component.id]) && loaded && runs(job, row)
}

/// Whether a test loads a section now.
fn loads(job: &Job<'_>, row: &TestRow, action: &Action, section: &Id) -> bool {
    let map = job.map();
    let Some(circuit) = circuit_of(map, section) else { return false };
    if row_of(map, section).is_none() || !(row.circuits.is_empty() || row.circuits.contains(&circuit.kind)) {
        return false;
    }
    let Some(inside) = job.world.sections.get(section) else { return false };
    let at = action.at.as_ref().and_then(|id| map.connections.iter().find(|c| c.id == *id));
    let at = at.and_then(|connection| connection.section.as_ref());
    let seen = Seen::Loading { relief: false };
    let fed = || is_fed(map, &job.world, &group(map, &job.world, section, seen), seen);
    let filled = matches!(inside.contents, Contents::Medium | Contents::Mixed);
    match row.loading {
        Loading::Dead => {
            !is_fed(map, &job.world, &group(map, &job.world, section, Seen::Safely), Seen::Safely)
        }
        Loading::Fed => fed() || inside.stored.pressure,
        Loading::FedBehindShutAutomatic => {
            let whole = group(map, &job.world, at.unwrap_or(section), seen);
            job.world.mode.is_none()
                && whole.contains(section)
                && is_joined_to_supply(map, &job.world, &whole, seen)
        }
        Loading::UnderPressure => filled && inside.stored.pressure,
        Loading::UnderPressureHot => filled && inside.stored.pressure && inside.stored.heat,
        Loading::Filled => inside.contents == Contents::Medium,
        Loading::Inert => inside.contents == Contents::Inert && inside.stored.pressure,
        Loading::Vacuum => inside.contents == Contents::Vacuum,
        Loading::BehindRelief => is_behind_relief(job, section),
        Loading::Running => job.world.mode.is_some() && is_worked(job, row, action, section),
    }
}

/// Whether lifting a relief device lets a full section under pressure into this one.
fn is_behind_relief(job: &Job<'_>, section: &Id) -> bool {
    job.map().isolators.iter().filter(|isolator| isolator.handle == Handle::Relief).any(|relief| {
        let (a, b) = (&relief.between.0, &relief.between.1);
        [(a, b), (b, a)].into_iter().any(|(here, there)| {
            here == section
                && job.world.sections.get(there).is_some_and(|s| {
                    s.stored.pressure && matches!(s.contents, Contents::Medium | Contents::Mixed)
                })
        })
    })
}

/// Combustion shows the gas side only where gas is mixed ahead of the burner, and only at the highest rate.
fn is_worked(job: &Job<'_>, row: &TestRow, action: &Action, section: &Id) -> bool {
    let Some(circuit) = circuit_of(job.map(), section) else { return false };
    if row.kind == TestKind::Combustion && circuit.kind == CircuitKind::FuelGas {
        let behind = job.map().isolators.iter().any(|isolator| {
            isolator.handle == Handle::Automatic
                && lets_through(&job.world, isolator, Seen::Safely)
                && (isolator.between.0 == *section || isolator.between.1 == *section)
        });
        return circuit.premix && behind && mode(action, job) == Some(Mode::Max);
    }
    true
}
