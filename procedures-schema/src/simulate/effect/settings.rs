//! Settings: recording and setting.

use crate::model::Action;
use crate::simulate::machine::Machine;
use crate::simulate::unmet::Demand;
use crate::simulate::{SettingCell, Thing};

impl Machine<'_> {
    pub(super) fn record_setting(&mut self, action: &Action) {
        let place = self.place;
        for setting in self.settings_of(action) {
            self.demand_readable(setting);
            let lost = self.now(&setting).is_some_and(|state| state.lost);
            self.demand(!lost, Demand::WrongState, Some(Thing::Setting(setting)), Vec::new());
            self.change(&setting, |state| state.recorded = Some(place));
        }
    }

    /// Putting a setting back as it was found wants it recorded before.
    pub(super) fn set_setting(&mut self, action: &Action) {
        let place = self.place;
        let as_found = action.to.as_deref().is_some_and(|to| to.replace('-', " ") == "as found");
        for setting in self.settings_of(action) {
            self.demand_readable(setting);
            let recorded = self.now(&setting).is_some_and(|state| state.recorded.is_some());
            let thing = Some(Thing::Setting(setting));
            self.demand(!as_found || recorded, Demand::SettingNotRecorded, thing, Vec::new());
            self.change(&setting, |state| {
                state.last_set = Some(place);
                state.lost = false;
                state.changed = !as_found;
            });
        }
    }

    /// Some settings show only while their circuit is live.
    fn demand_readable(&mut self, setting: SettingCell) {
        let plant = &self.trace.plant;
        let circuit = plant
            .settings()
            .find(|(cell, _)| *cell == setting)
            .and_then(|(_, plan)| plan.readable_when)
            .and_then(|circuit| plant.circuit(circuit));
        let sections = circuit.map(|circuit| circuit.sections.clone()).unwrap_or_default();
        let live = sections.is_empty() || sections.iter().any(|section| self.is_fed(*section));
        self.demand(live, Demand::WrongState, Some(Thing::Setting(setting)), Vec::new());
    }

    pub(in crate::simulate) fn settings_of(&self, action: &Action) -> Vec<SettingCell> {
        action.on.iter().filter_map(|id| self.trace.plant.setting_named(id)).collect()
    }
}
