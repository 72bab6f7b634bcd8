//! Tests: what one loads, what of that it covers, and the stamp it leaves.
//!
//! The author may narrow what a test covers by naming things; nothing widens it beyond what it loads.

use super::effect::Part;
use super::kinds::{TestDemand, Wanted};
use super::machine::Machine;
use super::plant::{ComponentCell, ConnectionCell, IsolatorPlan, SectionCell, Side, Thing};
use super::state::{ConnectionState, Contents, SectionState, Whereabouts};
use super::test_kinds::{Due, Loading, Stamps, TestRow, test_row};
use super::touched::For;
use super::trace::{ApplianceCell, TestCell};
use super::unmet::Demand;
use super::{Cell, Few, Guard, Place};
use crate::model::{Action, CircuitKind, Handle, Id, Mode, Role, TestKind};
use smallvec::smallvec;
use std::collections::BTreeSet;

impl Machine<'_> {
    /// What a test may stamp: every section, and what was touched and waits for it.
    pub(super) fn awaiting(&mut self, action: &Action, guard: &Guard) -> Vec<Thing> {
        let Some(row) = action.test.as_ref().and_then(test_row) else { return Vec::new() };
        if !action.on.is_empty() {
            return self.named_for_test(action).into_iter().filter(|t| self.concerns(row, *t)).collect();
        }
        let waits_for = self.waits_for(row, action, guard);
        let mut touched = std::mem::take(&mut self.touched);
        let concerns = |thing| self.concerns(row, thing);
        let waiting = match waits_for {
            Some(who) => touched.waiting(who, concerns),
            // The mode differs between the ways, so nobody knows yet for which stamps it waits.
            None => touched.ever(concerns),
        };
        self.touched = touched;
        self.trace.plant.sections().map(|(cell, _)| Thing::Section(cell)).chain(waiting).collect()
    }

    /// What was stamped on every way of the run waits no longer.
    pub(super) fn forget_stamped(&mut self, action: &Action, guard: &Guard, parts: &[Part]) {
        let Some(row) = action.test.as_ref().and_then(test_row) else { return };
        if guard != self.trace.run.way() || !action.on.is_empty() {
            return;
        }
        let Some(who) = self.waits_for(row, action, guard) else { return };
        let things = parts.iter().filter_map(|part| if let Part::Thing(t) = part { Some(*t) } else { None });
        let is_done = |thing: &Thing| self.on_all(guard, |m| m.awaits(row, action, *thing)) == Some(false);
        let done: Vec<Thing> = things.filter(is_done).collect();
        self.touched.is_done(&who, &done);
    }

    /// The stamp of a test in its mode, if that is the same on all ways.
    fn waits_for(&mut self, row: &TestRow, action: &Action, guard: &Guard) -> Option<For> {
        let mode = self.on_all(guard, |machine| machine.mode_of(action))?;
        Some(For::Stamp(row.kind.clone(), mode))
    }

    /// Whether a kind of test has to do with a thing at all.
    fn concerns(&self, row: &TestRow, thing: Thing) -> bool {
        let plant = &self.trace.plant;
        match thing {
            Thing::Connection(cell) => {
                let section = plant.connection(cell).and_then(|plan| plan.section);
                let kind = section.and_then(|section| plant.row_of(section)).map(|kind| &kind.kind);
                row.stamps != Stamps::Sections
                    && kind.is_some_and(|kind| row.circuits.is_empty() || row.circuits.contains(kind))
            }
            Thing::Component(cell) => {
                row.stamps == Stamps::All
                    && plant.component(cell).is_some_and(|plan| is_of_role(&row.kind, plan.role.as_ref()))
            }
            Thing::Setting(cell) => {
                row.stamps == Stamps::All
                    && plant.setting(cell).is_some_and(|plan| plan.affects.contains(&row.kind))
            }
            _ => true,
        }
    }

    /// Carries out one part of a test: what it demands, or the stamp on one thing.
    pub(super) fn test(&mut self, action: &Action, part: Part) {
        let Some(row) = action.test.as_ref().and_then(test_row) else { return };
        match part {
            Part::Whole => self.begin_test(row, action),
            Part::Thing(thing) => {
                if !self.failed && self.awaits(row, action, thing) && self.covers(row, action, thing) {
                    self.stamp(row, action, thing);
                }
            }
            Part::Section(_) => {}
        }
    }

    /// Whether a stamp on a thing would tell anything: it was touched, and not stamped since. Sections are
    /// few and always stamped.
    fn awaits(&self, row: &TestRow, action: &Action, thing: Thing) -> bool {
        let touched = match thing {
            Thing::Connection(cell) => self.look(&cell, |state| state.last_touched).flatten(),
            Thing::Component(cell) => self.look(&cell, |state| state.last_touched).flatten(),
            Thing::Setting(cell) => self.now(&cell).and_then(|state| state.last_set),
            _ => return true,
        };
        let Some(touched) = touched else { return false };
        let cell = TestCell { test: Wanted { kind: row.kind.clone(), mode: self.mode_of(action) }, thing };
        let stamped = cell.timeline(&self.trace).is_some()
            && self.now(&cell).and_then(|state| state.passed).is_some_and(|passed| passed > touched);
        !stamped
    }

    fn begin_test(&mut self, row: &'static TestRow, action: &Action) {
        let at = action.at.as_ref().and_then(|id| self.trace.plant.connection_named(id));
        let loaded: Vec<SectionCell> =
            self.trace.plant.sections().map(|(s, _)| s).filter(|s| self.loads(row, action, *s)).collect();
        let possible = match row.loading {
            Loading::Running => self.is_running(),
            _ => !loaded.is_empty(),
        };
        self.demand(possible, Demand::WrongState, None, Vec::new());
        self.demand_settled(row, action);
        if row.shut {
            self.demand_shut(&loaded, at);
        }
        if possible {
            self.demand_loaded(row, action);
        }
        if row.kind == TestKind::Function && possible && !self.failed {
            let place = self.place;
            self.change(&ApplianceCell, |state| state.shown_to_work = Some(place));
        }
        self.open_where_taken(action);
        self.pending.loadings.push((self.place, loaded));
    }

    /// Figures are taken only after the appliance has run steadily.
    fn demand_settled(&mut self, row: &TestRow, action: &Action) {
        let needed = match self.mode_of(action) {
            Some(Mode::Max) => row.settle.0,
            Some(Mode::Min) => row.settle.1,
            _ => 0,
        };
        let since = self.now(&ApplianceCell).map_or(0, |state| state.since_second);
        let settled = !self.is_running() || self.second().saturating_sub(since) >= needed * 60;
        self.demand(settled, Demand::NotSettled, None, Vec::new());
    }

    /// The mode of a test: the one named, else the one in which the appliance runs.
    fn mode_of(&self, action: &Action) -> Option<Mode> {
        action.mode.clone().or_else(|| self.now(&ApplianceCell).and_then(|state| state.running.clone()))
    }

    fn demand_shut(&mut self, loaded: &[SectionCell], at: Option<ConnectionCell>) {
        for section in loaded {
            for end in self.open_ends(*section, false).into_iter().filter(|end| Some(*end) != at) {
                let others = vec![Thing::Connection(end)];
                self.demand(false, Demand::NotClosed, Some(Thing::Section(*section)), others);
            }
        }
    }

    /// What the author names is loaded and, for a test by sight, can be seen.
    fn demand_loaded(&mut self, row: &TestRow, action: &Action) {
        let named: Vec<Thing> = action.on.iter().filter_map(|id| self.trace.plant.thing(id)).collect();
        for thing in named {
            let sections = self.sections_of_thing(thing);
            let judged = !sections.is_empty() && row.loading != Loading::Running;
            let loads = !judged || sections.iter().any(|section| self.loads(row, action, *section));
            self.demand(loads, Demand::DoesNotLoad, Some(thing), Vec::new());
            if let (Thing::Connection(connection), true) = (thing, row.by_sight) {
                let reach = self
                    .trace
                    .plant
                    .connection(connection)
                    .map(|plan| plan.reach.clone())
                    .unwrap_or_default();
                let seen = self.can_be_seen(&reach);
                self.demand(seen, Demand::NotVisible, Some(thing), Vec::new());
            }
        }
    }

    fn sections_of_thing(&self, thing: Thing) -> Few<SectionCell> {
        let plant = &self.trace.plant;
        match thing {
            Thing::Section(section) => smallvec![section],
            Thing::Circuit(circuit) => {
                plant.circuit(circuit).map(|c| c.sections.as_slice().into()).unwrap_or_default()
            }
            Thing::Connection(k) => plant.connection(k).and_then(|plan| plan.section).into_iter().collect(),
            _ => Few::new(),
        }
    }

    /// Whether a test loads a section now.
    fn loads(&self, row: &TestRow, action: &Action, section: SectionCell) -> bool {
        let kind = self.trace.plant.row_of(section).map(|kind| &kind.kind);
        let concerned = kind.is_some_and(|kind| row.circuits.is_empty() || row.circuits.contains(kind));
        if !concerned {
            return false;
        }
        let state = self.now(&section);
        let full = state.is_some_and(is_full);
        match row.loading {
            Loading::Dead => !self.is_fed(section),
            Loading::Fed => {
                let charged = state.is_some_and(|s| s.stored.pressure);
                charged || self.supply_reaches(section, self.is_running())
            }
            Loading::FedBehindShutAutomatic => self.is_tested_tight(action, section),
            Loading::UnderPressure => full,
            Loading::UnderPressureHot => full && state.is_some_and(|s| s.stored.heat),
            Loading::Filled => state.is_some_and(|s| s.contents == Contents::Medium),
            Loading::Inert => state.is_some_and(|s| s.stored.pressure && s.contents == Contents::Inert),
            Loading::Vacuum => state.is_some_and(|s| s.contents == Contents::Vacuum),
            Loading::BehindRelief => self.is_behind_full_relief(section),
            Loading::Running => self.is_running() && (!row.gas_by_mixture || self.shows_in_figures(section)),
        }
    }

    /// Whether a leak of this section would show in the figures of the burner: any but of fuel gas, and of that
    /// what is mixed with air ahead of the burner.
    fn shows_in_figures(&self, section: SectionCell) -> bool {
        let plant = &self.trace.plant;
        let is_gas = plant.row_of(section).is_some_and(|row| row.kind == CircuitKind::FuelGas);
        let mixed = plant.circuit_of(section).is_some_and(|circuit| circuit.premix)
            && plant.section(section).is_some_and(|plan| plan.behind_automatic);
        !is_gas || mixed
    }

    fn is_tested_tight(&self, action: &Action, section: SectionCell) -> bool {
        let at = action.at.as_ref().and_then(|id| self.section_at(id));
        !self.is_running()
            && self.supply_reaches(section, false)
            && at.is_none_or(|at| self.joined(at, false).0.contains(&section))
    }

    /// Whether a relief device of a full store under pressure lets into this section.
    fn is_behind_full_relief(&self, section: SectionCell) -> bool {
        let plant = &self.trace.plant;
        let reliefs = plant
            .section(section)
            .into_iter()
            .flat_map(|plan| &plan.isolators)
            .filter_map(|isolator| plant.isolator(*isolator))
            .filter(|plan| plan.handle == Handle::Relief);
        let other_sides = reliefs.filter_map(|plan| plan.between).filter_map(|(a, b)| match (a, b) {
            (Side::Section(a), Side::Section(b)) => Some(if a == section { b } else { a }),
            _ => None,
        });
        let empty = plant.section(section).is_some_and(|plan| plan.normally_empty);
        let full = |side: SectionCell| self.now(&side).is_some_and(is_full);
        empty && other_sides.into_iter().any(full)
    }

    fn section_at(&self, id: &Id) -> Option<SectionCell> {
        self.trace.plant.thing(id).and_then(|thing| self.sections_of_thing(thing).first().copied())
    }

    /// Whether a supply reaches a section, with automatic isolators as given.
    fn supply_reaches(&self, section: SectionCell, automatic_open: bool) -> bool {
        self.joined(section, automatic_open).1
    }

    /// Sections joined to one, and whether a supply is among what they reach.
    fn joined(&self, from: SectionCell, automatic_open: bool) -> (Few<SectionCell>, bool) {
        let mut group: Few<SectionCell> = smallvec![from];
        let mut supplied = false;
        let mut next = 0;
        while let Some(here) = group.get(next).copied() {
            next += 1;
            for isolator in self.trace.plant.section(here).into_iter().flat_map(|s| &s.isolators) {
                let Some(plan) = self.trace.plant.isolator(*isolator) else { continue };
                let open = self.is_open_for_loading(plan, *isolator, automatic_open);
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

    fn is_open_for_loading(
        &self,
        plan: &IsolatorPlan,
        isolator: super::IsolatorCell,
        automatic_open: bool,
    ) -> bool {
        match plan.handle {
            Handle::Automatic => automatic_open,
            Handle::Relief => false,
            Handle::None => true,
            _ => self.now(&isolator).is_some_and(|state| state.open),
        }
    }

    /// Whether a test covers a thing now.
    fn covers(&self, row: &TestRow, action: &Action, thing: Thing) -> bool {
        self.concerns(row, thing)
            && match thing {
                Thing::Connection(k) => self.covers_joint(row, action, k),
                // Every test stamps the sections that it loads: so much was tested before a joint was opened.
                Thing::Section(section) => self.loads(row, action, section),
                Thing::Component(component) => self.covers_part(row, action, component),
                Thing::Setting(_) => self.is_running(),
                _ => false,
            }
    }

    fn covers_joint(&self, row: &TestRow, action: &Action, connection: ConnectionCell) -> bool {
        let Some(plan) = self.trace.plant.connection(connection) else { return false };
        let at = action.at.as_ref().and_then(|id| self.trace.plant.connection_named(id));
        plan.section.is_some_and(|section| self.loads(row, action, section))
            && self.look(&connection, ConnectionState::is_made) == Some(true)
            && self.closing_item(connection).is_none()
            && !(row.not_at && at == Some(connection))
            && (!row.by_sight || self.can_be_seen(&plan.reach))
    }

    fn covers_part(&self, row: &TestRow, action: &Action, component: ComponentCell) -> bool {
        let Some(plan) = self.trace.plant.component(component) else { return false };
        let sections = || plan.connections.iter().filter_map(|k| self.trace.plant.connection(*k)?.section);
        let loaded = row.loading == Loading::Running && self.is_running()
            || sections().any(|section| self.loads(row, action, section));
        loaded && self.is_fitted(component)
    }

    pub(super) fn can_be_seen(&self, reach: &[ComponentCell]) -> bool {
        reach.iter().all(|c| self.now(c).is_some_and(|s| s.whereabouts != Whereabouts::Fitted))
    }

    /// What the author's names leave in: what is named, what belongs to a named part, what lies in a named
    /// section.
    fn named_for_test(&self, action: &Action) -> BTreeSet<Thing> {
        let plant = &self.trace.plant;
        let mut things = BTreeSet::new();
        for named in action.on.iter().filter_map(|id| plant.thing(id)) {
            things.insert(named);
            if let Thing::Component(part) = named
                && let Some(plan) = plant.component(part)
            {
                things.extend(plan.connections.iter().map(|cell| Thing::Connection(*cell)));
                things.extend(plan.settings.iter().map(|cell| Thing::Setting(*cell)));
            }
            for section in self.sections_of_area(named) {
                things.insert(Thing::Section(section));
                let here = plant.section(section).map(|plan| plan.connections.as_slice());
                things.extend(here.unwrap_or_default().iter().map(|cell| Thing::Connection(*cell)));
            }
        }
        things
    }

    /// The sections that a name stands for as an area; a joint is no area.
    fn sections_of_area(&self, named: Thing) -> Few<SectionCell> {
        match named {
            Thing::Section(_) | Thing::Circuit(_) => self.sections_of_thing(named),
            _ => Few::new(),
        }
    }

    fn stamp(&mut self, row: &TestRow, action: &Action, thing: Thing) {
        let mode = self.mode_of(action);
        let loaded = self.sections_of_thing(thing);
        let place = self.place;
        let modes = [None, mode];
        for (i, mode) in modes.into_iter().enumerate() {
            if i == 1 && mode.is_none() {
                continue;
            }
            let cell = TestCell { test: Wanted { kind: row.kind.clone(), mode }, thing };
            self.stamp_cell(&cell, place, &loaded);
        }
    }

    fn stamp_cell(&mut self, cell: &TestCell, place: Place, loaded: &[SectionCell]) {
        let state = super::TestState { passed: Some(place), loaded: loaded.into() };
        self.pending.put(cell, state);
    }

    /// When a connection was last touched, and the tests that it lacks since; none if it is apart or was
    /// not touched.
    pub(super) fn lacking(&self, connection: ConnectionCell) -> Option<(Place, Vec<TestDemand>)> {
        let (touched, made) = self.look(&connection, |state| (state.last_touched, state.is_made()))?;
        let touched = touched.filter(|_| made)?;
        let plan = self.trace.plant.connection(connection)?;
        let demands = plan.tests.iter().copied();
        let thing = Thing::Connection(connection);
        Some((touched, demands.filter(|any_of| !self.has_passed(any_of, thing, touched)).collect()))
    }

    /// Touched joints and ports of a section with the tests that they lack, in the order of the map.
    pub(super) fn lacking_in(
        &mut self,
        section: SectionCell,
    ) -> Vec<(ConnectionCell, Place, Vec<TestDemand>)> {
        let mut touched = std::mem::take(&mut self.touched);
        let plant = &self.trace.plant;
        let who = For::Due(section);
        let waiting = touched.waiting(who.clone(), |thing| match thing {
            Thing::Connection(cell) => plant.connection(cell).is_some_and(|k| k.section == Some(section)),
            _ => false,
        });
        let mut lacking = Vec::new();
        for thing in waiting {
            let Thing::Connection(cell) = thing else { continue };
            match self.lacking(cell) {
                Some((since, demands)) if !demands.is_empty() => lacking.push((cell, since, demands)),
                _ => {
                    let way = self.trace.run.way().clone();
                    let none = |machine: &Self| machine.lacking(cell).is_none_or(|(_, d)| d.is_empty());
                    // What the action in hand did itself may still be dropped, if it has to be tried again.
                    let is_written = self.pending.get(&cell).is_none();
                    if is_written && self.guard == way && self.on_all(&way, none) == Some(true) {
                        touched.is_done(&who, &[thing]);
                    }
                }
            }
        }
        self.touched = touched;
        lacking
    }

    /// Whether one of these tests of a thing passed after a place.
    pub(super) fn has_passed(&self, any_of: TestDemand, thing: Thing, after: Place) -> bool {
        any_of.iter().any(|wanted| {
            // A thing never tested has no timeline, and the question does not come up.
            self.trace.tests.get(wanted, thing).is_some()
                && self
                    .now(&TestCell { test: wanted.clone(), thing })
                    .and_then(|state| state.passed)
                    .is_some_and(|passed| passed > after)
        })
    }

    /// The look that a joint still needs by a test that is due before the appliance starts.
    pub(super) fn lacks_a_look(&self, connection: ConnectionCell) -> Option<(Place, TestDemand)> {
        let by_sight = |any_of: &TestDemand| {
            any_of.iter().all(|wanted| {
                test_row(&wanted.kind).is_some_and(|row| row.by_sight && row.due <= Due::BeforeStart)
            })
        };
        let (touched, lacking) = self.lacking(connection)?;
        lacking.into_iter().find(by_sight).map(|any_of| (touched, any_of))
    }
}

/// Whether a kind of test says anything of a part that does this.
pub(super) fn is_of_role(kind: &TestKind, role: Option<&Role>) -> bool {
    match kind {
        TestKind::Function => true,
        TestKind::EarthContinuity | TestKind::Insulation => role == Some(&Role::Element),
        TestKind::Combustion => matches!(role, Some(Role::Burner | Role::Fan | Role::GasValve)),
        TestKind::ReliefLever => role == Some(&Role::Relief),
        _ => false,
    }
}

/// Whether a section is under the pressure of its medium, with air in it or without.
fn is_full(section: &SectionState) -> bool {
    section.stored.pressure && matches!(section.contents, Contents::Medium | Contents::Mixed)
}
