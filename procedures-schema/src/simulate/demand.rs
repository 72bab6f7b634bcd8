//! What must be true before somebody touches something.
//!
//! Terms: the *group* of a section is every section joined to it by open isolators. A section is *still
//! fed* if its group reaches a supply, or a neighbour of the same circuit under pressure. Its ladder is
//! *in force* if it is not still fed, locked where its kind locks, released and proved. For safety an
//! automatic isolator counts as open and a relief as shut.

use super::machine::Machine;
use super::plant::{CircuitCell, ComponentCell, ConnectionCell, IsolatorCell, SectionCell, Side, Thing};
use super::state::{Contents, Proof, Whereabouts};
use super::trace::ApplianceCell;
use super::unmet::{Demand, Reason};
use super::{Few, Place, Plant};
use crate::model::{Family, Handle, Id};
use smallvec::smallvec;

/// An unmet demand and since when it is unmet.
pub(super) type Failing = (Reason, Place);

/// A section on the way out of another.
struct Reached {
    section: SectionCell,
    /// The isolator through which it is entered.
    through: IsolatorCell,
    /// The section before it, by position; none if that is where the way begins.
    behind: Option<usize>,
    /// Whether every isolator up to here is automatic.
    merely_automatic: bool,
}

/// A way out of a section: what was reached, and the isolator with which it ends.
struct Way {
    reached: Few<Reached>,
    /// The last section of the way, by position; none if that is where it begins.
    behind: Option<usize>,
    last: IsolatorCell,
}

impl Way {
    /// The isolators on it, in order.
    fn isolators(&self) -> Vec<IsolatorCell> {
        let mut way = vec![self.last];
        let mut at = self.behind;
        while let Some(section) = at.and_then(|at| self.reached.get(at)) {
            way.push(section.through);
            at = section.behind;
        }
        way.reverse();
        way
    }
}

