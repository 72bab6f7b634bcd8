//! Charging and purging.

use super::Part;
use super::appliance::lapse;
use crate::model::{Action, TestKind};
use crate::simulate::kinds::Hazard;
use crate::simulate::machine::Machine;
use crate::simulate::state::{Contents, Lapse};
use crate::simulate::test_kinds::Due;
use crate::simulate::unmet::Demand;
use crate::simulate::{ConnectionCell, SectionCell, TestDemand, Thing};

impl Machine<'_> {
    pub(super) fn charge(&mut self, action: &Action, part: Part) {
        match part {
            Part::Whole => self.open_named_port(action),
            Part::Section(section) if self.reaches(action, section) => self.charge_section(action, section),
            Part::Section(_) | Part::Thing(_) => {}
        }
    }

    fn charge_section(&mut self, action: &Action, section: SectionCell) {
        let Some(row) = self.trace.plant.row_of(section) else { return };
        let thing = Some(Thing::Section(section));
        let used = [&action.through, &action.vent].into_iter().flatten();
        let used: Vec<ConnectionCell> = used.filter_map(|id| self.trace.plant.connection_named(id)).collect();
        for end in self.open_ends(section, true).into_iter().filter(|end| !used.contains(end)) {
            self.demand(false, Demand::RestoredOpen, thing, vec![Thing::Connection(end)]);
        }
        let contents = self.now(&section).map_or(Contents::Medium, |state| state.contents);
        let allowed = row.charge_from.is_empty() || row.charge_from.contains(&contents);
        self.demand(allowed, Demand::WrongContents, thing, Vec::new());
        let inert = action.with.as_deref().is_some_and(is_inert);
        if !inert {
            self.demand_tested(section, Due::BeforeCharge);
        }
        let place = self.place;
        self.change(&section, |state| {
            state.stored.pressure = state.stored.pressure || row.stores.pressure;
            state.contents = match state.contents {
                _ if inert => Contents::Inert,
                // What is charged by weight is charged from vacuum; what is filled in keeps what was inside.
                Contents::Medium | Contents::Vacuum => Contents::Medium,
                _ if row.charge_from.is_empty() => Contents::Mixed,
                _ => Contents::Medium,
            };
            if row.only_off {
                state.contents = Contents::Medium;
            }
            lapse(&mut state.proof, Lapse::Filled);
            state.last_filled = Some(place);
        });
    }

    pub(super) fn purge(&mut self, action: &Action, part: Part) {
        match part {
            Part::Whole => self.open_named_port(action),
            Part::Section(section) if self.reaches(action, section) => self.purge_section(action, section),
            Part::Section(_) | Part::Thing(_) => {}
        }
    }

    fn purge_section(&mut self, action: &Action, section: SectionCell) {
        let Some(row) = self.trace.plant.row_of(section) else { return };
        let thing = Some(Thing::Section(section));
        let inert = action.with.as_deref().is_some_and(is_inert);
        if row.hazard == Hazard::Gas && !inert {
            self.demand_gas_purge(section);
        } else if !inert {
            let contents = self.now(&section).map_or(Contents::Medium, |state| state.contents);
            self.demand(contents != Contents::Air, Demand::NotFilled, thing, Vec::new());
        }
        let place = self.place;
        self.change(&section, |state| {
            state.contents = match state.contents {
                _ if inert => Contents::Inert,
                Contents::Mixed => Contents::Medium,
                // What is air throughout stays air: there is nothing to drive it out with.
                other => other,
            };
            lapse(&mut state.proof, Lapse::Filled);
            state.last_filled = Some(place);
        });
    }

    /// Gas is let through only where it is on, and after the joints that were touched are tight.
    fn demand_gas_purge(&mut self, section: SectionCell) {
        let fed = self.is_fed(section);
        self.demand(fed, Demand::PurgeDead, Some(Thing::Section(section)), Vec::new());
        for (joint, touched, lacking) in self.lacking_in(section) {
            if self.trace.plant.connection(joint).is_some_and(|plan| plan.port.is_some()) {
                continue;
            }
            let is_tightness = |any_of: &TestDemand| any_of.iter().all(|w| w.kind == TestKind::Tightness);
            for any_of in lacking.into_iter().filter(is_tightness) {
                self.unmet_test(Demand::PurgedBeforeTested, Thing::Connection(joint), any_of, touched);
            }
        }
    }

    /// Whether filling or purging reaches a section: it is joined to one that is named.
    fn reaches(&self, action: &Action, section: SectionCell) -> bool {
        let named = self.named_sections(action);
        named.contains(&section) || self.group(section).iter().any(|joined| named.contains(joined))
    }

    fn open_named_port(&mut self, action: &Action) {
        let named = action.through.as_ref().and_then(|id| self.trace.plant.connection_named(id));
        if let Some(port) = named
            && self.trace.plant.connection(port).is_some_and(|k| k.port.is_some())
        {
            self.open_port(port);
        }
    }
}

/// Whether a gas is inert: nitrogen in the words of the trade.
fn is_inert(with: &str) -> bool {
    let with = with.to_lowercase();
    ["nitrogen", "inert", "ofn", "n2"].iter().any(|word| with.contains(word))
}
