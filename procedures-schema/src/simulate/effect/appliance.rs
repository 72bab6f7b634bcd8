//! The appliance: shutting down, starting, waiting, the end; and its settings.

use crate::model::{Action, Mode};
use crate::simulate::machine::Machine;
use crate::simulate::state::{Contents, Energies, Lapse, Proof};
use crate::simulate::{SectionCell, SettingCell};
use crate::units::{Unit, convert};

impl Machine<'_> {
    pub(super) fn shut_down(&mut self) {
        self.change_appliance(|state| state.running = None);
    }

    /// Running brings pressure and heat back to everything that is full and not cut off.
    pub(super) fn start(&mut self, action: &Action) {
        let mode = action.mode.clone().unwrap_or(Mode::Heat);
        self.change_appliance(|state| state.running = Some(mode));
        let sections: Vec<SectionCell> = self.trace.plant.sections().map(|(s, _)| s).collect();
        for section in sections {
            let stores = self.trace.plant.row_of(section).map_or(Energies::default(), |row| row.stores);
            let worked = self.is_fed(section) || self.now(&section).is_some_and(|s| s.stored.pressure);
            if worked {
                self.change_section(section, |state| {
                    if state.contents != Contents::Air {
                        state.stored = state.stored.with(stores);
                    }
                    lapse(&mut state.proof, Lapse::Started);
                });
            }
        }
    }

    pub(super) fn wait(&mut self, action: &Action) {
        let minutes = action
            .duration
            .as_ref()
            .and_then(|d| convert(d.value.value(), &d.unit, &Unit::Minute).ok())
            .map_or(0, whole_minutes);
        self.change_appliance(|state| state.minutes = state.minutes.saturating_add(minutes));
        if action.unattended {
            let sections: Vec<SectionCell> = self.trace.plant.sections().map(|(s, _)| s).collect();
            for section in sections {
                self.change_section(section, |state| lapse(&mut state.proof, Lapse::LeftAlone));
            }
        }
    }

    pub(super) fn finish(&mut self, action: &Action) {
        if action.mode.as_ref().is_some_and(|mode| *mode != Mode::InService) {
            self.cannot_judge("a job that ends left safe");
        }
    }

    pub(super) fn record_setting(&mut self, action: &Action) {
        let place = self.place;
        for setting in self.settings_of(action) {
            self.change_setting(setting, |state| state.recorded = Some(place));
        }
    }

    pub(super) fn set_setting(&mut self, action: &Action) {
        let place = self.place;
        for setting in self.settings_of(action) {
            self.change_setting(setting, |state| state.last_set = Some(place));
        }
    }

    fn settings_of(&self, action: &Action) -> Vec<SettingCell> {
        action.on.iter().filter_map(|id| self.trace.plant.setting_named(id)).collect()
    }
}

/// A proof that held holds no longer.
pub(super) fn lapse(proof: &mut Proof, why: Lapse) {
    if *proof == Proof::Proved {
        *proof = Proof::Lapsed(why);
    }
}

/// Minutes, rounded up; beyond a year it makes no difference.
fn whole_minutes(minutes: f64) -> u32 {
    const YEAR: f64 = 525_600.0;
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "bounded just here")]
    let whole = minutes.ceil().clamp(0.0, YEAR) as u32;
    whole
}
