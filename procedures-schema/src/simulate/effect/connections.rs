//! Connections: slackening and undoing, and what opens with them.

use crate::model::{Action, Family, Port};
use crate::simulate::machine::Machine;
use crate::simulate::state::Whereabouts;
use crate::simulate::unmet::Demand;
use crate::simulate::{ConnectionCell, Few, Hazard, Thing};
use std::sync::Arc;

impl Machine<'_> {
    pub(super) fn slacken(&mut self, action: &Action) {
        for connection in self.connections_of(action) {
            let made = self.now(&connection).map_or(0, |state| state.made);
            let enough = action.count.unwrap_or(1) <= made;
            self.demand(enough, Demand::UndoneTwice, Some(Thing::Connection(connection)), Vec::new());
            self.demand_opening(action, connection);
            let place = self.place;
            self.change(&connection, |state| {
                let n = action.count.unwrap_or(state.made).min(state.made);
                state.made -= n;
                state.slack += n;
                state.seals_disturbed = true;
                state.last_touched = Some(place);
                state.last_opened = Some(place);
            });
        }
    }

    /// Takes slack fasteners first, then made ones.
    pub(super) fn undo(&mut self, action: &Action) {
        for connection in self.connections_of(action) {
            let left = self.now(&connection).map_or(0, |state| state.made + state.slack);
            let enough = action.count.unwrap_or(1) <= left;
            self.demand(enough, Demand::UndoneTwice, Some(Thing::Connection(connection)), Vec::new());
            self.demand_opening(action, connection);
            self.demand_before_parting(action, connection);
            let place = self.place;
            self.change(&connection, |state| {
                let mut left = action.count.unwrap_or(state.made + state.slack);
                let slack = left.min(state.slack);
                left -= slack;
                let made = left.min(state.made);
                state.slack -= slack;
                state.made -= made;
                state.open += slack + made;
                state.most_open = state.most_open.max(state.open);
                state.seals_disturbed = true;
                state.last_touched = Some(place);
                state.last_opened = Some(place);
            });
            self.let_air_in(connection);
            self.let_parts_out(connection);
        }
    }

    /// What must be so before a connection opens, however little.
    fn demand_opening(&mut self, action: &Action, connection: ConnectionCell) {
        let plant = Arc::clone(&self.trace.plant);
        let Some(plan) = plant.connection(connection) else { return };
        self.demand_reach(&plan.reach, Thing::Connection(connection));
        match &plan.port {
            None => {
                let failing = self.touch(connection);
                self.unmet(failing);
            }
            Some(Port::Drain | Port::Vent | Port::Fill) => {
                self.demand_shut_off(connection);
                let running = self.is_running();
                self.demand(!running, Demand::NotShutDown, Some(Thing::Connection(connection)), Vec::new());
            }
            Some(Port::Test) if !action.live => self.demand_shut_off(connection),
            Some(Port::Test | Port::Outlet | Port::Sample | Port::Service | Port::Other(_)) => {}
        }
    }

    fn demand_shut_off(&mut self, connection: ConnectionCell) {
        let section = self.trace.plant.connection(connection).and_then(|plan| plan.section);
        let failing = section.and_then(|section| self.still_fed(section, &[]));
        self.unmet(failing);
    }

    /// Bond, marks, and no flame near what burns.
    fn demand_before_parting(&mut self, action: &Action, connection: ConnectionCell) {
        let Some(plan) = self.trace.plant.connection(connection) else { return };
        let (bond, looks_like) = (plan.bond, plan.looks_like.clone());
        let thing = Some(Thing::Connection(connection));
        if bond {
            let plant = &self.trace.plant;
            let bonded = plant
                .temporaries()
                .any(|(cell, t)| t.bonds == Some(connection) && self.now(&cell).is_some_and(|s| s.in_place));
            self.demand(bonded, Demand::NoBond, thing, Vec::new());
        }
        self.demand_no_flame(action, connection);
        if !looks_like.is_empty() {
            let marked = self.now(&connection).is_some_and(|state| state.marked);
            let others = looks_like.into_iter().map(Thing::Connection).collect();
            self.demand(marked, Demand::Unmarked, thing, others);
        }
    }

    /// A flame is used only while no flammable section stands open.
    pub(super) fn demand_no_flame(&mut self, action: &Action, connection: ConnectionCell) {
        let flame = action.with.as_deref().is_some_and(is_flame);
        if !flame {
            return;
        }
        let sections: Vec<_> = self
            .trace
            .plant
            .sections()
            .filter(|(_, s)| self.trace.plant.circuit(s.circuit).is_some_and(|c| c.flammable))
            .map(|(cell, _)| cell)
            .collect();
        let open: Vec<Thing> = sections
            .into_iter()
            .filter(|s| self.now(s).is_some_and(|state| state.contents != crate::simulate::Contents::Inert))
            .flat_map(|s| self.open_ends(s, false))
            .filter(|end| *end != connection)
            .map(Thing::Connection)
            .collect();
        self.demand(open.is_empty(), Demand::IgnitionNearOpen, Some(Thing::Connection(connection)), open);
    }

    fn let_air_in(&mut self, connection: ConnectionCell) {
        let Some(plan) = self.trace.plant.connection(connection) else { return };
        if plan.port.is_some() || plan.family != Family::Joint {
            return;
        }
        let Some(section) = plan.section else { return };
        let Some(row) = self.trace.plant.row_of(section) else { return };
        if row.hazard != Hazard::Isolation {
            self.change(&section, |state| state.contents = row.opened_holds);
        }
    }

    fn let_parts_out(&mut self, connection: ConnectionCell) {
        let place = self.place;
        let parts = self.trace.plant.connection(connection).map(|k| k.holds.clone()).unwrap_or_default();
        for part in parts {
            self.change(&part, |state| {
                state.whereabouts = Whereabouts::Off;
                state.last_touched = Some(place);
            });
        }
    }

    /// A photograph or a mark tells connections apart that look alike.
    pub(super) fn photograph(&mut self, action: &Action) {
        for connection in self.connections_of(action) {
            self.change(&connection, |state| state.marked = true);
        }
    }

    pub(in crate::simulate) fn connections_of(&self, action: &Action) -> Few<ConnectionCell> {
        action.on.iter().filter_map(|id| self.trace.plant.connection_named(id)).collect()
    }
}

/// Whether a method of parting or joining uses a flame.
fn is_flame(method: &str) -> bool {
    let method = method.to_lowercase();
    ["solder", "braz", "flame", "torch", "weld"].iter().any(|word| method.contains(word))
}
