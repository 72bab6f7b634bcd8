//! What an action writes before it is known whether it depends on a question.
//!
//! An action is tried on the ways of its guard. If it looks at a cell that differs between them, what it
//! wrote is dropped and it is tried again on each answer. What it wrote in the end goes into the timelines:
//! once if all ways agree, else once a way. So only the questions that touch a cell multiply.

use super::plant::{
    ComponentCell, ConnectionCell, IsolatorCell, SealCell, SectionCell, SettingCell, TemporaryCell,
};
use super::state::{
    ApplianceState, ComponentState, ConnectionState, IsolatorState, SealState, SectionState, SettingState,
    SupplyState, TemporaryState, TestState,
};
use super::timeline::Timeline;
use super::trace::{ApplianceCell, Cell, ClockCell, SupplyCell, TestCell, Trace};
use super::unmet::{CannotJudge, Unmet};
use super::{Guard, Place};

/// Changes not yet written, a list a kind of cell.
#[derive(Clone, Debug, Default)]
pub(super) struct Pending {
    appliance: Vec<(ApplianceCell, ApplianceState)>,
    clock: Vec<(ClockCell, u32)>,
    sections: Vec<(SectionCell, SectionState)>,
    supplies: Vec<(SupplyCell, SupplyState)>,
    isolators: Vec<(IsolatorCell, IsolatorState)>,
    connections: Vec<(ConnectionCell, ConnectionState)>,
    components: Vec<(ComponentCell, ComponentState)>,
    seals: Vec<(SealCell, SealState)>,
    temporaries: Vec<(TemporaryCell, TemporaryState)>,
    settings: Vec<(SettingCell, SettingState)>,
    tests: Vec<(TestCell, TestState)>,
    pub(super) unmet: Vec<Unmet>,
    pub(super) cannot_judge: Vec<CannotJudge>,
    pub(super) loadings: Vec<(Place, Vec<SectionCell>)>,
}

/// A cell that actions write.
pub(super) trait Written: Cell + Clone + PartialEq {
    fn list(pending: &Pending) -> &Vec<(Self, Self::State)>;
    fn list_mut(pending: &mut Pending) -> &mut Vec<(Self, Self::State)>;
    fn line_mut<'t>(&self, trace: &'t mut Trace) -> Option<&'t mut Timeline<Self::State>>;
}

impl Pending {
    /// What is pending for a cell.
    pub(super) fn get<C: Written>(&self, cell: &C) -> Option<&C::State> {
        C::list(self).iter().find(|(known, _)| known == cell).map(|(_, state)| state)
    }

    pub(super) fn put<C: Written>(&mut self, cell: &C, state: C::State) {
        let list = C::list_mut(self);
        match list.iter_mut().find(|(known, _)| known == cell) {
            Some((_, known)) => *known = state,
            None => list.push((cell.clone(), state)),
        }
    }
}

/// Writes what the ways of a guard left, merging what all of them agree on.
pub(super) fn write(trace: &mut Trace, place: Place, base: &Guard, ways: Vec<(Guard, Pending)>) {
    write_cells::<ApplianceCell>(trace, place, base, &ways);
    write_cells::<ClockCell>(trace, place, base, &ways);
    write_cells::<SectionCell>(trace, place, base, &ways);
    write_cells::<SupplyCell>(trace, place, base, &ways);
    write_cells::<IsolatorCell>(trace, place, base, &ways);
    write_cells::<ConnectionCell>(trace, place, base, &ways);
    write_cells::<ComponentCell>(trace, place, base, &ways);
    write_cells::<SealCell>(trace, place, base, &ways);
    write_cells::<TemporaryCell>(trace, place, base, &ways);
    write_cells::<SettingCell>(trace, place, base, &ways);
    write_cells::<TestCell>(trace, place, base, &ways);
    let n_ways = ways.len();
    let mut met: Vec<(Unmet, usize)> = Vec::new();
    for (guard, pending) in ways {
        for unmet in pending.unmet {
            let same = |known: &&mut (Unmet, usize)| {
                known.0.reason == unmet.reason && known.0.since == unmet.since
            };
            match met.iter_mut().find(same) {
                Some((_, count)) => *count += 1,
                None => met.push((Unmet { guard: guard.clone(), ..unmet }, 1)),
            }
        }
        for unknown in pending.cannot_judge {
            if !trace.cannot_judge.contains(&unknown) {
                trace.cannot_judge.push(unknown);
            }
        }
        trace.loadings.extend(pending.loadings);
    }
    for (mut unmet, count) in met {
        if count == n_ways {
            unmet.guard = base.clone();
        }
        trace.unmet.push(unmet);
    }
}

