//! The timelines of tests, found by test and thing without comparing things.
//!
//! Whether a joint has passed a test is asked more often than anything else; there are few tests and many
//! things.

use super::Few;
use super::kinds::Wanted;
use super::plant::Thing;
use super::state::TestState;
use super::timeline::Timeline;
use super::trace::TestCell;

/// The timelines of all tests.
#[derive(Clone, Debug, Default)]
pub(super) struct TestLines {
    // Invariant: sorted by the test.
    tests: Vec<(Wanted, OfThings)>,
}

/// The timelines of one test.
#[derive(Clone, Debug, Default)]
struct OfThings {
    /// In the order in which the things were tested first.
    lines: Vec<(Thing, Timeline<TestState>)>,
    /// For each kind of thing, by the number of the thing, one more than the position of its line; nothing
    /// where there is none.
    places: [Vec<u32>; N_KINDS],
}

/// How many kinds of things there are.
const N_KINDS: usize = 8;

/// The kind of a thing, in the order in which kinds are sorted, and its number among them.
fn numbers_of(thing: Thing) -> (usize, usize) {
    match thing {
        Thing::Circuit(cell) => (0, cell.index()),
        Thing::Section(cell) => (1, cell.index()),
        Thing::Isolator(cell) => (2, cell.index()),
        Thing::Component(cell) => (3, cell.index()),
        Thing::Connection(cell) => (4, cell.index()),
        Thing::Seal(cell) => (5, cell.index()),
        Thing::Temporary(cell) => (6, cell.index()),
        Thing::Setting(cell) => (7, cell.index()),
    }
}

impl TestLines {
    /// The timeline of a test of a thing; none if it was never tested so.
    pub(super) fn get(&self, test: &Wanted, thing: Thing) -> Option<&Timeline<TestState>> {
        let (_, things) = self.tests.iter().find(|(known, _)| known == test)?;
        let (kind, number) = numbers_of(thing);
        things.line_at(*things.places.get(kind)?.get(number)?).map(|(_, line)| line)
    }

    /// The timeline of a test of a thing, begun here if it was never tested so.
    pub(super) fn line_mut(&mut self, cell: &TestCell) -> Option<&mut Timeline<TestState>> {
        let at = match self.tests.binary_search_by(|(known, _)| known.cmp(&cell.test)) {
            Ok(at) => at,
            Err(at) => {
                self.tests.insert(at, (cell.test.clone(), OfThings::default()));
                at
            }
        };
        let (_, things) = self.tests.get_mut(at)?;
        things.line_mut(cell.thing)
    }

    /// Every timeline with its test and thing, sorted by these.
    pub(super) fn iter(&self) -> impl Iterator<Item = (&Wanted, Thing, &Timeline<TestState>)> {
        self.tests.iter().flat_map(|(test, things)| {
            let lines = things.places.iter().flatten().filter_map(|place| things.line_at(*place));
            lines.map(move |(thing, line)| (test, *thing, line))
        })
    }
}

impl OfThings {
    fn line_at(&self, place: u32) -> Option<&(Thing, Timeline<TestState>)> {
        self.lines.get(usize::try_from(place.checked_sub(1)?).ok()?)
    }

    fn line_mut(&mut self, thing: Thing) -> Option<&mut Timeline<TestState>> {
        let (kind, number) = numbers_of(thing);
        let places = self.places.get_mut(kind)?;
        if places.len() <= number {
            places.resize(number + 1, 0);
        }
        let place = places.get_mut(number)?;
        if *place == 0 {
            self.lines.push((thing, Timeline::new(TestState { passed: None, loaded: Few::new() })));
            *place = u32::try_from(self.lines.len()).ok()?;
        }
        let position = usize::try_from(*place - 1).ok()?;
        self.lines.get_mut(position).map(|(_, line)| line)
    }
}

#[cfg(test)]
mod tests {
    use super::{TestCell, TestLines, Thing, Wanted};
    use crate::model::{Mode, TestKind};
    use crate::simulate::{ConnectionCell, SectionCell};

    #[test]
    fn a_line_is_found_again_and_all_come_in_order() {
        let test = |mode: Option<Mode>| Wanted { kind: TestKind::LeakCold, mode };
        let joint = |n: usize| Thing::Connection(ConnectionCell::new(n));
        let section = Thing::Section(SectionCell::new(3));
        let mut lines = TestLines::default();
        for (mode, thing) in [
            (Some(Mode::Max), joint(2)),
            (None, joint(9)),
            (None, section),
            (None, joint(2)),
            (None, joint(9)),
        ] {
            assert!(lines.line_mut(&TestCell { test: test(mode), thing }).is_some());
        }
        let found: Vec<(Wanted, Thing)> =
            lines.iter().map(|(test, thing, _)| (test.clone(), thing)).collect();
        let mut sorted = found.clone();
        sorted.sort_unstable();
        assert_eq!(found, sorted);
        assert_eq!(found.len(), 4);
        assert!(lines.get(&test(None), joint(9)).is_some());
        assert!(lines.get(&test(None), joint(8)).is_none());
        assert!(lines.get(&test(Some(Mode::Max)), section).is_none());
    }
}
