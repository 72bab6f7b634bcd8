//! What was changed: so that a test, a start or a restored supply need not look at everything.
//!
//! A list may hold too much: whoever takes one looks at each thing, and says afterwards which of them have
//! nothing left to wait for on any way of the run. It never holds too little: every change comes in again.

use super::plant::{SectionCell, Thing};
use crate::model::{Mode, TestKind};
use std::collections::{BTreeMap, BTreeSet};

/// Who waits.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum For {
    /// For a stamp of a test in a mode.
    Stamp(TestKind, Option<Mode>),
    /// Joints of a section, for any test that is due.
    Due(SectionCell),
}

/// Every change in order, and what of them waits for what.
#[derive(Clone, Debug, Default)]
pub(super) struct Touched {
    changed: Vec<Thing>,
    waiting: BTreeMap<For, Waiting>,
    /// What may be otherwise than in service.
    unsettled: BTreeSet<Thing>,
    /// How many changes have been looked through for what is settled again.
    n_settled: usize,
}

#[derive(Clone, Debug, Default)]
struct Waiting {
    /// How many changes have been looked through.
    n_seen: usize,
    things: BTreeSet<Thing>,
}

impl Touched {
    /// Takes note of a change.
    pub(super) fn note(&mut self, thing: Thing) {
        self.changed.push(thing);
        self.unsettled.insert(thing);
    }

    /// What may be otherwise than in service, in the order of the map.
    pub(super) fn unsettled(&self) -> impl Iterator<Item = Thing> {
        self.unsettled.iter().copied()
    }

    /// The next of what was changed since the last was asked for; none if there is no other.
    pub(super) fn next_changed(&mut self) -> Option<Thing> {
        let next = self.changed.get(self.n_settled).copied();
        self.n_settled += usize::from(next.is_some());
        next
    }

    /// Takes note that a thing is as in service on every way of the run.
    pub(super) fn is_settled(&mut self, thing: Thing) {
        self.unsettled.remove(&thing);
    }

    /// What waits, in the order of the map, as far as it concerns the one that asks.
    pub(super) fn waiting(&mut self, who: For, concerns: impl Fn(Thing) -> bool) -> Vec<Thing> {
        let waiting = self.waiting.entry(who).or_default();
        let new = self.changed.get(waiting.n_seen..).unwrap_or_default();
        waiting.things.extend(new.iter().copied().filter(|thing| concerns(*thing)));
        waiting.n_seen = self.changed.len();
        waiting.things.iter().copied().collect()
    }

    /// Takes off what has nothing to wait for any more.
    pub(super) fn is_done(&mut self, who: &For, things: &[Thing]) {
        if let Some(waiting) = self.waiting.get_mut(who) {
            for thing in things {
                waiting.things.remove(thing);
            }
        }
    }

    /// Everything that was ever changed, in the order of the map.
    pub(super) fn ever(&self, concerns: impl Fn(Thing) -> bool) -> Vec<Thing> {
        let things: BTreeSet<Thing> = self.changed.iter().copied().filter(|thing| concerns(*thing)).collect();
        things.into_iter().collect()
    }
}
