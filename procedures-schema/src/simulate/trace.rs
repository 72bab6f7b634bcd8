//! The trace: what every cell was at every place of a run, on every way.

use super::kinds::Wanted;
use super::state::{
    ApplianceState, ComponentState, ConnectionState, IsolatorState, SealState, SectionState, SettingState,
    SupplyState, TemporaryState, TestState,
};
use super::test_lines::TestLines;
use super::{
    CannotJudge, ComponentCell, ConnectionCell, Entry, Guard, IsolatorCell, Place, Plant, Run, SealCell,
    SectionCell, SettingCell, TemporaryCell, TestDemand, Thing, Timeline, Unmet,
};
use std::sync::Arc;

/// A thing with a timeline of its own.
pub trait Cell: 'static {
    /// Its states.
    type State: PartialEq;

    /// Its timeline; none if the cell comes from another map.
    fn timeline<'t>(&self, trace: &'t Trace) -> Option<&'t Timeline<Self::State>>;
}

/// The appliance as a whole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ApplianceCell;

/// The seconds of all waits so far; hands-on time is not counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ClockCell;

/// A section as seen from its supplies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SupplyCell(
    /// The section.
    pub SectionCell,
);

/// One test of one thing.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct TestCell {
    /// The test.
    pub test: Wanted,
    /// The thing tested.
    pub thing: Thing,
}

/// A proof as it was taken: the state of a section says what steps say, even where they prove what is fed.
#[derive(Clone, Debug)]
pub(super) struct ProofTaken {
    pub(super) place: Place,
    pub(super) section: SectionCell,
    /// Whether zero could be shown: nothing fed the section, and nothing was left in it.
    pub(super) shows: bool,
}

/// What happened in a run.
#[derive(Clone, Debug)]
pub struct Trace {
    /// Shared with whoever looks at it while the machine runs on.
    pub(super) plant: Arc<Plant>,
    pub(super) run: Run,
    pub(super) appliance: Timeline<ApplianceState>,
    pub(super) clock: Timeline<u32>,
    pub(super) sections: Vec<Timeline<SectionState>>,
    pub(super) supplies: Vec<Timeline<SupplyState>>,
    pub(super) isolators: Vec<Timeline<IsolatorState>>,
    pub(super) connections: Vec<Timeline<ConnectionState>>,
    pub(super) components: Vec<Timeline<ComponentState>>,
    pub(super) seals: Vec<Timeline<SealState>>,
    pub(super) temporaries: Vec<Timeline<TemporaryState>>,
    pub(super) settings: Vec<Timeline<SettingState>>,
    pub(super) tests: TestLines,
    pub(super) loadings: Vec<(Place, Vec<SectionCell>)>,
    pub(super) proofs: Vec<ProofTaken>,
    pub(super) unmet: Vec<Unmet>,
    pub(super) cannot_judge: Vec<CannotJudge>,
}

impl Trace {
    /// The state of a cell at a place. If it differs between ways, one of them: [`Trace::states`] has all.
    pub fn at<C: Cell>(&self, cell: &C, place: Place) -> Option<&C::State> {
        self.entry(cell, place).map(|entry| &entry.state)
    }

    /// As [`Trace::at`], with since when the state holds.
    pub fn entry<C: Cell>(&self, cell: &C, place: Place) -> Option<&Entry<C::State>> {
        cell.timeline(self).map(|line| line.find(place, self.run.way()).entry())
    }

    /// Every state that a cell can have at a place, with the ways on which it has it.
    pub fn states<C: Cell>(&self, cell: &C, place: Place) -> Vec<&Entry<C::State>> {
        let line = cell.timeline(self);
        let mut states = line.map(|line| line.at(place)).unwrap_or_default();
        states.retain(|entry| entry.guard.is_compatible(self.run.way()));
        states
    }

    /// The state of a cell at a place on one way.
    pub fn on_way<C: Cell>(&self, cell: &C, place: Place, way: &Guard) -> Option<&C::State> {
        cell.timeline(self).map(|line| &line.find(place, way).entry().state)
    }

