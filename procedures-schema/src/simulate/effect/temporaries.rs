//! Temporary items: placing and taking away.

use crate::model::Action;
use crate::simulate::machine::Machine;
use crate::simulate::unmet::Demand;
use crate::simulate::{CircuitCell, TemporaryCell, Thing};

impl Machine<'_> {
    /// Placing follows the rule for touching the connection on which the item sits.
    pub(super) fn place_item(&mut self, action: &Action) {
        for item in self.temporaries_of(action) {
            let there = self.now(&item).is_some_and(|state| state.in_place);
            self.demand(!there, Demand::PlacedTwice, Some(Thing::Temporary(item)), Vec::new());
            self.demand_touch_under(item);
            self.change(&item, |state| state.in_place = true);
            let restrained = self.trace.plant.temporary(item).and_then(|plan| plan.restrains);
            if let Some(circuit) = restrained {
                self.restrain(circuit);
            }
        }
    }

    /// Taking a cap off is opening; a bond comes off when the joint is made; a restraint when its drive is
    /// dead.
    pub(super) fn take_item(&mut self, action: &Action) {
        for item in self.temporaries_of(action) {
            let thing = Some(Thing::Temporary(item));
            let there = self.now(&item).is_some_and(|state| state.in_place);
            self.demand(there, Demand::TakenNotPlaced, thing, Vec::new());
            self.demand_taking(item);
            self.change(&item, |state| state.in_place = false);
        }
    }

    fn demand_taking(&mut self, item: TemporaryCell) {
        let Some(plan) = self.trace.plant.temporary(item).cloned() else { return };
        let thing = Some(Thing::Temporary(item));
        if let Some(bonded) = plan.bonds {
            let made = self.now(&bonded).is_some_and(crate::simulate::ConnectionState::is_made);
            self.demand(made, Demand::NoBond, thing, vec![Thing::Connection(bonded)]);
        }
        if let (Some(end), true) = (plan.on, plan.closes) {
            let open = self.now(&end).is_some_and(|state| !state.is_made());
            if open {
                self.demand_opening_end(end);
            }
        }
        if let Some(circuit) = plan.restrains {
            let sections = self.trace.plant.circuit(circuit).map(|c| c.sections.clone()).unwrap_or_default();
            for section in sections {
                if self.is_fed(section) {
                    self.demand(false, Demand::CanStart, thing, vec![Thing::Section(section)]);
                }
            }
        }
    }

    /// An open end that loses its closure: in force for a joint, not fed for a port.
    fn demand_opening_end(&mut self, end: crate::simulate::ConnectionCell) {
        let Some(plan) = self.trace.plant.connection(end) else { return };
        let (is_port, section) = (plan.port.is_some(), plan.section);
        let failing =
            section.and_then(
                |section| {
                    if is_port { self.still_fed(section, &[]) } else { self.not_in_force(section) }
                },
            );
        self.unmet(failing);
    }

    fn demand_touch_under(&mut self, item: TemporaryCell) {
        let on = self.trace.plant.temporary(item).and_then(|plan| plan.on);
        let joint = on.filter(|k| self.trace.plant.connection(*k).is_some_and(|plan| plan.port.is_none()));
        if let Some(joint) = joint {
            let failing = self.touch(joint);
            self.unmet(failing);
        }
    }

    /// What is held can no longer move.
    fn restrain(&mut self, circuit: CircuitCell) {
        let sections = self.trace.plant.circuit(circuit).map(|c| c.sections.clone()).unwrap_or_default();
        for section in sections {
            self.change(&section, |state| state.stored.motion = false);
        }
    }

    pub(in crate::simulate) fn temporaries_of(&self, action: &Action) -> Vec<TemporaryCell> {
        action.on.iter().filter_map(|id| self.trace.plant.temporary_named(id)).collect()
    }
}
