//! The appliance: shutting down, waiting, the end of a way.

use super::Part;
use crate::model::{Action, Mode};
use crate::simulate::machine::Machine;
use crate::simulate::state::{Lapse, Proof};
use crate::simulate::unmet::Demand;
use crate::simulate::{ApplianceCell, ClockCell, SectionCell, Thing};
use crate::units::{Unit, convert};

impl Machine<'_> {
    pub(super) fn shut_down(&mut self) {
        let minute = self.minute();
        self.change(&ApplianceCell, |state| {
            state.running = None;
            state.since_minute = minute;
        });
    }

    /// Leaving is waiting with nobody there: proofs lapse, and nothing may stand open or bare.
    pub(super) fn wait(&mut self, action: &Action, part: Part) {
        match part {
            Part::Whole => {
                let minutes = action
                    .duration
                    .as_ref()
                    .and_then(|d| convert(d.value.value(), &d.unit, &Unit::Minute).ok())
                    .map_or(0, whole_minutes);
                self.change(&ClockCell, |clock| *clock = clock.saturating_add(minutes));
            }
            Part::Section(section) => {
                self.demand_left_alone(section);
                self.change(&section, |state| lapse(&mut state.proof, Lapse::LeftAlone));
            }
            Part::Thing(_) => {}
        }
    }

    /// What must be so when people leave: no open end of gas, oil or refrigerant, no bare live part.
    fn demand_left_alone(&mut self, section: SectionCell) {
        let Some(circuit) = self.trace.plant.circuit_of(section) else { return };
        let escapes = circuit.flammable
            || circuit.row.is_some_and(|row| !row.open_from.is_empty() || row.tightened_off);
        if escapes {
            for end in self.open_ends(section, false) {
                let thing = Some(Thing::Section(section));
                self.demand(false, Demand::OpenEnd, thing, vec![Thing::Connection(end)]);
            }
        }
        self.demand_not_bare(section);
    }

    /// A guarded section that lies bare is dead and locked.
    fn demand_not_bare(&mut self, section: SectionCell) {
        let guarded = self.trace.plant.row_of(section).is_some_and(|row| row.guarded);
        if !guarded {
            return;
        }
        let guards: Vec<_> = self
            .trace
            .plant
            .connections()
            .filter(|(_, k)| k.section == Some(section))
            .flat_map(|(_, k)| k.reach.iter().copied())
            .collect();
        let bare: Vec<Thing> =
            guards.iter().filter(|g| !self.is_fitted(**g)).map(|g| Thing::Component(*g)).collect();
        let is_safe = bare.is_empty() || self.not_cut_off(section, &[]).is_none();
        self.demand(is_safe, Demand::LeftUnsafe, Some(Thing::Section(section)), bare);
    }

    pub(super) fn finish(&mut self, action: &Action) {
        let mode = action.mode.clone().unwrap_or(Mode::InService);
        if mode == Mode::LeftSafe {
            self.demand_left_safe();
        }
        self.change(&ApplianceCell, |state| state.ended = Some(mode));
    }

    /// A job left safe: off, every open end closed by an item that closes, bare parts locked, a notice hung.
    fn demand_left_safe(&mut self) {
        let running = self.is_running();
        self.demand(!running, Demand::LeftUnsafe, None, Vec::new());
        let sections: Vec<SectionCell> = self.trace.plant.sections().map(|(s, _)| s).collect();
        for section in sections {
            let judged = self.trace.plant.row_of(section).is_some_and(|row| !row.guarded && !row.only_off);
            for end in self.open_ends(section, false).into_iter().filter(|_| judged) {
                let thing = Some(Thing::Section(section));
                self.demand(false, Demand::OpenEnd, thing, vec![Thing::Connection(end)]);
            }
            self.demand_not_bare(section);
        }
        let items: Vec<_> =
            self.trace.plant.temporaries().filter(|(_, t)| t.notice).map(|(cell, _)| cell).collect();
        let noticed = items.iter().any(|item| self.now(item).is_some_and(|state| state.in_place));
        self.demand(noticed, Demand::NoNotice, None, Vec::new());
    }
}

/// A proof that held holds no longer.
pub(super) fn lapse(proof: &mut Proof, why: Lapse) {
    if proof.holds() {
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
