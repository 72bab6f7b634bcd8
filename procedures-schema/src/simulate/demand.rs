//! What must be true before somebody touches something.
//!
//! Terms: the *group* of a section is every section joined to it by open isolators. A section is *still
//! fed* if its group reaches a supply, or a neighbour of the same circuit under pressure. Its ladder is
//! *in force* if it is not still fed, locked where its kind locks, released and proved. For safety an
//! automatic isolator counts as open and a relief as shut.

use super::machine::Machine;
use super::plant::{CircuitCell, ComponentCell, ConnectionCell, IsolatorCell, SectionCell, Side, Thing};
use super::state::{Proof, Whereabouts};
use super::unmet::Reason;
use super::{Place, Plant};
use crate::model::{Family, Handle};

/// An unmet demand and since when it is unmet.
pub(super) type Failing = (Reason, Place);

impl Machine<'_> {
    fn plant(&self) -> &Plant {
        &self.trace.plant
    }

    fn lets_through(&self, isolator: IsolatorCell) -> bool {
        match self.plant().isolator(isolator).map(|i| &i.handle) {
            Some(Handle::Automatic | Handle::None) => true,
            Some(Handle::Relief) | None => false,
            Some(_) => self.now(&isolator).is_some_and(|state| state.open),
        }
    }

    /// The first open way out of a section that ends where `ends` says, as the isolators on it.
    fn way_out(
        &self,
        from: SectionCell,
        ends: impl Fn(Side, &[IsolatorCell]) -> bool,
    ) -> Option<Vec<IsolatorCell>> {
        let mut seen = vec![from];
        let mut ways = vec![(from, Vec::new())];
        let mut next = 0;
        while let Some((section, way)) = ways.get(next).cloned() {
            next += 1;
            for isolator in self.plant().section(section).into_iter().flat_map(|s| &s.isolators) {
                let Some((a, b)) = self.plant().isolator(*isolator).and_then(|i| i.between) else { continue };
                if !self.lets_through(*isolator) {
                    continue;
                }
                let other = if a == Side::Section(section) { b } else { a };
                let mut longer = way.clone();
                longer.push(*isolator);
                if ends(other, &longer) {
                    return Some(longer);
                }
                if let Side::Section(other) = other
                    && !seen.contains(&other)
                {
                    seen.push(other);
                    ways.push((other, longer));
                }
            }
        }
        None
    }

    /// Sections joined to this one by isolators that are open now, itself first.
    pub(super) fn group(&self, section: SectionCell) -> Vec<SectionCell> {
        let mut group = vec![section];
        let mut next = 0;
        while let Some(here) = group.get(next).copied() {
            next += 1;
            for isolator in self.plant().section(here).into_iter().flat_map(|s| &s.isolators) {
                let between = self.plant().isolator(*isolator).and_then(|i| i.between);
                if !self.lets_through(*isolator) {
                    continue;
                }
                for side in between.iter().flat_map(|(a, b)| [a, b]) {
                    if let Side::Section(other) = side
                        && !group.contains(other)
                    {
                        group.push(*other);
                    }
                }
            }
        }
        group
    }

    /// Whether a supply, or a circuit that feeds it, reaches the section.
    pub(super) fn is_fed(&self, section: SectionCell) -> bool {
        self.way_out(section, |side, _| side == Side::Supply).is_some() || self.feeder(section).is_some()
    }

    /// A live section of a circuit that feeds this one.
    fn feeder(&self, section: SectionCell) -> Option<SectionCell> {
        let circuit = self.plant().circuit_of(section)?;
        circuit.fed_by.iter().find_map(|feeder| self.live_section(*feeder))
    }

    fn live_section(&self, circuit: CircuitCell) -> Option<SectionCell> {
        let plan = self.plant().circuit(circuit)?;
        plan.sections.iter().copied().find(|s| self.way_out(*s, |side, _| side == Side::Supply).is_some())
    }

    /// The way by which a section is still fed, if it is. `named` are sections of the same action.
    pub(super) fn still_fed(&self, section: SectionCell, named: &[SectionCell]) -> Option<Failing> {
        if let Some(feeder) = self.feeder(section) {
            return self.still_fed(feeder, &[]).map(|(reason, since)| match reason {
                Reason::StillFed { through, .. } => (Reason::StillFed { section, through }, since),
                other => (other, since),
            });
        }
        let circuit = self.plant().section(section).map(|s| s.circuit);
        let presses = |side: Side, way: &[IsolatorCell]| match side {
            Side::Supply => true,
            Side::Section(other) => {
                let same_circuit = self.plant().section(other).map(|s| s.circuit) == circuit;
                let merely_automatic = way
                    .iter()
                    .all(|i| self.plant().isolator(*i).is_some_and(|plan| plan.handle == Handle::Automatic));
                other != section
                    && same_circuit
                    && !named.contains(&other)
                    && !merely_automatic
                    && self.now(&other).is_some_and(|state| state.stored.pressure)
            }
        };
        let through = self.way_out(section, presses)?;
        let since = through.iter().map(|i| self.since(i)).max().unwrap_or(Place::START);
        Some((Reason::StillFed { section, through }, since))
    }

    /// The closed isolators around a section's group that are not locked.
    pub(super) fn not_locked(&self, section: SectionCell) -> Option<Failing> {
        let mut isolators: Vec<IsolatorCell> = self
            .group(section)
            .iter()
            .filter_map(|s| self.plant().section(*s))
            .flat_map(|s| s.isolators.iter().copied())
            .filter(|i| self.now(i).is_some_and(|state| !state.open && !state.locked))
            .collect();
        isolators.sort_unstable();
        isolators.dedup();
        let since = isolators.iter().map(|i| self.since(i)).max()?;
        Some((Reason::NotLocked { section, isolators }, since))
    }

    /// Whether some isolator around a section's group is closed.
    pub(super) fn has_closed(&self, section: SectionCell) -> bool {
        self.group(section)
            .iter()
            .filter_map(|s| self.plant().section(*s))
            .flat_map(|s| &s.isolators)
            .any(|i| self.now(i).is_some_and(|state| !state.open))
    }

    /// Whether a section is cut off and, where its kind locks, locked.
    pub(super) fn not_cut_off(&self, section: SectionCell, named: &[SectionCell]) -> Option<Failing> {
        let row = self.plant().row_of(section)?;
        self.still_fed(section, named).or_else(|| if row.locks { self.not_locked(section) } else { None })
    }

    /// The first rung of the ladder that a section has not reached, if any.
    pub(super) fn not_in_force(&self, section: SectionCell) -> Option<Failing> {
        self.not_cut_off(section, &[]).or_else(|| self.not_released(section)).or_else(|| {
            let row = self.plant().row_of(section)?;
            let state = self.now(&section)?;
            let empty = self.plant().section(section).is_some_and(|s| s.normally_empty);
            let shown = row.proof.is_empty() || empty || state.proof == Proof::Proved;
            // A lapse is the cause where there was a proof; else nothing ever was.
            (!shown).then(|| {
                let lapsed = matches!(state.proof, Proof::Lapsed(_));
                let since = if lapsed { self.since(&section) } else { Place::START };
                (Reason::NotProved { section }, since)
            })
        })
    }

    /// Whether pressure is left in a section.
    pub(super) fn not_released(&self, section: SectionCell) -> Option<Failing> {
        let state = self.now(&section)?;
        state.stored.pressure.then(|| (Reason::NotReleased { section }, self.since_pressure(section)))
    }

    /// Circuits that electrify a component: those of its connectors and terminals that are not open.
    fn energises(&self, component: ComponentCell) -> Vec<SectionCell> {
        let Some(plan) = self.plant().component(component) else { return Vec::new() };
        plan.connections
            .iter()
            .filter(|k| self.now(*k).is_some_and(|state| state.made + state.slack > 0))
            .filter_map(|k| self.plant().connection(*k)?.section)
            .filter(|s| self.plant().row_of(*s).is_some_and(|row| row.guarded))
            .collect()
    }

    /// Circuits that lie bare once this component is out of the way.
    fn bares(&self, guard: ComponentCell) -> Vec<SectionCell> {
        let mut bare: Vec<SectionCell> = self
            .plant()
            .connections()
            .filter(|(_, k)| k.reach.contains(&guard))
            .filter_map(|(_, k)| k.section)
            .filter(|s| self.plant().row_of(*s).is_some_and(|row| row.guarded))
            .collect();
        bare.sort_unstable();
        bare.dedup();
        bare
    }

    /// What is wrong with putting the hands on these components.
    pub(super) fn hands(&self, components: &[ComponentCell]) -> Vec<Failing> {
        let mut sections: Vec<SectionCell> = components.iter().flat_map(|c| self.energises(*c)).collect();
        sections.sort_unstable();
        sections.dedup();
        sections.into_iter().filter_map(|s| self.not_in_force(s)).collect()
    }

    /// What is wrong with reaching in behind the guards of a connection that are off.
    pub(super) fn near(&self, connection: ConnectionCell) -> Vec<Failing> {
        let Some(plan) = self.plant().connection(connection) else { return Vec::new() };
        let mut sections: Vec<SectionCell> = plan
            .reach
            .iter()
            .filter(|g| self.now(*g).is_some_and(|state| state.whereabouts != Whereabouts::Fitted))
            .flat_map(|g| self.bares(*g))
            .collect();
        sections.sort_unstable();
        sections.dedup();
        sections.into_iter().filter_map(|s| self.not_in_force(s)).collect()
    }

    /// What is wrong with touching a connection: its own section, the hands, what lies bare beside it.
    pub(super) fn touch(&self, connection: ConnectionCell) -> Vec<Failing> {
        let Some(plan) = self.plant().connection(connection) else { return Vec::new() };
        if plan.port.is_some() {
            return self.port(connection);
        }
        let mut failing: Vec<Failing> =
            plan.section.into_iter().filter_map(|s| self.not_in_force(s)).collect();
        let electrical = plan.section.and_then(|s| self.plant().row_of(s)).is_some_and(|row| row.guarded);
        if !electrical && plan.family != Family::Connector {
            failing.extend(self.hands(&plan.joins));
        }
        failing.extend(self.near(connection));
        failing
    }

    /// What is wrong with opening a port: drains and vents need the section cut off, outlets nothing.
    fn port(&self, connection: ConnectionCell) -> Vec<Failing> {
        use crate::model::Port;
        let Some(plan) = self.plant().connection(connection) else { return Vec::new() };
        match plan.port {
            Some(Port::Drain | Port::Vent | Port::Test | Port::Fill) => {
                plan.section.into_iter().filter_map(|s| self.still_fed(s, &[])).collect()
            }
            _ => Vec::new(),
        }
    }

    /// The sections that an id stands for.
    pub(super) fn sections_of(&self, id: &crate::model::Id) -> Vec<SectionCell> {
        match self.plant().thing(id) {
            Some(Thing::Section(_) | Thing::Circuit(_)) => self.plant().sections_named(id),
            _ => Vec::new(),
        }
    }
}
