//! Demands that a document replaces: its overrides written into the tables of demands.
//!
//! Only an override with words and a source counts; what allows it is for people to judge. What became of
//! each is kept for the rule that reports those which change nothing.
//!
//! A demand that any of several tests satisfies is replaced when each of them is.

use super::{Plant, SectionCell, Thing};
use crate::model::{CircuitKind, Demand, DemandOverride, Procedure, TestKind};
use crate::simulate::coverage::is_of_role;
use crate::simulate::kinds::{KindRow, TestDemand, alone};
use crate::simulate::replaced::{Replacement, fault_in_writing, same_reading};
use crate::simulate::test_kinds::test_row;
use crate::units::{Measured, Unit, convert};

/// An override with the things to which it is confined.
struct Replaced<'p> {
    given: &'p DemandOverride,
    on: Vec<Thing>,
    /// Whether it changed any demand.
    is_applied: bool,
}

impl Plant {
    /// Writes the overrides of a document into the demands, in their order: the first that holds for a thing
    /// counts.
    pub(super) fn replace_demands(&mut self, procedure: &Procedure) {
        let mut all: Vec<Replaced<'_>> = Vec::new();
        let mut faults: Vec<Option<Replacement>> = Vec::new();
        for given in &procedure.overrides {
            let on: Vec<Thing> = given.on.iter().filter_map(|id| self.thing(id)).collect();
            let on_map = (on.len() < given.on.len()).then_some(Replacement::NotOnMap);
            let fault = fault_in_writing(procedure, given).or(on_map);
            if fault.is_none() {
                all.push(Replaced { given, on, is_applied: false });
            }
            faults.push(fault);
        }
        for replaced in &mut all {
            replaced.is_applied = self.replace_of_sections(replaced);
        }
        self.replace_tests(&mut all);
        let mut sound = all.into_iter().map(|replaced| {
            if replaced.is_applied { Replacement::Applied } else { Replacement::NothingToReplace }
        });
        self.replacements = faults.into_iter().filter_map(|fault| fault.or_else(|| sound.next())).collect();
    }

    /// Replaces what is asked of sections, and says whether anything was.
    fn replace_of_sections(&mut self, replaced: &Replaced<'_>) -> bool {
        let given = replaced.given;
        let minutes = given.duration.as_ref().and_then(minutes);
        let within: Vec<SectionCell> = self
            .sections()
            .map(|(cell, _)| cell)
            .filter(|cell| replaced.holds_section(self, *cell))
            .collect();
        let mut is_applied = given.demand == Demand::TestLimit && limits_a_test(given);
        for section in within {
            let Some(row) = self.row_of(section) else { continue };
            let reading = position_of_reading(row, given);
            let label = self.circuit_of(section).map(|circuit| circuit.discharge_minutes);
            let Some(demands) = self.sections.get_mut(section.index()).map(|plan| &mut plan.demands) else {
                continue;
            };
            is_applied |= match (&given.demand, minutes) {
                (Demand::Lock, _) if demands.locks => {
                    demands.locks = false;
                    true
                }
                (Demand::ProofLife, Some(minutes))
                    if !row.proof.is_empty() && demands.life_minutes == row.life_minutes =>
                {
                    demands.life_minutes = Some(whole(minutes.floor()));
                    true
                }
                (Demand::Wait, Some(minutes)) if row.waits && demands.wait_minutes == label => {
                    demands.wait_minutes = Some(whole(minutes.ceil()));
                    true
                }
                (Demand::ProofReading, _) => match (reading, &given.limits) {
                    (Some(at), Some(limits)) if demands.limits_of(at).is_none() => {
                        demands.limits.push((at, limits.clone()));
                        true
                    }
                    _ => false,
                },
                _ => false,
            };
        }
        is_applied
    }

    /// Replaces tests of connections, parts, settings and sections.
    fn replace_tests(&mut self, all: &mut [Replaced<'_>]) {
        if !all.iter().any(|replaced| replaced.given.demand == Demand::Test) {
            return;
        }
        for i in 0..self.connections.len() {
            let Some(plan) = self.connections.get(i) else { continue };
            let (parts, section) = (plan.joins.clone(), plan.section);
            let kind = section.and_then(|section| self.row_of(section)).map(|row| &row.kind);
            let holds = |replaced: &Replaced<'_>| {
                let itself = Thing::Connection(super::ConnectionCell::new(i));
                replaced.is_of(kind)
                    && (replaced.names(itself)
                        || parts.iter().any(|part| replaced.on.contains(&Thing::Component(*part)))
                        || section.is_some_and(|section| replaced.names_around(self, section)))
            };
            let tests = replaced_tests(&plan.tests, all, holds, |test| is_for(test, kind));
            if let Some(plan) = self.connections.get_mut(i) {
                plan.tests = tests;
            }
        }
        for i in 0..self.sections.len() {
            let cell = SectionCell::new(i);
            let kind = self.row_of(cell).map(|row| &row.kind);
            let Some(plan) = self.sections.get(i) else { continue };
            let holds = |replaced: &Replaced<'_>| replaced.holds_section(self, cell);
            let tests = replaced_tests(&plan.demands.after_filling, all, holds, |test| is_for(test, kind));
            if let Some(plan) = self.sections.get_mut(i) {
                plan.demands.after_filling = tests;
            }
        }
        self.replace_tests_of_parts(all);
    }

