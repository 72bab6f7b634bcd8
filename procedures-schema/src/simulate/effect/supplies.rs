//! Isolators: closing, locking, opening again.

use super::appliance::lapse;
use crate::model::Action;
use crate::simulate::machine::Machine;
use crate::simulate::state::{Contents, Lapse};
use crate::simulate::{IsolatorCell, SectionCell, Side};

impl Machine<'_> {
    pub(super) fn isolate(&mut self, action: &Action) {
        for isolator in self.isolators_of(action) {
            self.change_isolator(isolator, |state| state.open = false);
        }
    }

    pub(super) fn lock(&mut self, action: &Action) {
        for isolator in self.isolators_of(action) {
            self.change_isolator(isolator, |state| state.locked = true);
        }
    }

    /// Opens isolators. Pressure comes from the neighbour or the supply; air that was inside mixes in.
    pub(super) fn restore(&mut self, action: &Action) {
        let isolators = self.isolators_of(action);
        for isolator in &isolators {
            self.change_isolator(*isolator, |state| {
                state.open = true;
                state.locked = false;
            });
        }
        let mut joined: Vec<SectionCell> = isolators
            .iter()
            .filter_map(|i| self.trace.plant.isolator(*i)?.between)
            .flat_map(|(a, b)| [a, b])
            .filter_map(|side| if let Side::Section(section) = side { Some(section) } else { None })
            .flat_map(|section| self.group(section))
            .collect();
        joined.sort_unstable();
        joined.dedup();
        let pressed: Vec<bool> = joined.iter().map(|section| self.gets_pressure(*section, &joined)).collect();
        for (section, pressed) in joined.into_iter().zip(pressed) {
            let stores = self.trace.plant.row_of(section).is_some_and(|row| row.stores.pressure);
            self.change_section(section, |state| {
                lapse(&mut state.proof, Lapse::Restored);
                state.stored.pressure = state.stored.pressure || (pressed && stores);
                if pressed && state.contents == Contents::Air {
                    state.contents = Contents::Mixed;
                }
            });
        }
    }

    /// Whether something of the joined sections presses into this one.
    fn gets_pressure(&self, section: SectionCell, joined: &[SectionCell]) -> bool {
        let group = self.group(section);
        let neighbours = joined.iter().filter(|s| group.contains(s));
        self.is_fed(section)
            || neighbours.into_iter().any(|s| self.now(s).is_some_and(|state| state.stored.pressure))
    }

    pub(in crate::simulate) fn isolators_of(&self, action: &Action) -> Vec<IsolatorCell> {
        action.on.iter().filter_map(|id| self.trace.plant.isolator_named(id)).collect()
    }
}