fn write_cells<C: Written>(trace: &mut Trace, place: Place, base: &Guard, ways: &[(Guard, Pending)])
where
    C::State: Clone,
{
    if let [(_, only)] = ways {
        for (cell, state) in C::list(only) {
            if let Some(line) = cell.line_mut(trace) {
                line.push(place, base.clone(), state.clone());
            }
        }
        return;
    }
    let mut done: Vec<&C> = Vec::new();
    for (cell, state) in ways.iter().flat_map(|(_, pending)| C::list(pending)) {
        if done.contains(&cell) {
            continue;
        }
        done.push(cell);
        let agreed = ways.iter().all(|(_, pending)| pending.get(cell) == Some(state));
        let Some(line) = cell.line_mut(trace) else { continue };
        if agreed {
            line.push(place, base.clone(), state.clone());
            continue;
        }
        for (guard, pending) in ways {
            if let Some(state) = pending.get(cell) {
                line.push(place, guard.clone(), state.clone());
            }
        }
    }
}

macro_rules! written {
    ($($cell:ident in $field:ident;)*) => {$(
        impl Written for $cell {
            fn list(pending: &Pending) -> &Vec<(Self, Self::State)> {
                &pending.$field
            }
            fn list_mut(pending: &mut Pending) -> &mut Vec<(Self, Self::State)> {
                &mut pending.$field
            }
            fn line_mut<'t>(&self, trace: &'t mut Trace) -> Option<&'t mut Timeline<Self::State>> {
                trace.$field.get_mut(self.index())
            }
        }
    )*};
}

written! {
    SectionCell in sections;
    IsolatorCell in isolators;
    ConnectionCell in connections;
    ComponentCell in components;
    SealCell in seals;
    TemporaryCell in temporaries;
    SettingCell in settings;
}

impl Written for SupplyCell {
    fn list(pending: &Pending) -> &Vec<(Self, Self::State)> {
        &pending.supplies
    }
    fn list_mut(pending: &mut Pending) -> &mut Vec<(Self, Self::State)> {
        &mut pending.supplies
    }
    fn line_mut<'t>(&self, trace: &'t mut Trace) -> Option<&'t mut Timeline<Self::State>> {
        trace.supplies.get_mut(self.0.index())
    }
}

impl Written for ApplianceCell {
    fn list(pending: &Pending) -> &Vec<(Self, Self::State)> {
        &pending.appliance
    }
    fn list_mut(pending: &mut Pending) -> &mut Vec<(Self, Self::State)> {
        &mut pending.appliance
    }
    fn line_mut<'t>(&self, trace: &'t mut Trace) -> Option<&'t mut Timeline<Self::State>> {
        Some(&mut trace.appliance)
    }
}

impl Written for ClockCell {
    fn list(pending: &Pending) -> &Vec<(Self, Self::State)> {
        &pending.clock
    }
    fn list_mut(pending: &mut Pending) -> &mut Vec<(Self, Self::State)> {
        &mut pending.clock
    }
    fn line_mut<'t>(&self, trace: &'t mut Trace) -> Option<&'t mut Timeline<Self::State>> {
        Some(&mut trace.clock)
    }
}

impl Written for TestCell {
    fn list(pending: &Pending) -> &Vec<(Self, Self::State)> {
        &pending.tests
    }
    fn list_mut(pending: &mut Pending) -> &mut Vec<(Self, Self::State)> {
        &mut pending.tests
    }
    fn line_mut<'t>(&self, trace: &'t mut Trace) -> Option<&'t mut Timeline<Self::State>> {
        let fresh = || Timeline::new(TestState { passed: None, loaded: Vec::new() });
        Some(trace.tests.entry(self.clone()).or_insert_with(fresh))
    }
}
