//! Making and tightening connections, and the seals that go in.

use crate::model::{Action, Grouping, Renewal, SealPolicy};
use crate::simulate::machine::Machine;
use crate::simulate::plant::ConnectionPlan;
use crate::simulate::state::{ConnectionState, Contents, Whereabouts};
use crate::simulate::unmet::{Demand, Reason};
use crate::simulate::{ConnectionCell, Place, SealCell, Thing};
use std::sync::Arc;

impl Machine<'_> {
    pub(super) fn make(&mut self, action: &Action) {
        for connection in self.connections_of(action) {
            self.demand_making(action, connection);
            self.demand_seals(action, connection);
            let place = self.place;
            let slack_only = action.to.as_deref() == Some("slack");
            self.change(&connection, |state| {
                let mut left = action.count.unwrap_or(state.open + state.slack);
                let open = left.min(state.open);
                left -= open;
                state.open -= open;
                if slack_only {
                    state.slack += open;
                } else {
                    let slack = left.min(state.slack);
                    state.slack -= slack;
                    state.made += open + slack;
                }
                state.last_touched = Some(place);
                state.tightened_again = false;
                if state.is_made() {
                    state.seals_disturbed = false;
                    state.most_open = 0;
                }
            });
            if action.seal == Some(Renewal::New) {
                let plant = Arc::clone(&self.trace.plant);
                for (seal, _) in plant.connection(connection).into_iter().flat_map(|plan| &plan.seals) {
                    self.change(seal, |state| state.renewed = Some(place));
                }
            }
        }
    }

    fn demand_making(&mut self, action: &Action, connection: ConnectionCell) {
        let plant = Arc::clone(&self.trace.plant);
        let Some(plan) = plant.connection(connection) else { return };
        let thing = Some(Thing::Connection(connection));
        let apart = self.now(&connection).map_or(0, |state| state.open + state.slack);
        self.demand(apart > 0, Demand::MadeNotOpened, thing, Vec::new());
        let fits = action.count.unwrap_or(0) <= apart || apart == 0;
        self.demand(fits, Demand::Counts, thing, Vec::new());
        self.demand_reach(&plan.reach, Thing::Connection(connection));
        let blank = self.closing_item(connection).filter(|item| {
            // A gauge on a port comes off as the port is shut.
            !self.trace.plant.temporary(*item).is_some_and(|t| t.gauge && plan.port.is_some())
        });
        let others: Vec<Thing> = blank.into_iter().map(Thing::Temporary).collect();
        self.demand(others.is_empty(), Demand::BlankInside, thing, others);
        let loose = plan.holds.iter().filter(|part| !self.is_fitted(**part));
        let loose: Vec<Thing> = loose.map(|part| Thing::Component(*part)).collect();
        self.demand(loose.is_empty(), Demand::LoosePartLeft, thing, loose);
        if !plan.flexible {
            self.demand_both_sides(connection, &plan.joins);
        }
        if plan.port.is_none() {
            let failing = self.touch(connection);
            self.unmet(failing);
        }
        self.demand_no_flame(action, connection);
        self.demand_inert_flow(action, connection);
    }

    /// A rigid connection joins parts that are both in place, or both on the bench.
    fn demand_both_sides(&mut self, connection: ConnectionCell, joins: &[crate::simulate::ComponentCell]) {
        let away = |part: &&crate::simulate::ComponentCell| {
            self.now(*part).is_some_and(|state| state.whereabouts != Whereabouts::Fitted)
        };
        let missing: Vec<Thing> = joins.iter().filter(away).map(|part| Thing::Component(*part)).collect();
        let on_the_bench = joins.len() > 1 && missing.len() == joins.len();
        let whole = missing.is_empty() || on_the_bench;
        self.demand(whole, Demand::MadeToNothing, Some(Thing::Connection(connection)), missing);
    }

    /// Brazing a refrigerant joint wants inert gas inside, and flowing.
    fn demand_inert_flow(&mut self, action: &Action, connection: ConnectionCell) {
        let brazed = action.with.as_deref().is_some_and(|method| method.contains("braz"));
        let section = self.trace.plant.connection(connection).and_then(|plan| plan.section);
        let Some(section) = section.filter(|_| brazed) else { return };
        let refrigerant = self.trace.plant.row_of(section).is_some_and(|row| !row.charge_from.is_empty());
        if !refrigerant {
            return;
        }
        let inert = self.now(&section).is_some_and(|state| state.contents == Contents::Inert);
        let plant = &self.trace.plant;
        let flows = plant
            .temporaries()
            .any(|(cell, plan)| plan.flows && self.now(&cell).is_some_and(|state| state.in_place));
        self.demand(inert && flows, Demand::NoInertFlow, Some(Thing::Connection(connection)), Vec::new());
    }

    /// Seals that were disturbed go in by their policy; a new one only into a joint that was open.
    fn demand_seals(&mut self, action: &Action, connection: ConnectionCell) {
        let plant = Arc::clone(&self.trace.plant);
        let Some(plan) = plant.connection(connection) else { return };
        let Some(state) = self.now(&connection).cloned() else { return };
        let thing = Some(Thing::Connection(connection));
        for (seal, policy) in &plan.seals {
            if action.seal == Some(Renewal::New) {
                if !was_opened(plan, &state, action) {
                    self.demand(false, Demand::SealRenewedUnopened, thing, vec![Thing::Seal(*seal)]);
                }
            } else if state.seals_disturbed {
                self.demand_old_seal(connection, *seal, policy, &state);
            }
        }
    }

    fn demand_old_seal(
        &mut self,
        connection: ConnectionCell,
        seal: SealCell,
        policy: &SealPolicy,
        state: &ConnectionState,
    ) {
        let thing = Some(Thing::Connection(connection));
        let others = vec![Thing::Seal(seal)];
        match policy {
            SealPolicy::AlwaysRenew => {
                let since = self.since(&connection);
                self.unmet([(Reason::SealNotRenewed { connection, seal: seal.index() }, since)]);
            }
            SealPolicy::RenewUnlessSound => {
                let known = self.now(&seal).cloned();
                let opened = state.last_opened.unwrap_or(Place::START);
                let looked = known.as_ref().and_then(|seal| seal.inspected).is_some_and(|at| at >= opened);
                self.demand(looked, Demand::SealReusedUninspected, thing, others.clone());
                let sound = known.filter(|_| looked).and_then(|seal| seal.question);
                let sound = sound.is_none_or(|question| self.is_first_answer(question));
                self.demand(sound, Demand::SealReusedUnsound, thing, others);
            }
            SealPolicy::NoneByDesign | SealPolicy::Other(_) => {}
        }
    }

    pub(super) fn tighten(&mut self, action: &Action) {
        for connection in self.connections_of(action) {
            let thing = Some(Thing::Connection(connection));
            let open = self.now(&connection).map_or(0, |state| state.open);
            self.demand(open == 0, Demand::TightenedOpen, thing, Vec::new());
            let plant = Arc::clone(&self.trace.plant);
            let Some(plan) = plant.connection(connection) else { continue };
            let failing = self.hands(&plan.joins);
            self.unmet(failing);
            let off =
                plan.section.filter(|s| self.trace.plant.row_of(*s).is_some_and(|row| row.tightened_off));
            let failing = off.and_then(|section| self.still_fed(section, &[]));
            self.unmet(failing);
            let place = self.place;
            self.change(&connection, |state| {
                state.tightened_again = state.is_made();
                let n = action.count.unwrap_or(state.slack).min(state.slack);
                state.made += n;
                state.slack -= n;
                state.last_touched = Some(place);
            });
        }
    }
}

/// Fasteners that belong together open the joint when all are open at once; like joints, one by one.
fn was_opened(plan: &ConnectionPlan, state: &ConnectionState, action: &Action) -> bool {
    let together = plan.grouping == Grouping::Together;
    let needed = if together { state.count() } else { action.count.unwrap_or(1) };
    state.most_open >= needed
}
