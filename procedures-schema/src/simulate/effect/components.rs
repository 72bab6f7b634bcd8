//! Components: removing, moving aside, fitting, discarding, cleaning and inspecting.

use crate::model::{Action, Renewal};
use crate::simulate::ComponentCell;
use crate::simulate::machine::Machine;
use crate::simulate::state::Whereabouts;

impl Machine<'_> {
    pub(super) fn remove(&mut self, action: &Action) {
        self.take_off(action, Whereabouts::Off);
    }

    pub(super) fn move_aside(&mut self, action: &Action) {
        self.take_off(action, Whereabouts::Aside);
    }

    pub(super) fn discard(&mut self, action: &Action) {
        self.take_off(action, Whereabouts::Discarded);
    }

    fn take_off(&mut self, action: &Action, to: Whereabouts) {
        for component in self.components_of(action) {
            let failing = self.hands(&[component]);
            self.unmet(failing);
            self.whereabouts(component, to, false);
            for carried in self.carried_by(component) {
                if self.now(&carried).is_some_and(|state| state.whereabouts == Whereabouts::Fitted) {
                    self.whereabouts(carried, to, false);
                }
            }
        }
    }

    /// Carried parts come on with their carrier if it is the one that came off.
    pub(super) fn fit(&mut self, action: &Action) {
        let new = action.part == Some(Renewal::New);
        for component in self.components_of(action) {
            let failing = self.hands(&[component]);
            self.unmet(failing);
            let off_together = self.since(&component);
            self.whereabouts(component, Whereabouts::Fitted, new);
            for carried in self.carried_by(component) {
                if !new && self.since(&carried) == off_together {
                    self.whereabouts(carried, Whereabouts::Fitted, false);
                }
            }
        }
    }

    fn whereabouts(&mut self, component: ComponentCell, to: Whereabouts, new: bool) {
        let place = self.place;
        self.change_component(component, |state| {
            state.whereabouts = to;
            state.new = state.new || new;
            state.last_touched = Some(place);
        });
    }

    fn carried_by(&self, component: ComponentCell) -> Vec<ComponentCell> {
        self.trace.plant.component(component).map(|c| c.carries.clone()).unwrap_or_default()
    }

    /// Cleaning and inspecting put the hands on a thing and change nothing.
    pub(super) fn handle(&mut self, action: &Action) {
        let components = self.components_of(action);
        let failing = self.hands(&components);
        self.unmet(failing);
    }

    pub(in crate::simulate) fn components_of(&self, action: &Action) -> Vec<ComponentCell> {
        action.on.iter().filter_map(|id| self.trace.plant.component_named(id)).collect()
    }
}
