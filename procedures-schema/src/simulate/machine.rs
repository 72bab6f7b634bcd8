//! The machine that runs: executes actions in order and writes timelines.

use super::plant::Thing;
use super::run::Run;
use super::state::{
    ApplianceState, ComponentState, ConnectionState, Contents, Energies, IsolatorState, Proof, SectionState,
    SettingState, SupplyState, TemporaryState, Whereabouts,
};
use super::timeline::Timeline;
use super::trace::{Cell, Trace};
use super::unmet::{CannotJudge, Reason, Unmet};
use super::{ApplianceCell, Place, Plant, SectionCell};
use crate::model::{Action, CircuitKind, Id, Mode, Procedure, Step, Verb};
use std::collections::BTreeMap;

/// Runs a procedure. Total: whatever the document says, there is a trace.
pub fn simulate(procedure: &Procedure, run: &Run) -> Trace {
    let mut machine = Machine::new(procedure, run);
    machine.look_at_supplies();
    for (execution, position) in run.steps().iter().enumerate() {
        if let Some(step) = procedure.steps.get(*position) {
            machine.execute(execution, step);
        }
    }
    if run.is_complete() {
        machine.end();
    }
    machine.trace
}

/// A run in progress: the trace so far, and the place that is being written.
pub(super) struct Machine<'p> {
    procedure: &'p Procedure,
    pub(super) trace: Trace,
    pub(super) place: Place,
    /// The action in hand, for unmet demands.
    verb: Option<Verb>,
    thing: Option<Id>,
}

impl<'p> Machine<'p> {
    fn new(procedure: &'p Procedure, run: &Run) -> Self {
        let plant = Plant::of(&procedure.map);
        let trace = Trace {
            run: run.clone(),
            appliance: Timeline::new(ApplianceState { running: Some(Mode::Heat), minutes: 0 }),
            sections: plant.sections().map(|(s, _)| Timeline::new(in_service(&plant, s))).collect(),
            supplies: plant
                .sections()
                .map(|_| Timeline::new(SupplyState { fed: false, locked: false }))
                .collect(),
            isolators: plant
                .isolators()
                .map(|(_, i)| Timeline::new(IsolatorState { open: i.normally_open, locked: false }))
                .collect(),
            connections: plant.connections().map(|(_, k)| Timeline::new(made(k.count))).collect(),
            components: plant.components().map(|_| Timeline::new(fitted())).collect(),
            temporaries: plant
                .temporaries()
                .map(|(_, t)| Timeline::new(TemporaryState { in_place: t.initially }))
                .collect(),
            settings: (0..plant.n_settings())
                .map(|_| Timeline::new(SettingState { recorded: None, last_set: None }))
                .collect(),
            tests: BTreeMap::new(),
            loadings: Vec::new(),
            unmet: Vec::new(),
            cannot_judge: Vec::new(),
            plant,
        };
        Self { procedure, trace, place: Place::START, verb: None, thing: None }
    }

    fn execute(&mut self, execution: usize, step: &Step) {
        self.place = Place::before(execution);
        if !step.when.is_empty() {
            self.cannot_judge("a step that depends on an answer");
        }
        for (i, action) in step.actions.iter().enumerate() {
            self.place = Place::of_action(execution, i);
            self.verb = Some(action.verb.clone());
            self.thing = action.on.first().cloned();
            self.look_for_unknown(action);
            self.act(action);
            self.look_at_supplies();
        }
        self.verb = None;
        self.thing = None;
    }

    /// Works out anew what is fed and locked, where that can have changed.
    fn look_at_supplies(&mut self) {
        let changes = matches!(
            self.verb,
            None | Some(
                Verb::Isolate | Verb::Lock | Verb::Restore | Verb::Release | Verb::Charge | Verb::Start
            )
        );
        if !changes {
            return;
        }
        let sections: Vec<SectionCell> = self.trace.plant.sections().map(|(s, _)| s).collect();
        for section in sections {
            let fed = self.still_fed(section, &[]).is_some();
            let locked = !fed && self.not_locked(section).is_none() && self.has_closed(section);
            let now = SupplyState { fed, locked };
            if let Some(line) = self.trace.supplies.get_mut(section.index())
                && line.now().state != now
            {
                line.push(self.place, now);
            }
        }
    }

    /// Says what of an action this version does not know; what it knows is still simulated.
    fn look_for_unknown(&mut self, action: &Action) {
        if !action.verb.is_known() {
            self.cannot_judge(&format!("the verb \"{}\"", action.verb));
        }
        if let Some(test) = &action.test
            && super::test_row(test).is_none()
        {
            self.cannot_judge(&format!("the test \"{test}\""));
        }
        let details = [&action.through, &action.vent, &action.at];
        let named: Vec<&Id> = action.on.iter().chain(details.into_iter().flatten()).collect();
        for id in named {
            match self.trace.plant.thing(id) {
                None => self.cannot_judge(&format!("\"{id}\", which the appliance map does not know")),
                Some(thing) => self.look_for_unknown_kind(thing),
            }
        }
    }

