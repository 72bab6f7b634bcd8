//! Starting the appliance: everything that must be whole, full and tested before it runs.

use super::Part;
use super::appliance::lapse;
use crate::model::{Action, Mode};
use crate::simulate::kinds::{Hazard, KindRow};
use crate::simulate::machine::Machine;
use crate::simulate::state::{Contents, Lapse};
use crate::simulate::test_kinds::{Due, test_row};
use crate::simulate::unmet::{Demand, Reason};
use crate::simulate::{
    ApplianceCell, ConnectionCell, IsolatorCell, Place, SectionCell, SettingCell, TemporaryCell,
};
use crate::simulate::{TestDemand, Thing};

impl Machine<'_> {
    /// Running brings pressure and heat back to everything that is full and not cut off.
    pub(super) fn start(&mut self, action: &Action, part: Part) {
        match part {
            Part::Whole => {
                self.demand_clear_to_run();
                self.demand_powered();
                let mode = action.mode.clone().unwrap_or(Mode::Heat);
                let second = self.second();
                self.change(&ApplianceCell, |state| {
                    if state.running.as_ref() != Some(&mode) {
                        state.running = Some(mode);
                        state.since_second = second;
                    }
                });
            }
            Part::Section(section) => self.start_section(action, section),
            Part::Thing(_) => {}
        }
    }

    fn start_section(&mut self, action: &Action, section: SectionCell) {
        self.demand_ready(section);
        let Some(row) = self.trace.plant.row_of(section) else { return };
        if row.guarded && !action.live && self.is_fed(section) {
            self.demand_joined(section);
        }
        let worked = self.is_fed(section) || self.now(&section).is_some_and(|s| s.stored.pressure);
        if worked || row.hangs_on_running {
            self.change(&section, |state| {
                if state.contents != Contents::Air {
                    state.stored = state.stored.with(row.stores);
                }
                lapse(&mut state.proof, Lapse::Started);
            });
        }
    }

    /// What must be true of a section before the appliance starts, or a part starts by itself.
    pub(super) fn demand_ready(&mut self, section: SectionCell) {
        let (Some(row), Some(plan)) = (self.trace.plant.row_of(section), self.trace.plant.section(section))
        else {
            return;
        };
        if plan.normally_empty {
            return;
        }
        let thing = Some(Thing::Section(section));
        let contents = self.now(&section).map_or(Contents::Medium, |state| state.contents);
        let ready = row.start_from.is_empty() || row.start_from.contains(&contents);
        self.demand(ready, not_ready(row), thing, Vec::new());
        if row.only_off && row.hazard == Hazard::Isolation {
            for end in self.parted(section) {
                self.demand(false, Demand::FiredCaseOpen, thing, vec![Thing::Connection(end)]);
            }
        }
        self.demand_tested(section, Due::BeforeStart);
    }

    /// Nothing lies bare on a section that comes live: each plug and terminal of it is made.
    pub(super) fn demand_joined(&mut self, section: SectionCell) {
        for end in self.parted(section) {
            let thing = Some(Thing::Section(section));
            self.demand(false, Demand::RestoredOpen, thing, vec![Thing::Connection(end)]);
        }
    }

    /// The appliance starts only if some supply that powers it reaches it. Without an isolator that is
    /// shut, nothing keeps it away.
    fn demand_powered(&mut self) {
        let plant = &self.trace.plant;
        let powering = plant.circuits().filter(|(_, circuit)| circuit.row.is_some_and(|row| row.powers));
        let powering: Vec<SectionCell> =
            powering.flat_map(|(_, circuit)| circuit.sections.iter().copied()).collect();
        if powering.iter().any(|section| self.is_fed(*section)) {
            return;
        }
        let dead = powering.into_iter().find_map(|section| Some((section, self.first_closed(section)?)));
        if let Some((section, isolator)) = dead {
            let others = vec![Thing::Isolator(isolator)];
            self.demand(false, Demand::StartedDead, Some(Thing::Section(section)), others);
        }
    }

    /// A closed isolator at a section, or at those joined to it.
    fn first_closed(&self, section: SectionCell) -> Option<IsolatorCell> {
        let plant = &self.trace.plant;
        let around = self.group(section).into_iter().filter_map(|s| plant.section(s));
        around
            .flat_map(|s| s.isolators.iter().copied())
            .find(|i| self.now(i).is_some_and(|state| !state.open))
    }

    /// Connections of a section that are not made, ports apart: joints, sealed doors, plugs, terminals.
    fn parted(&self, section: SectionCell) -> Vec<ConnectionCell> {
        let is_port = |cell: &ConnectionCell| {
            self.trace.plant.connection(*cell).is_some_and(|plan| plan.port.is_some())
        };
        self.unsettled_in(section).filter(|cell| !is_port(cell) && !self.is_closed(*cell)).collect()
    }

    /// Demands the tests of touched joints of a section that are due by now.
    pub(super) fn demand_tested(&mut self, section: SectionCell, due: Due) {
        let gas = self.trace.plant.row_of(section).is_some_and(|row| row.hazard == Hazard::Gas);
        for (joint, touched, lacking) in self.lacking_in(section) {
            for any_of in lacking.into_iter().filter(|any_of| is_due(any_of, due)) {
                let demand = if gas { Demand::FiredBeforeTested } else { Demand::TestOrder };
                self.unmet_test(demand, Thing::Connection(joint), any_of, touched);
            }
        }
        let Some(filled) = self.now(&section).and_then(|state| state.last_filled) else { return };
        let demands = self.trace.plant.demands_on(section).map(|on| on.after_filling.clone());
        for any_of in demands.unwrap_or_default().into_iter().filter(|any_of| is_due(any_of, due)) {
            if !self.has_passed(any_of, Thing::Section(section), filled) {
                self.unmet_test(Demand::TestOrder, Thing::Section(section), any_of, filled);
            }
        }
    }

    /// A test that comes too late is missing for the same cause as one that never comes.
    pub(super) fn unmet_test(&mut self, demand: Demand, thing: Thing, any_of: TestDemand, touched: Place) {
        self.unmet([(Reason::TestLate { demand, thing, any_of }, touched)]);
    }

    /// Temporary items in the way and settings lost.
    fn demand_clear_to_run(&mut self) {
        let in_the_way: Vec<TemporaryCell> = self
            .trace
            .plant
            .temporaries()
            .filter(|(_, plan)| plan.restrains.is_some() || plan.arrives_with.is_some())
            .map(|(cell, _)| cell)
            .collect();
        for item in in_the_way {
            let gone = self.now(&item).is_none_or(|state| !state.in_place);
            self.demand(gone, Demand::RunWithTemporary, Some(Thing::Temporary(item)), Vec::new());
        }
        let is_setting = |thing| if let Thing::Setting(cell) = thing { Some(cell) } else { None };
        let settings: Vec<SettingCell> = self.touched.unsettled().filter_map(is_setting).collect();
        for setting in settings {
            let kept = self.now(&setting).is_none_or(|state| !state.lost);
            self.demand(kept, Demand::RunWithLostSetting, Some(Thing::Setting(setting)), Vec::new());
        }
    }
}

/// Whether some kind of a demanded test is due by then.
fn is_due(any_of: TestDemand, due: Due) -> bool {
    any_of.iter().all(|wanted| test_row(&wanted.kind).is_some_and(|row| row.due <= due))
}

fn not_ready(row: &KindRow) -> Demand {
    match row.hazard {
        Hazard::Gas => Demand::NotPurged,
        _ if row.only_off => Demand::TrapDry,
        _ => Demand::NotBled,
    }
}
