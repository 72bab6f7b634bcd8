//! Isolators: closing, locking, opening again.

use super::Part;
use super::appliance::lapse;
use crate::model::{Action, Handle};
use crate::simulate::machine::Machine;
use crate::simulate::state::{Contents, Lapse};
use crate::simulate::test_kinds::Due;
use crate::simulate::unmet::Demand;
use crate::simulate::{ComponentCell, Few, IsolatorCell, SectionCell, Side, Thing};

impl Machine<'_> {
    pub(super) fn isolate(&mut self, action: &Action) {
        for isolator in self.isolators_of(action) {
            let thing = Some(Thing::Isolator(isolator));
            let handle = self.trace.plant.isolator(isolator).map(|plan| plan.handle.clone());
            let by_hand = !matches!(handle, Some(Handle::None | Handle::Automatic | Handle::Relief) | None);
            self.demand(by_hand, Demand::NoHandle, thing, Vec::new());
            let first = self
                .sides(isolator)
                .iter()
                .any(|section| self.trace.plant.row_of(*section).is_some_and(|row| row.shut_down_first));
            let running = first && self.is_running();
            self.demand(!running, Demand::NotShutDown, thing, Vec::new());
            self.change(&isolator, |state| state.open = false);
        }
    }

    pub(super) fn lock(&mut self, action: &Action) {
        for isolator in self.isolators_of(action) {
            let thing = Some(Thing::Isolator(isolator));
            let open = self.now(&isolator).is_some_and(|state| state.open);
            self.demand(!open, Demand::LockedOpen, thing, Vec::new());
            let lockable = self.trace.plant.isolator(isolator).and_then(|plan| plan.lockable);
            self.demand(lockable != Some(false), Demand::CannotLock, thing, Vec::new());
            self.change(&isolator, |state| state.locked = true);
        }
    }

    /// Opens isolators. Pressure comes from the neighbour or the supply; air that was inside mixes in.
    pub(super) fn restore(&mut self, action: &Action, part: Part) {
        let isolators = self.isolators_of(action);
        match part {
            Part::Whole => {
                for isolator in isolators {
                    let open = self.now(&isolator).is_some_and(|state| state.open);
                    self.demand(!open, Demand::AlreadyOpen, Some(Thing::Isolator(isolator)), Vec::new());
                    self.change(&isolator, |state| {
                        state.open = true;
                        state.locked = false;
                    });
                }
            }
            Part::Section(section) => self.restore_section(action, section, &isolators),
            Part::Thing(_) => {}
        }
    }

    fn restore_section(&mut self, action: &Action, section: SectionCell, isolators: &[IsolatorCell]) {
        let opened: Few<SectionCell> = isolators.iter().flat_map(|i| self.sides(*i)).collect();
        let group = self.group(section);
        let fed_through = self.fed_through(section, &opened);
        if !group.iter().any(|s| opened.contains(s)) && !fed_through {
            return;
        }
        let fed = self.is_fed(section);
        let pressed = fed || group.iter().any(|s| self.now(s).is_some_and(|state| state.stored.pressure));
        if pressed {
            self.demand_whole(action, section);
        }
        let Some(row) = self.trace.plant.row_of(section) else { return };
        self.change(&section, |state| {
            lapse(&mut state.proof, Lapse::Restored);
            state.stored.pressure = state.stored.pressure || (pressed && row.stores.pressure);
            state.stored.heat = state.stored.heat || (pressed && row.heat_with_supply);
            state.stored.charge = state.stored.charge || (fed && row.stores.charge);
            if pressed && state.contents == Contents::Air {
                state.contents = Contents::Mixed;
            }
        });
    }

    /// Whether one of these sections belongs to a circuit that feeds this section, at once or by way of others.
    fn fed_through(&self, section: SectionCell, opened: &[SectionCell]) -> bool {
        let Some(circuit) = self.trace.plant.circuit_of(section) else { return false };
        let mut feeders = circuit.fed_by.clone();
        let mut next = 0;
        while let Some(feeder) = feeders.get(next).and_then(|feeder| self.trace.plant.circuit(*feeder)) {
            if feeder.sections.iter().any(|s| opened.contains(s)) {
                return self.is_fed(section);
            }
            let beyond: Vec<_> = feeder.fed_by.iter().copied().filter(|f| !feeders.contains(f)).collect();
            feeders.extend(beyond);
            next += 1;
        }
        false
    }

    /// What comes under energy is shut, its due tests are passed, its guards are on.
    fn demand_whole(&mut self, action: &Action, section: SectionCell) {
        let Some(row) = self.trace.plant.row_of(section) else { return };
        let thing = Some(Thing::Section(section));
        if !row.guarded && !row.only_off {
            for end in self.open_ends(section, true) {
                self.demand(false, Demand::RestoredOpen, thing, vec![Thing::Connection(end)]);
            }
        }
        self.demand_tested(section, Due::BeforeRestore);
        if row.guarded && !action.live {
            self.demand_joined(section);
            let off = self.guards_off(section);
            self.demand(off.is_empty(), Demand::RestoredGuardOff, thing, off);
        }
        if row.guarded {
            self.demand_no_dry_element(section);
        }
    }

    /// Guards of a section that are off or not held.
    fn guards_off(&self, section: SectionCell) -> Vec<Thing> {
        let plant = &self.trace.plant;
        let mut guards: Vec<ComponentCell> = plant
            .connections()
            .filter(|(_, k)| k.section == Some(section))
            .flat_map(|(_, k)| k.reach.iter().copied())
            .collect();
        guards.sort_unstable();
        guards.dedup();
        let is_on = |guard: &ComponentCell| {
            let held = plant.component(*guard).is_none_or(|plan| {
                let fixings = plan.connections.iter().filter(|k| self.is_plain_fixing(**k));
                fixings.into_iter().all(|k| self.now(k).is_some_and(super::super::ConnectionState::is_made))
            });
            self.is_fitted(*guard) && held
        };
        guards.iter().filter(|guard| !is_on(guard)).map(|guard| Thing::Component(*guard)).collect()
    }

    fn is_plain_fixing(&self, connection: crate::simulate::ConnectionCell) -> bool {
        self.trace.plant.connection(connection).is_some_and(|plan| plan.port.is_none())
    }

    /// A part that starts by itself has its wet side full and everything that a start demands.
    fn demand_no_dry_element(&mut self, section: SectionCell) {
        let plant = &self.trace.plant;
        let mut wet: Vec<(ComponentCell, SectionCell)> = Vec::new();
        for (component, plan) in plant.components().filter(|(_, plan)| plan.starts_itself) {
            let sections = || plan.connections.iter().filter_map(|k| plant.connection(*k)?.section);
            if sections().any(|s| s == section) {
                let others = sections().filter(|s| plant.row_of(*s).is_some_and(|row| !row.guarded));
                wet.extend(others.map(|s| (component, s)));
            }
        }
        for (component, section) in wet {
            let contents = self.now(&section).map_or(Contents::Medium, |state| state.contents);
            let full = contents != Contents::Air;
            let others = vec![Thing::Section(section)];
            self.demand(full, Demand::EnergisedDry, Some(Thing::Component(component)), others);
            if full {
                self.demand_ready(section);
            }
        }
    }

    /// The sections on both sides of an isolator.
    fn sides(&self, isolator: IsolatorCell) -> Few<SectionCell> {
        let between = self.trace.plant.isolator(isolator).and_then(|plan| plan.between);
        between
            .iter()
            .flat_map(|(a, b)| [a, b])
            .filter_map(|side| if let Side::Section(section) = side { Some(*section) } else { None })
            .collect()
    }

    pub(in crate::simulate) fn isolators_of(&self, action: &Action) -> Few<IsolatorCell> {
        action.on.iter().filter_map(|id| self.trace.plant.isolator_named(id)).collect()
    }
}
