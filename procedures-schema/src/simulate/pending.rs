//! What an action writes before it is known whether it depends on a question.
//!
//! An action is tried on the ways of its guard. If it looks at a cell that differs between them, what it
//! wrote is dropped and it is tried again on each answer. What it wrote in the end goes into the timelines,
//! each cell with the answers that decide its state. So only the questions that touch a cell multiply.

use super::plant::{
    ComponentCell, ConnectionCell, IsolatorCell, SealCell, SectionCell, SettingCell, TemporaryCell, Thing,
};
use super::state::{
    ApplianceState, ComponentState, ConnectionState, IsolatorState, SealState, SectionState, SettingState,
    SupplyState, TemporaryState, TestState,
};
use super::timeline::Timeline;
use super::trace::{ApplianceCell, Cell, ClockCell, ProofTaken, SupplyCell, TestCell, Trace};
use super::unmet::{CannotJudge, Unmet};
use super::{Guard, Place, QuestionIndex};

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
    pub(super) proofs: Vec<ProofTaken>,
}

/// A cell that actions write.
pub(super) trait Written: Cell + Clone + PartialEq {
    fn list(pending: &Pending) -> &Vec<(Self, Self::State)>;
    fn list_mut(pending: &mut Pending) -> &mut Vec<(Self, Self::State)>;
    fn line_mut<'t>(&self, trace: &'t mut Trace) -> Option<&'t mut Timeline<Self::State>>;
    /// The thing that a test may stamp once it was changed.
    fn testable(&self) -> Option<Thing> {
        None
    }
}

impl Pending {
    /// What is pending for a cell.
    pub(super) fn get<C: Written>(&self, cell: &C) -> Option<&C::State> {
        C::list(self).iter().find(|(known, _)| known == cell).map(|(_, state)| state)
    }

    /// Drops what is pending; the room for it stays.
    pub(super) fn clear(&mut self) {
        self.appliance.clear();
        self.clock.clear();
        self.sections.clear();
        self.supplies.clear();
        self.isolators.clear();
        self.connections.clear();
        self.components.clear();
        self.seals.clear();
        self.temporaries.clear();
        self.settings.clear();
        self.tests.clear();
        self.unmet.clear();
        self.cannot_judge.clear();
        self.loadings.clear();
        self.proofs.clear();
    }

    pub(super) fn put<C: Written>(&mut self, cell: &C, state: C::State) {
        let list = C::list_mut(self);
        match list.iter_mut().find(|(known, _)| known == cell) {
            Some((_, known)) => *known = state,
            None => list.push((cell.clone(), state)),
        }
    }
}

/// Writes what an action left that depends on no question, and empties the lists for the next one.
pub(super) fn write_alone(trace: &mut Trace, place: Place, guard: &Guard, pending: &mut Pending) {
    write_all::<ApplianceCell>(trace, place, guard, pending);
    write_all::<ClockCell>(trace, place, guard, pending);
    write_all::<SectionCell>(trace, place, guard, pending);
    write_all::<SupplyCell>(trace, place, guard, pending);
    write_all::<IsolatorCell>(trace, place, guard, pending);
    write_all::<ConnectionCell>(trace, place, guard, pending);
    write_all::<ComponentCell>(trace, place, guard, pending);
    write_all::<SealCell>(trace, place, guard, pending);
    write_all::<TemporaryCell>(trace, place, guard, pending);
    write_all::<SettingCell>(trace, place, guard, pending);
    write_all::<TestCell>(trace, place, guard, pending);
    let n_known = trace.unmet.len();
    for unmet in pending.unmet.drain(..) {
        if !trace.unmet.iter().skip(n_known).any(|known| is_same(known, &unmet)) {
            trace.unmet.push(Unmet { guard: guard.clone(), ..unmet });
        }
    }
    note_unknown(trace, &mut pending.cannot_judge);
    trace.loadings.append(&mut pending.loadings);
    trace.proofs.append(&mut pending.proofs);
}

fn write_all<C: Written>(trace: &mut Trace, place: Place, guard: &Guard, pending: &mut Pending) {
    for (cell, state) in C::list_mut(pending).drain(..) {
        if let Some(line) = cell.line_mut(trace) {
            line.push(place, guard.clone(), state);
        }
    }
}

