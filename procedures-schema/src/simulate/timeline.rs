//! What one cell was, and since when.

use super::Place;

/// A state and the place at which it began.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry<T> {
    /// Since when.
    pub since: Place,
    /// The state.
    pub state: T,
}

/// The states of one cell in order. It always has a first one, from [`Place::START`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Timeline<T> {
    first: Entry<T>,
    // Invariant: places strictly increase and lie after the first.
    later: Vec<Entry<T>>,
}

impl<T> Timeline<T> {
    pub(super) fn new(state: T) -> Self {
        Self { first: Entry { since: Place::START, state }, later: Vec::new() }
    }

    pub(super) fn push(&mut self, since: Place, state: T) {
        if since == self.first.since {
            self.first.state = state;
            return;
        }
        match self.later.last_mut() {
            Some(last) if last.since == since => last.state = state,
            _ => self.later.push(Entry { since, state }),
        }
    }

    /// The state at a place and since when it holds.
    pub fn at(&self, place: Place) -> &Entry<T> {
        let n_begun = self.later.partition_point(|entry| entry.since <= place);
        n_begun.checked_sub(1).and_then(|last| self.later.get(last)).unwrap_or(&self.first)
    }

    /// The last state.
    pub fn now(&self) -> &Entry<T> {
        self.later.last().unwrap_or(&self.first)
    }

    /// Every state in order.
    pub fn entries(&self) -> impl DoubleEndedIterator<Item = &Entry<T>> {
        std::iter::once(&self.first).chain(&self.later)
    }
}

#[cfg(test)]
mod tests {
    use super::{Place, Timeline};

    #[test]
    fn a_state_holds_until_the_next() {
        let mut line = Timeline::new('a');
        line.push(Place::of_action(2, 0), 'b');
        line.push(Place::of_action(2, 0), 'c');
        line.push(Place::of_action(5, 1), 'd');
        for (place, state) in [
            (Place::START, 'a'),
            (Place::after(1), 'a'),
            (Place::of_action(2, 0), 'c'),
            (Place::of_action(5, 0), 'c'),
            (Place::END, 'd'),
        ] {
            assert_eq!(line.at(place).state, state, "{place:?}");
        }
        assert_eq!(line.entries().count(), 3);
    }
}
