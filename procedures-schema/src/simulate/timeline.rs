//! What one cell was, since when, and on which ways.

use super::guard::{AnswerIndex, QuestionIndex};
use super::{Guard, Place};

/// A state, the place at which it began, and the ways on which it did.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry<T> {
    /// Since when.
    pub since: Place,
    /// On which ways.
    pub guard: Guard,
    /// The state.
    pub state: T,
}

/// The states of one cell in order. It always has a first one, from [`Place::START`] on every way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Timeline<T> {
    first: Entry<T>,
    // Invariant: places never decrease.
    later: Vec<Entry<T>>,
}

/// What a search in a timeline gives.
pub(super) enum Found<'t, T> {
    /// This state, on every way asked for.
    Is(&'t Entry<T>),
    /// Different states, decided by this question.
    Depends(QuestionIndex, &'t Entry<T>),
}

impl<T: PartialEq> Timeline<T> {
    pub(super) fn new(state: T) -> Self {
        Self { first: Entry { since: Place::START, guard: Guard::ALWAYS, state }, later: Vec::new() }
    }

    pub(super) fn push(&mut self, since: Place, guard: Guard, state: T) {
        if since == Place::START {
            self.first.state = state;
            return;
        }
        match self.later.last_mut() {
            Some(last) if last.since == since && last.guard == guard => last.state = state,
            _ => self.later.push(Entry { since, guard, state }),
        }
    }

    /// The state on the ways of a guard, if they agree.
    pub(super) fn find(&self, place: Place, guard: &Guard) -> Found<'_, T> {
        let newest = self.newest(place);
        if guard.implies(&newest.guard) {
            return Found::Is(newest);
        }
        let mut other: Option<&Entry<T>> = None;
        for entry in self.begun(place) {
            if guard.implies(&entry.guard) {
                return match other {
                    Some(maybe) if maybe.state != entry.state => Found::depends(maybe, guard),
                    Some(maybe) => Found::Is(maybe),
                    None => Found::Is(entry),
                };
            }
            if guard.is_compatible(&entry.guard) {
                match other {
                    Some(maybe) if maybe.state != entry.state => return Found::depends(maybe, guard),
                    Some(_) => {}
                    None => other = Some(entry),
                }
            }
        }
        Found::Is(&self.first)
    }

    /// Something about the state on the ways of a guard, if they agree on that; else a question that
    /// decides. `n_answers` tells how many answers a question has.
    pub(super) fn look<V: PartialEq>(
        &self,
        place: Place,
        guard: &Guard,
        n_answers: impl Fn(QuestionIndex) -> AnswerIndex,
        of: impl Fn(&T) -> V,
    ) -> (V, Option<QuestionIndex>) {
        let newest = self.newest(place);
        if guard.implies(&newest.guard) {
            return (of(&newest.state), None);
        }
        let mut known: Option<V> = None;
        // Ways of the guard that no entry looked at so far holds on.
        let mut left = vec![guard.clone()];
        for entry in self.begun(place) {
            if !left.iter().any(|ways| ways.is_compatible(&entry.guard)) {
                continue;
            }
            let value = of(&entry.state);
            match known {
                Some(known) if known != value => {
                    let later = self.begun(place).find_map(|later| later.guard.beyond(guard));
                    return (known, later);
                }
                _ => known = Some(value),
            }
            left = left.iter().flat_map(|ways| ways.except(&entry.guard, &n_answers)).collect();
            if left.is_empty() {
                break;
            }
        }
        (known.unwrap_or_else(|| of(&self.first.state)), None)
    }

    /// How many entries after the first have begun at a place.
    fn n_begun(&self, place: Place) -> usize {
        // A run asks for the present, where all of them have.
        if self.later.last().is_none_or(|last| last.since <= place) {
            return self.later.len();
        }
        self.later.partition_point(|entry| entry.since <= place)
    }

    /// The last entry begun at a place, on whatever ways.
    fn newest(&self, place: Place) -> &Entry<T> {
        let last = self.n_begun(place).checked_sub(1);
        last.and_then(|last| self.later.get(last)).unwrap_or(&self.first)
    }

    /// Entries begun at a place, the last first.
    fn begun(&self, place: Place) -> impl Iterator<Item = &Entry<T>> {
        let n_begun = self.n_begun(place);
        self.later.get(..n_begun).unwrap_or_default().iter().rev().chain(std::iter::once(&self.first))
    }

    /// Every state that the cell can have at a place, with the ways on which it has it.
    pub fn at(&self, place: Place) -> Vec<&Entry<T>> {
        let mut found: Vec<&Entry<T>> = Vec::new();
        for entry in self.begun(place) {
            if !found.iter().any(|later| entry.guard.implies(&later.guard)) {
                found.push(entry);
            }
            if entry.guard == Guard::ALWAYS {
                break;
            }
        }
        found
    }

    /// Every entry in order.
    pub fn entries(&self) -> impl DoubleEndedIterator<Item = &Entry<T>> {
        std::iter::once(&self.first).chain(&self.later)
    }
}

impl<'t, T> Found<'t, T> {
    fn depends(maybe: &'t Entry<T>, guard: &Guard) -> Self {
        match maybe.guard.beyond(guard) {
            Some(question) => Self::Depends(question, maybe),
            None => Self::Is(maybe),
        }
    }

    pub(super) fn entry(&self) -> &'t Entry<T> {
        match self {
            Self::Is(entry) | Self::Depends(_, entry) => entry,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Found, Guard, Place, Timeline};

    fn state(line: &Timeline<char>, place: Place, guard: &Guard) -> Option<char> {
        match line.find(place, guard) {
            Found::Is(entry) => Some(entry.state),
            Found::Depends(..) => None,
        }
    }

    #[test]
    fn a_state_holds_until_the_next() {
        let mut line = Timeline::new('a');
        line.push(Place::of_action(2, 0), Guard::ALWAYS, 'b');
        line.push(Place::of_action(2, 0), Guard::ALWAYS, 'c');
        line.push(Place::of_action(5, 1), Guard::ALWAYS, 'd');
        for (place, expected) in [
            (Place::START, 'a'),
            (Place::after(1), 'a'),
            (Place::of_action(2, 0), 'c'),
            (Place::of_action(5, 0), 'c'),
            (Place::END, 'd'),
        ] {
            assert_eq!(state(&line, place, &Guard::ALWAYS), Some(expected), "{place:?}");
        }
        assert_eq!(line.entries().count(), 3);
    }

    #[test]
    fn a_state_of_one_way_asks_for_the_way() {
        let yes = Guard::ALWAYS.with(4, 0);
        let no = Guard::ALWAYS.with(4, 1);
        let mut line = Timeline::new('a');
        line.push(Place::of_action(1, 0), yes.clone(), 'b');
        assert_eq!(state(&line, Place::after(0), &Guard::ALWAYS), Some('a'));
        assert_eq!(state(&line, Place::END, &Guard::ALWAYS), None);
        assert_eq!(state(&line, Place::END, &yes), Some('b'));
        assert_eq!(state(&line, Place::END, &no), Some('a'));
        assert_eq!(line.at(Place::END).len(), 2);
        line.push(Place::of_action(2, 0), no, 'b');
        assert_eq!(state(&line, Place::END, &Guard::ALWAYS), None, "one way is still open: the third answer");
        line.push(Place::of_action(3, 0), Guard::ALWAYS, 'e');
        assert_eq!(state(&line, Place::END, &Guard::ALWAYS), Some('e'));
        assert_eq!(line.at(Place::END).len(), 1);
    }
}
