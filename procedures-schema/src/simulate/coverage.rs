//! Tests: what one loads, what of that it covers, and the stamp it leaves.
//!
//! The author may narrow what a test covers by naming things; nothing widens it beyond what it loads.

use super::machine::Machine;
use super::plant::{ComponentCell, ConnectionCell, SectionCell, Side, Thing};
use super::state::{Contents, TestState, Whereabouts};
use super::test_kinds::{Loading, TestRow, test_row};
use super::timeline::Timeline;
use super::trace::TestCell;
use crate::model::{Action, Handle, Id, TestKind};

impl Machine<'_> {
    /// Carries out a test and stamps what it covers.
    pub(super) fn test(&mut self, action: &Action) {
        let Some(row) = action.test.as_ref().and_then(test_row) else { return };
        let loaded = self.loaded(row, action);
        let mut covered: Vec<Thing> = if row.stamps_sections {
            loaded.iter().copied().map(Thing::Section).collect()
        } else {
            self.connections_in(row, &loaded, action)
        };
        if row.loading == Loading::Running && self.is_running() {
            covered.extend(self.fitted_parts());
        }
        let covered = self.narrowed(covered, &action.on);
        for thing in covered {
            self.stamp(&row.kind, thing, &loaded);
        }
        if let Some(port) = action.at.as_ref().and_then(|id| self.trace.plant.connection_named(id))
            && self.trace.plant.connection(port).is_some_and(|k| k.port.is_some())
        {
            self.open_port(port);
        }
        self.trace.loadings.push((self.place, loaded));
    }

    /// The sections that the test loads now.
    fn loaded(&self, row: &TestRow, action: &Action) -> Vec<SectionCell> {
        let concerned = |section: &SectionCell| {
            self.trace
                .plant
                .row_of(*section)
                .is_some_and(|kind| row.circuits.is_empty() || row.circuits.contains(&kind.kind))
        };
        let sections = self.trace.plant.sections().map(|(s, _)| s).filter(concerned);
        let at = action.at.as_ref().and_then(|id| self.section_at(id));
        sections
            .filter(|s| match row.loading {
                Loading::Dead => !self.is_fed(*s),
                Loading::Fed => self.supply_reaches(*s, self.is_running()),
                Loading::FedBehindShutAutomatic => {
                    !self.is_running()
                        && self.supply_reaches(*s, false)
                        && at.is_none_or(|at| self.joined_without_automatic(at, *s))
                }
                Loading::UnderPressure => self.is_full_under_pressure(*s),
                Loading::UnderPressureHot => {
                    self.is_full_under_pressure(*s) && self.now(s).is_some_and(|state| state.stored.heat)
                }
                Loading::Running => self.is_running(),
            })
            .collect()
    }

    fn is_full_under_pressure(&self, section: SectionCell) -> bool {
        self.now(&section).is_some_and(|state| state.stored.pressure && state.contents != Contents::Air)
    }

    fn section_at(&self, id: &Id) -> Option<SectionCell> {
        match self.trace.plant.thing(id)? {
            Thing::Connection(k) => self.trace.plant.connection(k)?.section,
            Thing::Section(section) => Some(section),
            Thing::Circuit(circuit) => self.trace.plant.circuit(circuit)?.sections.first().copied(),
            _ => None,
        }
    }

    /// Whether a supply reaches a section, with automatic isolators as they are.
    fn supply_reaches(&self, section: SectionCell, automatic_open: bool) -> bool {
        self.joined(section, automatic_open).1
    }

    fn joined_without_automatic(&self, from: SectionCell, to: SectionCell) -> bool {
        self.joined(from, false).0.contains(&to)
    }

    /// Sections joined to one, and whether a supply is among what they reach.
    fn joined(&self, from: SectionCell, automatic_open: bool) -> (Vec<SectionCell>, bool) {
        let mut group = vec![from];
        let mut supplied = false;
        let mut next = 0;
        while let Some(here) = group.get(next).copied() {
            next += 1;
            for isolator in self.trace.plant.section(here).into_iter().flat_map(|s| &s.isolators) {
                let Some(plan) = self.trace.plant.isolator(*isolator) else { continue };
                let open = match plan.handle {
                    Handle::Automatic => automatic_open,
                    Handle::Relief => false,
                    Handle::None => true,
                    _ => self.now(isolator).is_some_and(|state| state.open),
                };
                for side in plan.between.iter().flat_map(|(a, b)| [a, b]).filter(|_| open) {
                    match side {
                        Side::Supply => supplied = true,
                        Side::Section(other) if !group.contains(other) => group.push(*other),
                        Side::Section(_) => {}
                    }
                }
            }
        }
        (group, supplied)
    }

    /// Made connections of the loaded sections that this test can show.
    fn connections_in(&self, row: &TestRow, loaded: &[SectionCell], action: &Action) -> Vec<Thing> {
        let at = action.at.as_ref().and_then(|id| self.trace.plant.connection_named(id));
        self.trace
            .plant
            .connections()
            .filter(|(cell, plan)| {
                plan.section.is_some_and(|s| loaded.contains(&s))
                    && self.now(cell).is_some_and(super::state::ConnectionState::is_made)
                    && !self.is_capped(*cell)
                    && !(row.not_at && at == Some(*cell))
                    && (!row.by_sight || self.can_be_seen(&plan.reach))
            })
            .map(|(cell, _)| Thing::Connection(cell))
            .collect()
    }

    fn is_capped(&self, connection: ConnectionCell) -> bool {
        self.trace.plant.temporaries().any(|(cell, plan)| {
            plan.closes && plan.on == Some(connection) && self.now(&cell).is_some_and(|s| s.in_place)
        })
    }

    fn can_be_seen(&self, reach: &[ComponentCell]) -> bool {
        reach.iter().all(|c| self.now(c).is_some_and(|s| s.whereabouts != Whereabouts::Fitted))
    }

    fn fitted_parts(&self) -> Vec<Thing> {
        let fitted = |cell: &ComponentCell| {
            self.now(cell).is_some_and(|state| state.whereabouts == Whereabouts::Fitted)
        };
        self.trace.plant.components().map(|(c, _)| c).filter(fitted).map(Thing::Component).collect()
    }

    /// Keeps what the author names: the things, what belongs to named parts, what lies in named sections.
    fn narrowed(&self, covered: Vec<Thing>, names: &[Id]) -> Vec<Thing> {
        if names.is_empty() {
            return covered;
        }
        let things: Vec<Thing> = names.iter().filter_map(|id| self.trace.plant.thing(id)).collect();
        let sections: Vec<SectionCell> =
            names.iter().flat_map(|id| self.trace.plant.sections_named(id)).collect();
        let belongs = |thing: &Thing| match thing {
            Thing::Connection(k) => self.trace.plant.connection(*k).is_some_and(|plan| {
                plan.joins.iter().any(|c| things.contains(&Thing::Component(*c)))
                    || plan.section.is_some_and(|s| sections.contains(&s))
            }),
            Thing::Section(s) => sections.contains(s),
            _ => false,
        };
        covered.into_iter().filter(|thing| things.contains(thing) || belongs(thing)).collect()
    }

    fn stamp(&mut self, kind: &TestKind, thing: Thing, loaded: &[SectionCell]) {
        let cell = TestCell { kind: kind.clone(), thing };
        let line = self
            .trace
            .tests
            .entry(cell)
            .or_insert_with(|| Timeline::new(TestState { passed: None, loaded: Vec::new() }));
        line.push(self.place, TestState { passed: Some(self.place), loaded: loaded.to_vec() });
    }
}
