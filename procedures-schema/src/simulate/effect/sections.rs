//! Sections: releasing, proving, charging, purging.

use super::appliance::lapse;
use crate::model::{Action, Energy, Id, Means};
use crate::simulate::machine::Machine;
use crate::simulate::state::{Contents, Lapse, Proof};
use crate::simulate::{ConnectionCell, SectionCell};

impl Machine<'_> {
    pub(super) fn release(&mut self, action: &Action) {
        let sections = self.named_sections(action);
        if action.by != Some(Means::Recover) {
            let failing: Vec<_> = sections.iter().filter_map(|s| self.still_fed(*s, &sections)).collect();
            self.unmet(failing);
        }
        let place = self.place;
        let what = action.what.clone().unwrap_or(Energy::Pressure);
        for section in sections {
            self.change_section(section, |state| {
                state.stored = state.stored.without(&what);
                if action.by == Some(Means::Drain) {
                    state.contents = Contents::Air;
                }
                state.last_filled = Some(place);
            });
        }
        for id in [&action.through, &action.vent].into_iter().flatten() {
            self.open_for_release(id);
        }
    }

    /// A port that is named opens; a joint that is cracked stays slack.
    fn open_for_release(&mut self, id: &Id) {
        let Some(connection) = self.trace.plant.connection_named(id) else { return };
        let is_port = self.trace.plant.connection(connection).is_some_and(|k| k.port.is_some());
        if is_port {
            self.open_port(connection);
        } else {
            let place = self.place;
            self.change_connection(connection, |state| {
                state.slack += state.made;
                state.made = 0;
                state.seals_disturbed = true;
                state.last_touched = Some(place);
                state.last_opened = Some(place);
            });
        }
    }

    pub(in crate::simulate) fn open_port(&mut self, connection: ConnectionCell) {
        let place = self.place;
        self.change_connection(connection, |state| {
            if state.made + state.slack > 0 {
                state.open += state.made + state.slack;
                state.made = 0;
                state.slack = 0;
                state.last_touched = Some(place);
                state.last_opened = Some(place);
            }
        });
    }

    /// Demands what makes a zero reading mean something; then heat, charge and movement are gone.
    pub(super) fn prove(&mut self, action: &Action) {
        let sections = self.named_sections(action);
        let failing: Vec<_> = sections
            .iter()
            .filter_map(|s| self.not_cut_off(*s, &sections).or_else(|| self.not_released(*s)))
            .collect();
        self.unmet(failing);
        for section in self.with_sections_behind_automatic(sections) {
            self.change_section(section, |state| {
                state.stored.heat = false;
                state.stored.charge = false;
                state.stored.motion = false;
                state.proof = Proof::Proved;
            });
        }
        if let Some(port) = action.at.as_ref().and_then(|id| self.trace.plant.connection_named(id))
            && self.trace.plant.connection(port).is_some_and(|k| k.port.is_some())
        {
            self.open_port(port);
        }
    }

    /// What lies behind a shut automatic valve holds no more than what stands before it.
    fn with_sections_behind_automatic(&self, sections: Vec<SectionCell>) -> Vec<SectionCell> {
        let mut all = sections.clone();
        for section in sections {
            for joined in self.group(section) {
                let behind = self.trace.plant.section(joined).is_some_and(|s| s.behind_automatic);
                if behind && !all.contains(&joined) {
                    all.push(joined);
                }
            }
        }
        all
    }

    pub(super) fn charge(&mut self, action: &Action) {
        let place = self.place;
        let stores_pressure = |machine: &Self, section| {
            machine.trace.plant.row_of(section).is_some_and(|row| row.stores.pressure)
        };
        for section in self.named_group(action) {
            let stores = stores_pressure(self, section);
            self.change_section(section, |state| {
                state.stored.pressure = state.stored.pressure || stores;
                if state.contents == Contents::Air {
                    state.contents = Contents::Mixed;
                }
                lapse(&mut state.proof, Lapse::Filled);
                state.last_filled = Some(place);
            });
        }
        self.open_named_port(action);
    }

    pub(super) fn purge(&mut self, action: &Action) {
        let place = self.place;
        for section in self.named_group(action) {
            self.change_section(section, |state| {
                if state.contents == Contents::Mixed {
                    state.contents = Contents::Medium;
                }
                lapse(&mut state.proof, Lapse::Filled);
                state.last_filled = Some(place);
            });
        }
        self.open_named_port(action);
    }

    fn open_named_port(&mut self, action: &Action) {
        let named = action.through.as_ref().and_then(|id| self.trace.plant.connection_named(id));
        if let Some(port) = named
            && self.trace.plant.connection(port).is_some_and(|k| k.port.is_some())
        {
            self.open_port(port);
        }
    }

    /// Filling and purging reach everything that is joined to what is named.
    fn named_group(&self, action: &Action) -> Vec<SectionCell> {
        let mut all: Vec<SectionCell> =
            self.named_sections(action).into_iter().flat_map(|s| self.group(s)).collect();
        all.sort_unstable();
        all.dedup();
        all
    }

    pub(in crate::simulate) fn named_sections(&self, action: &Action) -> Vec<SectionCell> {
        action.on.iter().flat_map(|id| self.sections_of(id)).collect()
    }
}