    /// The map with its things numbered.
    pub fn plant(&self) -> &Plant {
        &self.plant
    }

    /// The run.
    pub fn run(&self) -> &Run {
        &self.run
    }

    /// Every unmet demand, in the order of the run.
    pub fn unmet(&self) -> &[Unmet] {
        &self.unmet
    }

    /// What could not be simulated.
    pub fn cannot_judge(&self) -> &[CannotJudge] {
        &self.cannot_judge
    }

    /// The tests that a touched connection still lacks at a place; each needs one of its kinds.
    pub fn tests_lacking(&self, connection: ConnectionCell, place: Place) -> Vec<TestDemand> {
        let touched = self.at(&connection, place).and_then(|state| state.last_touched);
        let (Some(touched), Some(plan)) = (touched, self.plant.connection(connection)) else {
            return Vec::new();
        };
        let demands = plan.tests.iter().copied();
        demands
            .filter(|any_of| !self.passed_between(any_of, Thing::Connection(connection), touched, place))
            .collect()
    }

    /// Whether one of these tests of a thing passed after one place and by another.
    pub fn passed_between(&self, any_of: TestDemand, thing: Thing, after: Place, by: Place) -> bool {
        any_of.iter().any(|wanted| {
            let cell = TestCell { test: wanted.clone(), thing };
            self.at(&cell, by).and_then(|state| state.passed).is_some_and(|passed| passed > after)
        })
    }

    /// Whether the last proof of a section before a place showed what it says: none could be shown while the
    /// section was fed, or held pressure.
    pub fn is_shown(&self, section: SectionCell, place: Place) -> bool {
        let mut taken =
            self.proofs.iter().rev().filter(|taken| taken.section == section && taken.place <= place);
        let Some(last) = taken.next() else { return true };
        last.shows && taken.take_while(|taken| taken.place == last.place).all(|taken| taken.shows)
    }

    /// The sections that tests loaded in an execution.
    pub fn loaded_in(&self, execution: usize) -> impl Iterator<Item = SectionCell> {
        let first = self.loadings.partition_point(|(place, _)| *place < Place::before(execution));
        self.loadings
            .get(first..)
            .unwrap_or_default()
            .iter()
            .take_while(move |(place, _)| place.execution() == Some(execution))
            .flat_map(|(_, sections)| sections.iter().copied())
    }
}

impl Cell for ApplianceCell {
    type State = ApplianceState;
    fn timeline<'t>(&self, trace: &'t Trace) -> Option<&'t Timeline<ApplianceState>> {
        Some(&trace.appliance)
    }
}

impl Cell for ClockCell {
    type State = u32;
    fn timeline<'t>(&self, trace: &'t Trace) -> Option<&'t Timeline<u32>> {
        Some(&trace.clock)
    }
}

impl Cell for SupplyCell {
    type State = SupplyState;
    fn timeline<'t>(&self, trace: &'t Trace) -> Option<&'t Timeline<SupplyState>> {
        trace.supplies.get(self.0.index())
    }
}

impl Cell for TestCell {
    type State = TestState;
    fn timeline<'t>(&self, trace: &'t Trace) -> Option<&'t Timeline<TestState>> {
        trace.tests.get(&self.test, self.thing)
    }
}

macro_rules! cells {
    ($($cell:ident: $state:ident in $field:ident;)*) => {$(
        impl Cell for $cell {
            type State = $state;
            fn timeline<'t>(&self, trace: &'t Trace) -> Option<&'t Timeline<$state>> {
                trace.$field.get(self.index())
            }
        }
    )*};
}

cells! {
    SectionCell: SectionState in sections;
    IsolatorCell: IsolatorState in isolators;
    ConnectionCell: ConnectionState in connections;
    ComponentCell: ComponentState in components;
    SealCell: SealState in seals;
    TemporaryCell: TemporaryState in temporaries;
    SettingCell: SettingState in settings;
}
