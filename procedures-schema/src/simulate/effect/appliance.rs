//! The appliance: shutting down, the end of a way.

use crate::model::{Action, Mode};
use crate::simulate::machine::Machine;
use crate::simulate::state::{Lapse, Proof};
use crate::simulate::unmet::Demand;
use crate::simulate::{ApplianceCell, SectionCell, Thing};

impl Machine<'_> {
    pub(super) fn shut_down(&mut self) {
        let second = self.second();
        self.change(&ApplianceCell, |state| {
            if state.running.take().is_some() {
                state.since_second = second;
            }
        });
    }

    /// A guarded section that lies bare is dead and locked.
    pub(super) fn demand_not_bare(&mut self, section: SectionCell) {
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
