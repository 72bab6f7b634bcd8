//! What is counted beside every step, worked out from what changes: looking at everything after every step takes a
//! time that grows with the square of the length.

use super::apart::{component_count, connection_count, temporary_count};
use super::lanes::is_blanked;
use crate::simulate::{Cell, ConnectionCell, Place, SectionCell, TemporaryCell, Timeline, Trace};
use std::collections::BTreeMap;

/// A count at the start of a run and after each of its executions.
pub(super) struct Along {
    /// What each execution adds; the first is the count at the start.
    added: Vec<i64>,
}

impl Along {
    fn new(trace: &Trace) -> Self {
        Self { added: vec![0; trace.run().steps().len() + 1] }
    }

    /// Adds what one thing counts, which changes in these executions alone.
    fn add(&mut self, executions: &[usize], count: impl Fn(Place) -> u32) {
        let mut before = i64::from(count(Place::START));
        if let Some(first) = self.added.first_mut() {
            *first += before;
        }
        for execution in executions {
            let now = i64::from(count(Place::after(*execution)));
            if let Some(added) = self.added.get_mut(execution + 1) {
                *added += now - before;
            }
            before = now;
        }
    }

    /// The count at the start, then after each execution.
    pub(super) fn counts(&self) -> impl Iterator<Item = u32> {
        self.added.iter().scan(0_i64, |count, added| {
            *count += added;
            Some(u32::try_from(*count).unwrap_or(u32::MAX))
        })
    }
}

/// The executions in which something is written of a cell, in order.
fn executions_of<C: Cell>(trace: &Trace, cell: &C) -> Vec<usize> {
    let entries = cell.timeline(trace).into_iter().flat_map(Timeline::entries);
    let mut executions: Vec<usize> = entries.filter_map(|entry| entry.since.execution()).collect();
    executions.dedup();
    executions
}

/// How much is apart, as [`n_apart`](super::apart::n_apart).
pub(super) fn apart_along(trace: &Trace) -> Along {
    let mut along = Along::new(trace);
    for (cell, _) in trace.plant().connections() {
        along.add(&executions_of(trace, &cell), |place| connection_count(trace, cell, place));
    }
    for (cell, _) in trace.plant().components() {
        along.add(&executions_of(trace, &cell), |place| component_count(trace, cell, place));
    }
    for (cell, plan) in trace.plant().temporaries() {
        along.add(&executions_of(trace, &cell), |place| temporary_count(trace, cell, plan.initially, place));
    }
    along
}

/// How many joints of some sections are open, and how many of those nothing blanks off.
pub(super) struct Joints {
    pub(super) open: Along,
    pub(super) bare: Along,
}

/// Those of each of some lists of sections.
pub(super) fn joints_along(trace: &Trace, lanes: &[Vec<SectionCell>]) -> Vec<Joints> {
    let mut closers: BTreeMap<ConnectionCell, Vec<TemporaryCell>> = BTreeMap::new();
    for (cell, plan) in trace.plant().temporaries() {
        if let Some(connection) = plan.on.filter(|_| plan.closes) {
            closers.entry(connection).or_default().push(cell);
        }
    }
    let mut joints: Vec<Joints> =
        lanes.iter().map(|_| Joints { open: Along::new(trace), bare: Along::new(trace) }).collect();
    for (cell, plan) in trace.plant().connections() {
        let Some(section) = plan.section else { continue };
        let closers = closers.get(&cell).map(Vec::as_slice).unwrap_or_default();
        let mut executions = executions_of(trace, &cell);
        let is_open = |place| trace.at(&cell, place).is_some_and(|state| !state.is_made());
        // A section is of one circuit.
        let lane = lanes.iter().position(|sections| sections.contains(&section));
        let Some(joints) = lane.and_then(|lane| joints.get_mut(lane)) else { continue };
        joints.open.add(&executions, |place| is_open(place).into());
        executions.extend(closers.iter().flat_map(|closer| executions_of(trace, closer)));
        executions.sort_unstable();
        executions.dedup();
        let is_bare = |place| is_open(place) && !is_blanked(trace, closers, place);
        joints.bare.add(&executions, |place| is_bare(place).into());
    }
    joints
}