    fn look_for_unknown_kind(&mut self, thing: Thing) {
        let section = match thing {
            Thing::Section(section) => Some(section),
            Thing::Circuit(circuit) => {
                self.trace.plant.circuit(circuit).and_then(|c| c.sections.first().copied())
            }
            Thing::Connection(k) => self.trace.plant.connection(k).and_then(|k| k.section),
            Thing::Isolator(i) => self.trace.plant.isolator(i).and_then(|i| i.between).and_then(|(a, b)| {
                [a, b].into_iter().find_map(|side| match side {
                    super::Side::Section(section) => Some(section),
                    super::Side::Supply => None,
                })
            }),
            _ => None,
        };
        let Some(circuit) = section.and_then(|s| self.trace.plant.circuit_of(s)) else { return };
        if circuit.row.is_none() {
            let kind = self.kind_of(&circuit.id);
            self.cannot_judge(&format!("circuits of the kind \"{kind}\""));
        }
    }

    fn kind_of(&self, circuit: &Id) -> String {
        let kinds = self.procedure.map.circuits.iter().find(|c| c.id == *circuit);
        kinds.map_or_else(String::new, |c: &crate::model::Circuit| CircuitKind::word(&c.kind).to_owned())
    }

    pub(super) fn cannot_judge(&mut self, what: &str) {
        self.trace.cannot_judge.push(CannotJudge { place: self.place, what: what.to_owned() });
    }

    /// The state of a cell now.
    pub(super) fn now<C: Cell>(&self, cell: &C) -> Option<&C::State> {
        cell.timeline(&self.trace).map(|line| &line.now().state)
    }

    /// Since when a cell is as it is.
    pub(super) fn since<C: Cell>(&self, cell: &C) -> Place {
        cell.timeline(&self.trace).map_or(Place::START, |line| line.now().since)
    }

    /// Since when there is pressure in a section.
    pub(super) fn since_pressure(&self, section: SectionCell) -> Place {
        let Some(line) = section.timeline(&self.trace) else { return Place::START };
        line.entries().rev().take_while(|e| e.state.stored.pressure).last().map_or(Place::START, |e| e.since)
    }

    /// Notes unmet demands of the action in hand.
    pub(super) fn unmet(&mut self, failing: impl IntoIterator<Item = (Reason, Place)>) {
        for (reason, since) in failing {
            self.trace.unmet.push(Unmet {
                place: self.place,
                verb: self.verb.clone(),
                thing: self.thing.clone(),
                reason,
                since,
            });
        }
    }

    pub(super) fn appliance(&self) -> &ApplianceState {
        &self.trace.appliance.now().state
    }

    pub(super) fn change_appliance(&mut self, change: impl FnOnce(&mut ApplianceState)) {
        let mut state = self.appliance().clone();
        change(&mut state);
        self.trace.appliance.push(self.place, state);
    }
}

macro_rules! changers {
    ($($name:ident: $cell:ident, $state:ident in $field:ident;)*) => {
        impl Machine<'_> {$(
            /// Changes a state from here on; nothing is written if it stays as it is.
            pub(super) fn $name(&mut self, cell: super::$cell, change: impl FnOnce(&mut $state)) {
                if let Some(line) = self.trace.$field.get_mut(cell.index()) {
                    let mut state = line.now().state.clone();
                    change(&mut state);
                    if state != line.now().state {
                        line.push(self.place, state);
                    }
                }
            }
        )*}
    };
}

changers! {
    change_section: SectionCell, SectionState in sections;
    change_isolator: IsolatorCell, IsolatorState in isolators;
    change_connection: ConnectionCell, ConnectionState in connections;
    change_component: ComponentCell, ComponentState in components;
    change_temporary: TemporaryCell, TemporaryState in temporaries;
    change_setting: SettingCell, SettingState in settings;
}

fn in_service(plant: &Plant, section: SectionCell) -> SectionState {
    let empty = plant.section(section).is_some_and(|s| s.normally_empty);
    let stored = match plant.row_of(section) {
        Some(row) if !empty => row.stores,
        _ => Energies::default(),
    };
    let contents = if empty { Contents::Air } else { Contents::Medium };
    SectionState { stored, contents, proof: Proof::None, last_filled: None }
}

fn made(count: u32) -> ConnectionState {
    ConnectionState {
        made: count,
        slack: 0,
        open: 0,
        last_touched: None,
        last_opened: None,
        seals_disturbed: false,
    }
}

fn fitted() -> ComponentState {
    ComponentState { whereabouts: Whereabouts::Fitted, new: false, last_touched: None }
}

/// The appliance's own cell, for lookups in one form.
impl Machine<'_> {
    pub(super) fn is_running(&self) -> bool {
        self.now(&ApplianceCell).is_some_and(|state| state.running.is_some())
    }
}
