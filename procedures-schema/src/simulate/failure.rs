//! After a failed test: the steps that follow it, run once from the state at the failure.
//!
//! They must come back to where a pass would be, so that failures do not multiply ways: the same isolators,
//! contents, counts, parts, items, settings and the same things tested. Proofs may differ.

use super::kinds::Wanted;
use super::machine::Machine;
use super::plant::Thing;
use super::timeline::Timeline;
use super::unmet::Demand;
use super::{Guard, Place, Trace};
use crate::model::{Action, OnFail};

impl Machine<'_> {
    /// Runs the steps that follow a failure of a test, from the state before it, and compares.
    pub(super) fn look_after_failure(
        &mut self,
        before: Box<Self>,
        action: &Action,
        on_fail: &OnFail,
        guard: &Guard,
    ) {
        let mut failed = *before;
        let n_unmet = failed.trace.unmet.len();
        failed.after_failure = true;
        failed.failed = true;
        failed.place = self.place;
        failed.perform(action, guard);
        failed.failed = false;
        for step in &on_fail.steps {
            failed.people = step.people.unwrap_or(1);
            for action in &step.actions {
                failed.place = failed.place.next_behind();
                failed.perform(action, guard);
            }
        }
        let new = failed.trace.unmet.split_off(n_unmet.min(failed.trace.unmet.len()));
        // What the failed test itself finds, the passing one has found too.
        self.trace.unmet.extend(new.into_iter().filter(|unmet| unmet.place != self.place));
        let known = self.trace.cannot_judge.len();
        self.trace.cannot_judge.extend(failed.trace.cannot_judge.into_iter().skip(known));
        failed.trace.cannot_judge = Vec::new();
        let differs = difference(&self.trace, &failed.trace, self.place, failed.place, guard);
        if let Some(thing) = differs {
            self.on_ways(guard, |machine| {
                machine.demand(false, Demand::WayBackDiffers, Some(thing), Vec::new());
            });
        }
    }
}

/// The first thing that stands otherwise after the block than after a pass.
fn difference(passed: &Trace, failed: &Trace, at: Place, until: Place, guard: &Guard) -> Option<Thing> {
    let plant = &passed.plant;
    let isolators = plant.isolators().filter(|(cell, _)| {
        let state = |trace: &Trace, place| trace.on_way(cell, place, guard).cloned();
        state(passed, at) != state(failed, until)
    });
    let connections = plant.connections().filter(|(cell, _)| {
        let state =
            |trace: &Trace, place| trace.on_way(cell, place, guard).map(|s| (s.made, s.slack, s.open));
        state(passed, at) != state(failed, until)
    });
    let components = plant.components().filter(|(cell, _)| {
        let state = |trace: &Trace, place| trace.on_way(cell, place, guard).map(|s| s.whereabouts);
        state(passed, at) != state(failed, until)
    });
    let temporaries = plant.temporaries().filter(|(cell, _)| {
        let state = |trace: &Trace, place| trace.on_way(cell, place, guard).map(|s| s.in_place);
        state(passed, at) != state(failed, until)
    });
    let sections = plant.sections().filter(|(cell, _)| {
        let state = |trace: &Trace, place| trace.on_way(cell, place, guard).map(|s| s.contents);
        state(passed, at) != state(failed, until)
    });
    let settings = plant.settings().filter(|(cell, _)| {
        let state = |trace: &Trace, place| trace.on_way(cell, place, guard).map(|s| s.lost);
        state(passed, at) != state(failed, until)
    });
    isolators
        .map(|(cell, _)| Thing::Isolator(cell))
        .chain(connections.map(|(cell, _)| Thing::Connection(cell)))
        .chain(components.map(|(cell, _)| Thing::Component(cell)))
        .chain(temporaries.map(|(cell, _)| Thing::Temporary(cell)))
        .chain(sections.map(|(cell, _)| Thing::Section(cell)))
        .chain(settings.map(|(cell, _)| Thing::Setting(cell)))
        .next()
        .or_else(|| untested(passed, failed, at))
}

/// Something that the test passes for, and the block does not test again.
fn untested(passed: &Trace, failed: &Trace, at: Place) -> Option<Thing> {
    let stamped = |line: &Timeline<super::TestState>, from: Place| {
        line.entries().any(|entry| entry.since >= from && entry.state.passed.is_some())
    };
    let here = passed.tests.iter().filter(|(test, _, line)| is_plain(test) && stamped(line, at));
    let mut missing =
        here.filter(|(test, thing, _)| !failed.tests.get(test, *thing).is_some_and(|line| stamped(line, at)));
    missing.next().map(|(_, thing, _)| thing)
}

fn is_plain(test: &Wanted) -> bool {
    test.mode.is_none()
}
