//! The same cell in both simulators, as text: what differs is told by place, thing and value.

use super::reach::{is_locked, is_still_fed};
use super::testing::stamp;
use super::world::World;
use procedures_schema::model::{ApplianceMap, Id, Procedure, Verb};
use procedures_schema::simulate::{
    ApplianceCell, ApplianceState, ClockCell, ComponentState, ConnectionState, Guard, IsolatorState, Place,
    Plant, Proof, SealState, SectionState, SettingState, SupplyCell, SupplyState, TemporaryState, TestCell,
    TestDemand, Thing, Trace,
};
use std::fmt::Debug;

/// One cell with two values.
#[derive(Debug)]
pub struct Difference {
    pub place: Place,
    pub thing: String,
    pub ours: String,
    pub naive: String,
}

/// Every cell of one place that differs.
pub fn differences(
    procedure: &Procedure,
    trace: &Trace,
    way: &Guard,
    at: &(Place, World),
) -> Vec<Difference> {
    let (place, world) = at;
    let mut told = Told { place: *place, found: Vec::new() };
    told.same("appliance", trace.on_way(&ApplianceCell, *place, way), &appliance(world));
    told.same("clock", trace.on_way(&ClockCell, *place, way), &world.second);
    for (_, id, ..) in procedure.map.things() {
        match trace.plant().thing(id) {
            Some(Thing::Section(cell)) => {
                told.same(id.as_str(), trace.on_way(&cell, *place, way), &section(world, id));
                let supply = supply(&procedure.map, world, id);
                told.same(&format!("supply of {id}"), trace.on_way(&SupplyCell(cell), *place, way), &supply);
            }
            Some(Thing::Isolator(cell)) => {
                let state = IsolatorState {
                    open: world.open_isolators.contains(id),
                    locked: world.locked.contains(id),
                };
                told.same(id.as_str(), trace.on_way(&cell, *place, way), &state);
            }
            Some(Thing::Connection(cell)) => {
                told.same(id.as_str(), trace.on_way(&cell, *place, way), &connection(world, id));
            }
            Some(Thing::Component(cell)) => {
                told.same(id.as_str(), trace.on_way(&cell, *place, way), &component(world, id));
            }
            Some(Thing::Seal(cell)) => {
                let state = seal(trace.plant(), world, id);
                told.same(id.as_str(), trace.on_way(&cell, *place, way), &state);
            }
            Some(Thing::Temporary(cell)) => {
                let state = TemporaryState { in_place: world.placed.contains(id) };
                told.same(id.as_str(), trace.on_way(&cell, *place, way), &state);
            }
            Some(Thing::Setting(cell)) => {
                told.same(id.as_str(), trace.on_way(&cell, *place, way), &setting(world, id));
            }
            Some(Thing::Circuit(_)) | None => {}
        }
    }
    if *place == Place::END || is_after_test(procedure, *place) {
        tests(&mut told, procedure, trace, way, world);
    }
    told.found
}

fn is_after_test(procedure: &Procedure, place: Place) -> bool {
    let step = place.execution().and_then(|at| procedure.steps.get(at));
    let action = step.and_then(|step| place.action().and_then(|at| step.actions.get(at)));
    action.is_some_and(|action| action.verb == Verb::Test)
}

/// Whether each test that a thing needs has passed since it was last touched. Which tests it needs is read
/// from the plant; ours writes a stamp only where it could tell something, the naive one wherever a test shows
/// a thing.
fn tests(told: &mut Told, procedure: &Procedure, trace: &Trace, way: &Guard, world: &World) {
    for (_, id, ..) in procedure.map.things() {
        let Some(thing) = trace.plant().thing(id) else { continue };
        let Some(touched) = last_touched(world, id) else { continue };
        for any_of in needed(trace.plant(), thing) {
            let naive = any_of.iter().any(|wanted| {
                let stamps = world.passed.get(&(stamp(&wanted.kind, wanted.mode.as_ref()), id.clone()));
                stamps.is_some_and(|passed| *passed > touched)
            });
            let ours = any_of.iter().any(|wanted| {
                let cell = TestCell { test: wanted.clone(), thing };
                let state = trace.on_way(&cell, told.place, way);
                state.and_then(|state| state.passed).is_some_and(|passed| passed > touched)
            });
            let kinds: Vec<String> =
                any_of.iter().map(|wanted| stamp(&wanted.kind, wanted.mode.as_ref())).collect();
            told.same(&format!("{} of {id}", kinds.join("or ")), Some(&ours), &naive);
        }
    }
}