/// What cannot be judged is told once.
fn note_unknown(trace: &mut Trace, unknown: &mut Vec<CannotJudge>) {
    for unknown in unknown.drain(..) {
        if !trace.cannot_judge.contains(&unknown) {
            trace.cannot_judge.push(unknown);
        }
    }
}

fn is_same(a: &Unmet, b: &Unmet) -> bool {
    a.reason == b.reason && a.since == b.since
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
    let mut met: Vec<(Guard, Vec<Unmet>)> = Vec::new();
    for (guard, mut pending) in ways {
        note_unknown(trace, &mut pending.cannot_judge);
        trace.loadings.extend(pending.loadings);
        trace.proofs.extend(pending.proofs);
        met.push((guard, pending.unmet));
    }
    write_unmet(trace, base, &met);
}

/// An unmet demand is written once for each set of answers that decides it.
fn write_unmet(trace: &mut Trace, base: &Guard, ways: &[(Guard, Vec<Unmet>)]) {
    let mut done: Vec<&Unmet> = Vec::new();
    for unmet in ways.iter().flat_map(|(_, met)| met) {
        if done.iter().any(|known| is_same(known, unmet)) {
            continue;
        }
        done.push(unmet);
        let met = ways.iter().map(|(guard, met)| (guard, met.iter().any(|other| is_same(other, unmet))));
        for (guard, is_met) in deciding(base, &met.collect::<Vec<_>>()) {
            if is_met {
                trace.unmet.push(Unmet { guard, ..unmet.clone() });
            }
        }
    }
}

fn write_cells<C: Written>(trace: &mut Trace, place: Place, base: &Guard, ways: &[(Guard, Pending)])
where
    C::State: Clone,
{
    let mut done: Vec<&C> = Vec::new();
    for (cell, _) in ways.iter().flat_map(|(_, pending)| C::list(pending)) {
        if done.contains(&cell) {
            continue;
        }
        done.push(cell);
        let states: Vec<(&Guard, Option<&C::State>)> =
            ways.iter().map(|(guard, pending)| (guard, pending.get(cell))).collect();
        let Some(line) = cell.line_mut(trace) else { continue };
        for (guard, state) in deciding(base, &states) {
            if let Some(state) = state {
                line.push(place, guard, state.clone());
            }
        }
    }
}

/// The values of ways with guards that ask only what decides between them.
///
/// An action may depend on several questions through several cells; each cell keeps only its own.
fn deciding<V: PartialEq + Copy>(base: &Guard, ways: &[(&Guard, V)]) -> Vec<(Guard, V)> {
    let mut kept: Vec<(Guard, V)> = ways.iter().map(|(guard, value)| ((*guard).clone(), *value)).collect();
    let mut questions: Vec<QuestionIndex> = ways
        .iter()
        .flat_map(|(guard, _)| guard.answers())
        .map(|(question, _)| *question)
        .filter(|question| base.answer(*question).is_none())
        .collect();
    questions.sort_unstable();
    questions.dedup();
    for question in questions {
        let without: Vec<(Guard, V)> =
            kept.iter().map(|(guard, value)| (guard.without(question), *value)).collect();
        let agree = without.iter().enumerate().all(|(i, (guard, value))| {
            let later = without.iter().skip(i + 1);
            later.into_iter().all(|(other, known)| value == known || !guard.is_compatible(other))
        });
        if agree {
            kept.clear();
            for one in without {
                if !kept.contains(&one) {
                    kept.push(one);
                }
            }
        }
    }
    kept
}

macro_rules! written {
    ($($cell:ident in $field:ident $(, testable as $thing:ident)?;)*) => {$(
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
            $(fn testable(&self) -> Option<Thing> {
                Some(Thing::$thing(*self))
            })?
        }
    )*};
}

written! {
    SectionCell in sections;
    IsolatorCell in isolators;
    ConnectionCell in connections, testable as Connection;
    ComponentCell in components, testable as Component;
    SealCell in seals;
    TemporaryCell in temporaries;
    SettingCell in settings, testable as Setting;
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
        trace.tests.line_mut(self)
    }
}
