//! What each thing of a map is asked for: read from the rows of its kind, then changed by what the document
//! replaces. The machine reads its demands here and nowhere else.

use super::{ComponentPlan, ConnectionPlan, Plant, SectionCell, SettingPlan};
use crate::model::{Family, Port};
use crate::simulate::kinds::{KindRow, TestDemand, tests_of_role, tests_of_setting};
use crate::units::Range;

/// What a section is asked for.
#[derive(Clone, Debug, Default)]
pub struct SectionDemands {
    /// Whether its closed isolators must be locked.
    pub locks: bool,
    /// How many minutes a proof holds; none if it does not age.
    pub life_minutes: Option<u32>,
    /// How many minutes pass after isolating before its charge is held to be gone; none if it holds none.
    pub wait_minutes: Option<u32>,
    /// Limits of readings of the proof that are not those of the kind, by the position of the reading.
    pub limits: Vec<(usize, Range)>,
    /// Tests after it was released, filled or purged.
    pub after_filling: Vec<TestDemand>,
}

impl SectionDemands {
    fn of(row: &KindRow, discharge_minutes: u32) -> Self {
        Self {
            locks: row.locks,
            life_minutes: row.life_minutes,
            wait_minutes: row.waits.then_some(discharge_minutes),
            limits: Vec::new(),
            after_filling: row.after_filling.to_vec(),
        }
    }

    /// The limits of a reading of the proof that take the place of those of the kind.
    pub fn limits_of(&self, reading: usize) -> Option<&Range> {
        self.limits.iter().find(|(at, _)| *at == reading).map(|(_, range)| range)
    }
}

impl Plant {
    /// Reads what every thing is asked for from the rows of its kind.
    pub(super) fn lay_out_demands(&mut self) {
        let sections: Vec<SectionDemands> = self
            .sections()
            .map(|(cell, _)| {
                let minutes = self.circuit_of(cell).map_or(0, |circuit| circuit.discharge_minutes);
                self.row_of(cell).map_or_else(SectionDemands::default, |row| SectionDemands::of(row, minutes))
            })
            .collect();
        for (plan, demands) in self.sections.iter_mut().zip(sections) {
            plan.demands = demands;
            // What holds nothing in service has no fill pressure.
            if plan.normally_empty {
                plan.demands.after_filling.clear();
            }
        }
        let tests: Vec<Vec<TestDemand>> =
            self.connections.iter().map(|plan| self.tests_of_kind(plan).to_vec()).collect();
        for (plan, tests) in self.connections.iter_mut().zip(tests) {
            plan.tests = tests;
        }
        for plan in &mut self.components {
            plan.tests = tests_of_part(plan);
        }
        for plan in &mut self.settings {
            plan.tests = tests_of(plan);
        }
    }

    /// What a section is asked for; nothing if its kind is not judged.
    pub fn demands_on(&self, section: SectionCell) -> Option<&SectionDemands> {
        self.section(section).map(|plan| &plan.demands)
    }

    /// Whether the closed isolators of a section must be locked.
    pub fn locks(&self, section: SectionCell) -> bool {
        self.demands_on(section).is_some_and(|demands| demands.locks)
    }

    /// The tests that the kind of its circuit asks for after a connection was last touched.
    fn tests_of_kind(&self, plan: &ConnectionPlan) -> &'static [TestDemand] {
        let Some(section) = plan.section else { return &[] };
        let Some(row) = self.row_of(section) else { return &[] };
        let behind_automatic = self.section(section).is_some_and(|s| s.behind_automatic);
        // What holds nothing in service is loaded only by what lets into it.
        let is_empty =
            !row.after_joint_of_empty.is_empty() && self.section(section).is_some_and(|s| s.normally_empty);
        match (&plan.port, &plan.family) {
            (Some(Port::Outlet | Port::Sample), _) | (None, Family::Other(_)) => &[],
            (Some(_), _) => row.after_port,
            (None, Family::Connector) => row.after_connector,
            (None, Family::Joint) if is_empty => row.after_joint_of_empty,
            (None, Family::Joint) if behind_automatic => row.after_joint_behind_automatic,
            (None, Family::Joint) => row.after_joint,
            (None, Family::Fixing) if !plan.seals.is_empty() => row.after_sealed_fixing,
            (None, Family::Fixing) => &[],
        }
    }
}

fn tests_of_part(plan: &ComponentPlan) -> Vec<TestDemand> {
    plan.role.as_ref().map(|role| tests_of_role(role).to_vec()).unwrap_or_default()
}

fn tests_of(plan: &SettingPlan) -> Vec<TestDemand> {
    plan.affects.iter().flat_map(|kind| tests_of_setting(kind).iter().copied()).collect()
}