/// The tests that a thing needs after it was touched.
fn needed(plant: &Plant, thing: Thing) -> Vec<TestDemand> {
    let tests = match thing {
        Thing::Connection(cell) => plant.connection(cell).map(|plan| plan.tests.clone()),
        Thing::Component(cell) => plant.component(cell).map(|plan| plan.tests.clone()),
        Thing::Setting(cell) => plant.setting(cell).map(|plan| plan.tests.clone()),
        Thing::Section(cell) => plant.section(cell).map(|plan| plan.demands.after_filling.clone()),
        _ => None,
    };
    tests.unwrap_or_default()
}

/// When a test of a thing began to be wanted; none if it is not.
fn last_touched(world: &World, id: &Id) -> Option<Place> {
    let connection = world.connections.get(id).map(|held| held.touched);
    let component = world.components.get(id).map(|part| part.touched);
    let setting = world.settings.get(id).map(|dial| dial.set);
    let section = world.sections.get(id).map(|inside| inside.filled);
    connection.or(component).or(setting).or(section).flatten()
}

struct Told {
    place: Place,
    found: Vec<Difference>,
}

impl Told {
    fn same<S: PartialEq + Debug>(&mut self, thing: &str, ours: Option<&S>, naive: &S) {
        if ours != Some(naive) {
            self.found.push(Difference {
                place: self.place,
                thing: thing.to_owned(),
                ours: ours.map_or("nothing".to_owned(), |state| format!("{state:?}")),
                naive: format!("{naive:?}"),
            });
        }
    }
}

fn appliance(world: &World) -> ApplianceState {
    ApplianceState {
        running: world.mode.clone(),
        since_second: world.mode_since,
        shown_to_work: world.worked,
        ended: world.ended.clone(),
    }
}

fn section(world: &World, id: &Id) -> SectionState {
    let inside = &world.sections[id];
    let proof = match (inside.proved, inside.lapsed) {
        (Some(second), _) => Proof::Proved { second },
        (None, Some(why)) => Proof::Lapsed(why),
        (None, None) => Proof::None,
    };
    SectionState {
        stored: inside.stored,
        contents: inside.contents,
        proof,
        off_since: inside.off_since,
        last_filled: inside.filled,
    }
}

fn supply(map: &ApplianceMap, world: &World, id: &Id) -> SupplyState {
    let fed = is_still_fed(map, world, id, &[]);
    SupplyState { fed, locked: !fed && is_locked(map, world, id) }
}

fn connection(world: &World, id: &Id) -> ConnectionState {
    let held = &world.connections[id];
    ConnectionState {
        made: held.made,
        slack: held.slack,
        open: held.open,
        last_touched: held.touched,
        last_opened: held.opened,
        seals_disturbed: held.disturbed,
        most_open: held.most_open,
        marked: held.marked,
        tightened_again: held.again,
    }
}

fn component(world: &World, id: &Id) -> ComponentState {
    let part = &world.components[id];
    ComponentState {
        whereabouts: part.place,
        new: part.new,
        on_carrier: part.carried,
        put_over: part.put_over,
        last_touched: part.touched,
        cleaned: part.cleaned,
        inspected: part.inspected,
    }
}

fn seal(plant: &Plant, world: &World, id: &Id) -> SealState {
    let seal = &world.seals[id];
    SealState {
        inspected: seal.inspected,
        question: seal.question.as_ref().and_then(|question| plant.question(question)),
        renewed: seal.renewed,
    }
}

fn setting(world: &World, id: &Id) -> SettingState {
    let dial = &world.settings[id];
    SettingState { recorded: dial.recorded, last_set: dial.set, lost: dial.lost, changed: dial.changed }
}