    fn replace_tests_of_parts(&mut self, all: &mut [Replaced<'_>]) {
        for i in 0..self.components.len() {
            let Some(plan) = self.components.get(i) else { continue };
            let itself = Thing::Component(super::ComponentCell::new(i));
            // A part belongs to every kind of circuit that goes through it.
            let sections = plan.connections.iter().filter_map(|k| self.connection(*k)?.section);
            let kinds: Vec<&CircuitKind> =
                sections.filter_map(|section| self.row_of(section)).map(|row| &row.kind).collect();
            let holds = |replaced: &Replaced<'_>| {
                let of_kind = replaced.given.kind.as_ref().is_none_or(|kind| kinds.contains(&kind));
                of_kind && replaced.names(itself)
            };
            let shows = |test: &TestKind| is_of_role(test, plan.role.as_ref());
            let tests = replaced_tests(&plan.tests, all, holds, shows);
            if let Some(plan) = self.components.get_mut(i) {
                plan.tests = tests;
            }
        }
        for (i, plan) in self.settings.iter_mut().enumerate() {
            let itself = Thing::Setting(super::SettingCell::new(i));
            let of = plan.of.map(Thing::Component);
            let holds = |replaced: &Replaced<'_>| {
                replaced.given.kind.is_none()
                    && (replaced.names(itself) || of.is_some_and(|of| replaced.names(of)))
            };
            let affects = &plan.affects;
            plan.tests = replaced_tests(&plan.tests, all, holds, |test| affects.contains(test));
        }
    }
}

impl Replaced<'_> {
    /// Whether a thing is named, or nothing is and all are meant.
    fn names(&self, thing: Thing) -> bool {
        self.on.is_empty() || self.on.contains(&thing)
    }

    fn is_of(&self, kind: Option<&CircuitKind>) -> bool {
        self.given.kind.as_ref().is_none_or(|wanted| Some(wanted) == kind)
    }

    fn names_around(&self, plant: &Plant, section: SectionCell) -> bool {
        let circuit = plant.section(section).map(|plan| Thing::Circuit(plan.circuit));
        self.names(Thing::Section(section)) || circuit.is_some_and(|circuit| self.names(circuit))
    }

    fn holds_section(&self, plant: &Plant, section: SectionCell) -> bool {
        self.is_of(plant.row_of(section).map(|row| &row.kind)) && self.names_around(plant, section)
    }
}

/// The tests with those replaced that some override holds for; the overrides used are marked.
fn replaced_tests(
    tests: &[TestDemand],
    all: &mut [Replaced<'_>],
    holds: impl Fn(&Replaced<'_>) -> bool,
    shows: impl Fn(&TestKind) -> bool,
) -> Vec<TestDemand> {
    let mut result: Vec<TestDemand> = Vec::new();
    for any_of in tests {
        let instead = |kind: &TestKind| {
            all.iter().position(|replaced| {
                let given = replaced.given;
                given.demand == Demand::Test
                    && given.test.as_ref() == Some(kind)
                    && given.instead.as_ref().is_some_and(|test| alone(test).is_some() && shows(test))
                    && holds(replaced)
            })
        };
        let by: Option<Vec<usize>> = any_of.iter().map(|wanted| instead(&wanted.kind)).collect();
        let mut new = vec![*any_of];
        if let Some(by) = by {
            new.clear();
            for replaced in by.iter().filter_map(|at| all.get(*at)) {
                new.extend(replaced.given.instead.as_ref().and_then(alone));
            }
            for at in by {
                if let Some(replaced) = all.get_mut(at) {
                    replaced.is_applied = true;
                }
            }
        }
        // One demand of several tests stays one: the first of what takes their places.
        result.extend(new.into_iter().take(1).filter(|demand| !result.contains(demand)).collect::<Vec<_>>());
    }
    result
}

/// Whether a test says anything of a circuit of this kind.
fn is_for(test: &TestKind, kind: Option<&CircuitKind>) -> bool {
    let row = test_row(test);
    row.is_some_and(|row| row.circuits.is_empty() || kind.is_some_and(|kind| row.circuits.contains(kind)))
}

/// The reading of the proof that an override limits, if it limits it by the same quantity.
fn position_of_reading(row: &KindRow, given: &DemandOverride) -> Option<usize> {
    let limits = given.limits.as_ref()?;
    row.proof.iter().position(|asked| {
        let unit = asked.limits.as_ref().map(|(_, _, unit)| unit);
        same_reading(asked.what, &given.reading)
            && unit.is_some_and(|unit| unit.quantity() == limits.unit.quantity())
    })
}

/// Whether an override limits a reading that a kind of test takes, by the same quantity.
fn limits_a_test(given: &DemandOverride) -> bool {
    let row = given.test.as_ref().and_then(test_row);
    let readings = row.map(|row| row.readings).unwrap_or_default();
    let quantity = given.limits.as_ref().map(|limits| limits.unit.quantity());
    readings.iter().any(|asked| {
        let unit = asked.limits.as_ref().map(|(_, _, unit)| unit.quantity());
        same_reading(asked.what, &given.reading) && unit.is_some() && unit == quantity
    })
}

fn minutes(duration: &Measured) -> Option<f64> {
    convert(duration.value.value(), &duration.unit, &Unit::Minute).ok()
}

fn whole(minutes: f64) -> u32 {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "bounded just here")]
    let whole = minutes.clamp(0.0, 100_000.0) as u32;
    whole
}