impl Machine<'_> {
    pub(super) fn plant(&self) -> &Plant {
        &self.trace.plant
    }

    fn lets_through(&self, isolator: IsolatorCell) -> bool {
        match self.plant().isolator(isolator).map(|i| &i.handle) {
            Some(Handle::Automatic | Handle::None) => true,
            Some(Handle::Relief) | None => false,
            Some(_) => self.now(&isolator).is_some_and(|state| state.open),
        }
    }

    /// The shortest open way out of a section that ends where `ends` says. `ends` is told the side that is
    /// reached, and whether every isolator on the way there is automatic.
    fn way_out(&self, from: SectionCell, ends: impl Fn(Side, bool) -> bool) -> Option<Way> {
        let mut reached: Few<Reached> = Few::new();
        let (mut here, mut at, mut next) = (from, None, 0);
        loop {
            let automatic_so_far =
                at.and_then(|at: usize| reached.get(at)).is_none_or(|reached| reached.merely_automatic);
            for isolator in self.plant().section(here).into_iter().flat_map(|s| &s.isolators) {
                let Some(plan) = self.plant().isolator(*isolator) else { continue };
                let Some((a, b)) = plan.between.filter(|_| self.lets_through(*isolator)) else { continue };
                let other = if a == Side::Section(here) { b } else { a };
                let merely_automatic = automatic_so_far && plan.handle == Handle::Automatic;
                if ends(other, merely_automatic) {
                    return Some(Way { reached, behind: at, last: *isolator });
                }
                if let Side::Section(section) = other
                    && section != from
                    && !reached.iter().any(|known| known.section == section)
                {
                    reached.push(Reached { section, through: *isolator, behind: at, merely_automatic });
                }
            }
            here = reached.get(next)?.section;
            at = Some(next);
            next += 1;
        }
    }

    /// Sections joined to this one by isolators that are open now, itself first.
    pub(super) fn group(&self, section: SectionCell) -> Few<SectionCell> {
        let mut group: Few<SectionCell> = smallvec![section];
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
        self.supply_way(section).is_some() || self.feeder(section).is_some()
    }

    fn supply_way(&self, section: SectionCell) -> Option<Way> {
        self.way_out(section, |side, _| side == Side::Supply)
    }

    /// A live section of a circuit that feeds this one, itself or through others.
    fn feeder(&self, section: SectionCell) -> Option<SectionCell> {
        let circuit = self.plant().circuit_of(section)?;
        circuit.fed_by.iter().find_map(|feeder| self.live_section(*feeder, 0))
    }

    fn live_section(&self, circuit: CircuitCell, depth: usize) -> Option<SectionCell> {
        let plan = self.plant().circuit(circuit)?;
        let supplied = plan.sections.iter().copied().find(|s| self.supply_way(*s).is_some());
        // Circuits that feed each other in a ring end here.
        let deeper = || {
            let feeders = plan.fed_by.iter().filter(|_| depth < self.plant().circuits().count());
            feeders.into_iter().find_map(|feeder| self.live_section(*feeder, depth + 1))
        };
        supplied.or_else(deeper)
    }

    /// The way by which a section is still fed, if it is. `named` are sections of the same action.
    pub(super) fn still_fed(&self, section: SectionCell, named: &[SectionCell]) -> Option<Failing> {
        let way = match self.feeder(section) {
            Some(feeder) => self.supply_way(feeder),
            None => Some(self.pressed_way(section, named)?),
        };
        let through = way.map(|way| way.isolators()).unwrap_or_default();
        let since = through.iter().map(|i| self.since(i)).max().unwrap_or(Place::START);
        Some((Reason::StillFed { section, through }, since))
    }

    /// Whether a section is still fed.
    pub(super) fn is_still_fed(&self, section: SectionCell) -> bool {
        self.feeder(section).is_some() || self.pressed_way(section, &[]).is_some()
    }

    /// The way to a supply, or to a neighbour of the same circuit under pressure.
    fn pressed_way(&self, section: SectionCell, named: &[SectionCell]) -> Option<Way> {
        let circuit = self.plant().section(section).map(|s| s.circuit);
        let presses = |side: Side, merely_automatic: bool| match side {
            Side::Supply => true,
            Side::Section(other) => {
                let same_circuit = self.plant().section(other).map(|s| s.circuit) == circuit;
                other != section
                    && same_circuit
                    && !named.contains(&other)
                    && !merely_automatic
                    && self.now(&other).is_some_and(|state| state.stored.pressure)
            }
        };
        self.way_out(section, presses)
    }

    /// The closed isolators around a section's group, and those of what feeds it, that are not locked.
    pub(super) fn not_locked(&self, section: SectionCell) -> Option<Failing> {
        let mut isolators: Vec<IsolatorCell> = self
            .group(section)
            .iter()
            .filter_map(|s| self.plant().section(*s))
            .flat_map(|s| s.isolators.iter().copied())
            .filter(|i| self.is_shut_by_hand(*i) && self.now(i).is_some_and(|state| !state.locked))
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
            .any(|i| self.is_shut_by_hand(*i))
    }

    /// Whether an isolator is closed that somebody could have locked: automatic ones and relief devices move
    /// by themselves, whatever their position in service.
    fn is_shut_by_hand(&self, isolator: IsolatorCell) -> bool {
        let by_itself = self
            .plant()
            .isolator(isolator)
            .is_none_or(|plan| matches!(plan.handle, Handle::Automatic | Handle::Relief | Handle::None));
        !by_itself && self.now(&isolator).is_some_and(|state| !state.open)
    }

    /// As [`Machine::not_locked`] for a section whose kind locks, or that is fed by one.
    fn lock_missing(&self, section: SectionCell) -> Option<Failing> {
        if self.plant().locks(section) {
            return self.not_locked(section);
        }
        let circuit = self.plant().circuit_of(section)?;
        let feeders = circuit.fed_by.iter().filter_map(|feeder| self.plant().circuit(*feeder));
        let mut sections = feeders.flat_map(|feeder| feeder.sections.iter().copied());
        sections.find_map(|feeder| if self.plant().locks(feeder) { self.not_locked(feeder) } else { None })
    }

    /// Whether a section is cut off and, where its kind locks, locked.
    pub(super) fn not_cut_off(&self, section: SectionCell, named: &[SectionCell]) -> Option<Failing> {
        self.plant().row_of(section)?;
        self.still_fed(section, named)
            .or_else(|| self.lock_missing(section))
            .or_else(|| self.fed_by_motion(section))
    }

    /// A movement that feeds the section and was neither shown to be still nor restrained.
    fn fed_by_motion(&self, section: SectionCell) -> Option<Failing> {
        let circuit = self.plant().circuit_of(section)?;
        let feeders = circuit.fed_by.iter().filter_map(|feeder| self.plant().circuit(*feeder));
        let mut moving = feeders.flat_map(|feeder| feeder.sections.iter().copied());
        let moving = moving.find(|s| self.now(s).is_some_and(|state| state.stored.motion))?;
        let others = vec![Thing::Section(moving)];
        let reason =
            Reason::Demand { demand: Demand::CanStart, thing: Some(Thing::Section(section)), others };
        Some((reason, self.since(&moving)))
    }

    /// The first rung of the ladder that a section has not reached, if any.
    pub(super) fn not_in_force(&self, section: SectionCell) -> Option<Failing> {
        let row = self.plant().row_of(section)?;
        if row.only_off {
            return self.not_off(section);
        }
        self.not_cut_off(section, &[])
            .or_else(|| self.not_released(section))
            .or_else(|| self.not_proved(section))
            .or_else(|| self.wrong_contents(section))
    }

    /// For kinds that only have to be off: running, or able to start.
    fn not_off(&self, section: SectionCell) -> Option<Failing> {
        let thing = Some(Thing::Section(section));
        if self.is_running() {
            let reason = Reason::Demand { demand: Demand::Running, thing, others: Vec::new() };
            return Some((reason, self.since(&ApplianceCell)));
        }
        let others = |failing: Failing| {
            let isolators = match failing.0 {
                Reason::StillFed { through, .. } => through,
                Reason::NotLocked { isolators, .. } => isolators,
                _ => Vec::new(),
            };
            let others = isolators.into_iter().map(Thing::Isolator).collect();
            (Reason::Demand { demand: Demand::CanStart, thing, others }, failing.1)
        };
        let fed_by = self.plant().circuit_of(section).is_some_and(|circuit| !circuit.fed_by.is_empty());
        if !fed_by {
            return None;
        }
        self.still_fed(section, &[]).or_else(|| self.lock_missing(section)).map(others)
    }

    /// Whether pressure is left in a section.
    pub(super) fn not_released(&self, section: SectionCell) -> Option<Failing> {
        let state = self.now(&section)?;
        let since = self.since_when(&section, |state| state.stored.pressure);
        state.stored.pressure.then_some((Reason::NotReleased { section }, since))
    }

    fn not_proved(&self, section: SectionCell) -> Option<Failing> {
        let row = self.plant().row_of(section)?;
        let state = self.now(&section)?;
        if row.proof.is_empty() || self.plant().section(section).is_some_and(|s| s.normally_empty) {
            return None;
        }
        match state.proof {
            Proof::Proved { .. } => None,
            Proof::Lapsed(why) => {
                let since = self.since_when(&section, |state| state.proof == Proof::Lapsed(why));
                Some((Reason::ProofLapsed { section, why }, since))
            }
            Proof::None => Some((Reason::NotProved { section }, Place::START)),
        }
    }

    /// Whether a proof has become older than proofs of its kind may get, and nothing has shown meanwhile that
    /// it still holds.
    pub(super) fn is_too_old(&self, section: SectionCell) -> bool {
        let Some(row) = self.plant().row_of(section) else { return false };
        let life = self.plant().demands_on(section).and_then(|demands| demands.life_minutes);
        let Some(Proof::Proved { second }) = self.now(&section).map(|state| state.proof) else {
            return false;
        };
        life.is_some_and(|life| self.second().saturating_sub(second) > life.saturating_mul(60))
            && !self.is_restrained(section)
            && (row.ages_open || !self.is_open(section))
    }

    /// Whether something of the section stands open, so that what leaks by is seen.
    fn is_open(&self, section: SectionCell) -> bool {
        let mut here = self.unsettled_in(section);
        here.any(|cell| self.look(&cell, |state| !state.is_made()) == Some(true))
    }

    /// Whether every movement that feeds the section is restrained.
    fn is_restrained(&self, section: SectionCell) -> bool {
        let Some(circuit) = self.plant().circuit_of(section) else { return false };
        let moving: Vec<CircuitCell> = circuit
            .fed_by
            .iter()
            .copied()
            .filter(|c| self.plant().circuit(*c).and_then(|c| c.row).is_some_and(|row| row.stores.motion))
            .collect();
        let restrained = |circuit: &CircuitCell| {
            self.plant().temporaries().any(|(cell, plan)| {
                plan.restrains == Some(*circuit) && self.now(&cell).is_some_and(|state| state.in_place)
            })
        };
        !moving.is_empty() && moving.iter().all(restrained)
    }

    fn wrong_contents(&self, section: SectionCell) -> Option<Failing> {
        let row = self.plant().row_of(section)?;
        let contents = self.now(&section)?.contents;
        let burns = self.plant().circuit_of(section).is_some_and(|circuit| circuit.flammable);
        let allowed = row.open_from.is_empty()
            || (row.open_from.contains(&contents) && !(burns && contents == Contents::Residual));
        let since = self.since_when(&section, |state| state.contents == contents);
        (!allowed).then_some((Reason::WrongContents { section, contents }, since))
    }

    /// Circuits that electrify a component: those of its connectors and terminals that are not open.
    pub(super) fn energises(&self, component: ComponentCell) -> Vec<SectionCell> {
        let Some(plan) = self.plant().component(component) else { return Vec::new() };
        plan.connections
            .iter()
            .filter_map(|k| self.plant().connection(*k).map(|plan| (k, plan)))
            .filter(|(_, plan)| plan.section.is_some_and(|s| self.is_guarded(s)))
            .filter(|(k, _)| self.look(*k, |state| state.made + state.slack > 0) == Some(true))
            .filter_map(|(_, plan)| plan.section)
            .collect()
    }

    fn is_guarded(&self, section: SectionCell) -> bool {
        self.plant().row_of(section).is_some_and(|row| row.guarded)
    }

    /// Circuits that lie bare once this component is out of the way.
    pub(super) fn bares(&self, guard: ComponentCell) -> Vec<SectionCell> {
        self.plant().component(guard).map(|plan| plan.bares.clone()).unwrap_or_default()
    }

    /// What is wrong with putting the hands on these components. What the last of them bares has a demand
    /// of its own.
    pub(super) fn hands(&self, components: &[ComponentCell]) -> Vec<Failing> {
        let mut sections: Vec<SectionCell> = components.iter().flat_map(|c| self.energises(*c)).collect();
        sections.sort_unstable();
        sections.dedup();
        sections.into_iter().filter_map(|s| self.not_in_force(s)).collect()
    }

    /// What is wrong with reaching in behind the guards of a connection that are off.
    pub(super) fn near(&self, connection: ConnectionCell) -> Vec<Failing> {
        let Some(plan) = self.plant().connection(connection) else { return Vec::new() };
        let mut sections: Vec<SectionCell> =
            plan.reach.iter().filter(|g| !self.is_fitted(**g)).flat_map(|g| self.bares(*g)).collect();
        sections.sort_unstable();
        sections.dedup();
        sections.into_iter().filter_map(|s| self.not_in_force(s)).collect()
    }

    pub(super) fn is_fitted(&self, component: ComponentCell) -> bool {
        self.look(&component, |state| state.whereabouts) == Some(Whereabouts::Fitted)
    }

    /// What is wrong with touching a connection: its own section, the hands, what lies bare beside it.
    pub(super) fn touch(&self, connection: ConnectionCell) -> Vec<Failing> {
        let Some(plan) = self.plant().connection(connection) else { return Vec::new() };
        let mut failing: Vec<Failing> =
            plan.section.into_iter().filter_map(|s| self.not_in_force(s)).collect();
        let electrical = plan.section.is_some_and(|s| self.is_guarded(s));
        if !electrical && plan.family != Family::Connector {
            failing.extend(self.hands(&plan.joins));
        }
        failing.extend(self.near(connection));
        // One section met in two of these ways is met once.
        let mut once: Vec<Failing> = Vec::new();
        for one in failing {
            if !once.contains(&one) {
                once.push(one);
            }
        }
        once
    }

    /// Demands that what stands before a connection is out of the way.
    pub(super) fn demand_reach(&mut self, reach: &[ComponentCell], thing: Thing) {
        let blocking: Vec<Thing> =
            reach.iter().filter(|c| self.is_fitted(**c)).map(|c| Thing::Component(*c)).collect();
        self.demand(blocking.is_empty(), Demand::OutOfReach, Some(thing), blocking);
    }

    /// The sections that an id stands for.
    pub(super) fn sections_of(&self, id: &Id) -> Few<SectionCell> {
        match self.plant().thing(id) {
            Some(Thing::Section(section)) => smallvec![section],
            Some(Thing::Circuit(circuit)) => {
                self.plant().circuit(circuit).map(|c| c.sections.as_slice().into()).unwrap_or_default()
            }
            _ => Few::new(),
        }
    }

    /// What is wrong with taking off a guard: what it covers is fed, not locked, or has not waited.
    pub(super) fn demand_guard(&mut self, guard: ComponentCell) {
        for section in self.bares(guard) {
            let thing = Some(Thing::Section(section));
            if let Some(through) = self.guard_fed(section) {
                let others = through.into_iter().map(Thing::Isolator).collect();
                self.demand(false, Demand::GuardOffLive, thing, others);
            } else if let Some(failing) = self.lock_missing(section) {
                self.unmet([failing]);
            } else {
                let waited = self.has_waited(section);
                self.demand(waited, Demand::WaitTooShort, thing, Vec::new());
            }
        }
    }

    /// The way by which a supply reaches a guarded section; movement that may feed it does not count here,
    /// for it is behind the same guard.
    fn guard_fed(&self, section: SectionCell) -> Option<Vec<IsolatorCell>> {
        let by_feeder = || self.feeder(section).and_then(|feeder| self.supply_way(feeder));
        self.supply_way(section).or_else(by_feeder).map(|way| way.isolators())
    }

    /// Whether stored charge has had the time of its label to go.
    pub(super) fn has_waited(&self, section: SectionCell) -> bool {
        let demands = self.plant().demands_on(section);
        let Some(needed) = demands.and_then(|demands| demands.wait_minutes) else { return true };
        let since = self.now(&section).and_then(|state| state.off_since);
        since.is_some_and(|since| self.second().saturating_sub(since) >= needed.saturating_mul(60))
    }

    /// Whether a connection is closed: fully made, or by a temporary item on it.
    pub(super) fn is_closed(&self, connection: ConnectionCell) -> bool {
        self.look(&connection, super::state::ConnectionState::is_made) == Some(true)
            || self.closing_item(connection).is_some()
    }

    /// The temporary item that closes a connection.
    pub(super) fn closing_item(&self, connection: ConnectionCell) -> Option<super::TemporaryCell> {
        let items = self.plant().connection(connection).map(|plan| plan.closed_by.as_slice());
        let mut items = items.unwrap_or_default().iter();
        items.find(|item| self.now(*item).is_some_and(|state| state.in_place)).copied()
    }

    /// Connections of a section through which its medium would come out. Vents and taps may stand open
    /// while water is filled in; sampling holes may stand open at any time.
    pub(super) fn open_ends(&self, section: SectionCell, filling: bool) -> Vec<ConnectionCell> {
        use crate::model::Port;
        let vented = filling && self.plant().row_of(section).is_some_and(|row| row.fills_vented);
        self.unsettled_in(section)
            .filter_map(|cell| self.plant().connection(cell).map(|plan| (cell, plan)))
            .filter(|(_, plan)| plan.family != Family::Connector)
            .filter(|(_, plan)| match plan.port {
                Some(Port::Sample) => false,
                Some(Port::Vent | Port::Outlet) => !vented,
                _ => true,
            })
            .map(|(cell, _)| cell)
            .filter(|cell| !self.is_closed(*cell))
            .collect()
    }
}
