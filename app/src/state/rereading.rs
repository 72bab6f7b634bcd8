//! What becomes of a step's actions when its words change.
//!
//! A step whose actions are exactly what the line reads from its words goes on being read. A step that was
//! typed with more care keeps its actions: what of them the words said follows the words, what was set otherwise
//! stays; an action whose words have gone loses its span and shows as not said. Nothing is silently dropped. What
//! is typed beside them is read too, and what the line read there before and somebody has put right stays right.

use super::doubts::{add_in_order, meet};
use super::judged::Judged;
use super::last_read::{LastRead, Read};
use procedures_schema::capture::{self, Given, Here, LineReading, SaidOtherwise};
use procedures_schema::edit::follow;
use procedures_schema::model::{Action, ApplianceMap, Id, NumberedIds, Procedure, Span, Step};
use procedures_schema::simulate::Place;
use std::sync::Arc;

/// What the line reads from words of a step at a position, without what its writer has declined; against the map as the
/// words state it of what the step does: a number that is mended in them takes no action away, also where the map keeps
/// the one that it has.
pub(super) fn reading_of(judged: &Judged, position: usize, step: &Step, words: &str) -> LineReading {
    let map = &judged.document.map;
    let here = Here::from_trace(map, &judged.trace, place_before(position));
    let (mut reading, _) = capture::line_as_said(words, step.actions.iter(), map, here, &step.stage);
    drop_declined(&mut reading.actions, &step.declined, words);
    reading
}

/// What a document gives to the reading of the step at a position.
pub(super) fn given_before(document: &Procedure, position: usize) -> Given<'_> {
    let before = document.steps.get(..position).unwrap_or_default();
    Given { answers: &[], census: &document.census, before }
}

/// What is true where the step at a position stands.
pub(super) fn here(judged: &Judged, position: usize) -> Arc<Here> {
    Arc::new(Here::from_trace(&judged.document.map, &judged.trace, place_before(position)))
}

/// As [`reading_of`] where it is known what is true there, with what the words would make.
pub(super) fn read_with_making(judged: &Judged, here: Arc<Here>, step: &Step, words: &str) -> Read {
    read_on(&judged.document.map, judged, here, step, &[], words)
}

/// As [`read_with_making`] against a map, where further actions count as what the step does.
fn read_on(
    map: &Arc<ApplianceMap>,
    judged: &Judged,
    here: Arc<Here>,
    step: &Step,
    also: &[Action],
    words: &str,
) -> Read {
    let otherwise = SaidOtherwise::of(words, also.iter().chain(&step.actions), map, &step.stage);
    let said = otherwise.as_said(map);
    let map = said.as_ref().unwrap_or(map);
    let position = judged.document.position(&step.id).unwrap_or(judged.document.steps.len());
    let given = given_before(&judged.document, position);
    let (state, ids) = (Here::clone(&here), &mut NumberedIds::default());
    let (mut reading, making) = capture::line_with_making(words, map, state, &step.stage, given, ids);
    drop_declined(&mut reading.actions, &step.declined, words);
    Read { here, reading, making: Some(making), otherwise }
}

/// Takes out the actions that the writer of a step does not want to be read from these words.
pub(super) fn drop_declined(actions: &mut Vec<Action>, declined: &[String], words: &str) {
    let is_declined = |action: &Action| {
        let said = action.says.first().map(|span| span.of(words));
        said.is_some_and(|said| declined.iter().any(|known| known.eq_ignore_ascii_case(said)))
    };
    actions.retain(|action| !is_declined(action));
}

/// Whether the actions of a step are exactly what the line reads from its words, so that it goes on being read.
pub(super) fn is_as_read(judged: &Judged, position: usize, step: &Step) -> bool {
    step.actions.is_empty() || reading_of(judged, position, step, &step.words).actions == step.actions
}

/// The step with other words and the actions that they now mean. `first` is the step as it was before anything was
/// typed in it, by which what was put right by hand is told from what has just been read.
pub fn reread(judged: &Judged, position: usize, first: &Arc<Step>, before: &Step, words: &str) -> Step {
    reread_knowing(judged, position, &judged.document.map, first, before, words, None).step
}

/// A step that was read anew.
pub(super) struct Reread {
    pub(super) step: Step,
    /// What its words are read as.
    pub(super) read: Read,
    /// What the words are read as with which typing began; none, if nobody asked.
    pub(super) read_first: Option<Vec<Action>>,
}

/// As [`reread`] against a map that has followed the words, where it may be known what `before` was read as.
pub(super) fn reread_knowing(
    judged: &Judged,
    position: usize,
    map: &Arc<ApplianceMap>,
    first: &Arc<Step>,
    before: &Step,
    words: &str,
    known: Option<&LastRead>,
) -> Reread {
    let is_as_read = match known {
        Some(known) => before.actions.is_empty() || known.read().reading.actions == before.actions,
        None => is_as_read(judged, position, before),
    };
    let here = known.map_or_else(|| here(judged, position), |known| known.read().here.clone());
    let mut step = before.clone();
    words.clone_into(&mut step.words);
    if is_as_read {
        let read = read_on(map, judged, here, before, &first.actions, words);
        step.actions.clone_from(&read.reading.actions);
        return Reread { step, read, read_first: None };
    }
    let state = Here::clone(&here);
    let does = first.actions.iter().chain(&before.actions);
    let (mut reading, otherwise) = capture::line_as_said(words, does, map, state, &step.stage);
    drop_declined(&mut reading.actions, &step.declined, words);
    let known_first = known.and_then(|known| known.of_first(first)).cloned();
    let of_first = known_first.unwrap_or_else(|| reading_of(judged, position, first, &first.words).actions);
    let stretch = Stretch::between(&before.words, words);
    step.actions = beside(&first.actions, &of_first, &before.actions, reading.actions.clone(), stretch);
    if words == first.words {
        say_again(&mut step.actions, &first.actions);
    }
    Reread { step, read: Read { here, reading, making: None, otherwise }, read_first: Some(of_first) }
}

/// The actions that were there before anybody typed, following their words where nobody has set them otherwise, and
/// between them what is read from other words by now. What was read there from the start and is not among them has
/// been put right.
fn beside(
    first: &[Action],
    read_first: &[Action],
    before: &[Action],
    read: Vec<Action>,
    stretch: Stretch,
) -> Vec<Action> {
    let is_in = |all: &[Action], action: &Action| {
        all.iter().any(|one| one.verb == action.verb && one.on == action.on)
    };
    let mut followed = Vec::new();
    let mut actions: Vec<Action> = Vec::new();
    for action in first {
        if let Some((was, now, is)) = same_words(action, read_first, &read) {
            let mut action = action.clone();
            follow(&mut action, was, is);
            action.says.clone_from(&is.says);
            followed.push(now);
            actions.push(action);
        } else {
            // What has followed its words before has other things by now, and says nothing until it is found again.
            let same = |one: &&Action| one.verb == action.verb && one.on == action.on;
            let lost = || Action { says: Vec::new(), ..action.clone() };
            actions.push(before.iter().find(same).map_or_else(lost, |known| moved(known, stretch)));
        }
    }
    let is_free = |(at, action): &(usize, Action)| {
        let said = |own: &Span| actions.iter().flat_map(|kept| &kept.says).any(|kept| meet(*kept, *own));
        !followed.contains(at)
            && !action.says.iter().any(said)
            && !is_in(read_first, action)
            && !is_in(&actions, action)
    };
    let new: Vec<(usize, Action)> = read.into_iter().enumerate().filter(is_free).collect();
    for (_, action) in new {
        add_in_order(&mut actions, action);
    }
    actions
}

/// Where the words are those with which typing began, they say what they said then, also where nothing reads it from
/// them.
fn say_again(actions: &mut [Action], first: &[Action]) {
    for action in actions.iter_mut().filter(|action| action.says.is_empty()) {
        let said = first.iter().find(|one| one.verb == action.verb && one.on == action.on);
        if let Some(said) = said {
            action.says.clone_from(&said.says);
        }
    }
}

/// What the words of an action were read as, and what the same words are read as now, with its position: the same verb
/// in the same order, as long as there are as many of it.
fn same_words<'a>(
    action: &Action,
    read_first: &'a [Action],
    read: &'a [Action],
) -> Option<(&'a Action, usize, &'a Action)> {
    let of_verb =
        |all: &'a [Action]| all.iter().enumerate().filter(|(_, one)| one.verb == action.verb).collect();
    let (were, are): (Vec<_>, Vec<_>) = (of_verb(read_first), of_verb(read));
    let nth = were.iter().position(|(_, one)| one.on == action.on).filter(|_| were.len() == are.len())?;
    let ((_, was), (at, is)) = (were.get(nth)?, are.get(nth)?);
    Some((was, *at, is))
}

/// The position behind a step; behind the last one, if there is no such step.
pub(super) fn place_after(document: &Procedure, after: Option<&Id>) -> usize {
    after.and_then(|step| document.position(step)).map_or(document.steps.len(), |position| position + 1)
}

/// The place at which words at a position are read.
pub(super) fn place_before(position: usize) -> Place {
    position.checked_sub(1).map_or(Place::START, Place::after)
}

/// The stretch of words in which two texts differ, in code points.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Stretch {
    from: usize,
    to_before: usize,
    to_after: usize,
}

impl Stretch {
    fn between(before: &str, after: &str) -> Self {
        let (n_before, n_after) = (before.chars().count(), after.chars().count());
        let shorter = n_before.min(n_after);
        let from = before.chars().zip(after.chars()).take_while(|(a, b)| a == b).count();
        let same_end = before.chars().rev().zip(after.chars().rev()).take_while(|(a, b)| a == b).count();
        let same_end = same_end.min(shorter - from);
        Self { from, to_before: n_before - same_end, to_after: n_after - same_end }
    }

    /// A span of the old words in the new ones; none, if its words have gone or been typed over.
    fn carry(self, span: Span) -> Option<Span> {
        let (from, to) = (usize::try_from(span.0).ok()?, usize::try_from(span.1).ok()?);
        let shift = |point: usize| point + self.to_after - self.to_before;
        let (from, to) = if to <= self.from {
            (from, to)
        } else if from >= self.to_before {
            (shift(from), shift(to))
        } else if from <= self.from && to >= self.to_before {
            (from, shift(to))
        } else {
            return None;
        };
        let span = Span(u32::try_from(from).ok()?, u32::try_from(to).ok()?);
        (span.0 < span.1).then_some(span)
    }
}

fn moved(action: &Action, stretch: Stretch) -> Action {
    let mut action = action.clone();
    action.says = action.says.iter().filter_map(|span| stretch.carry(*span)).collect();
    action
}

#[cfg(test)]
mod tests {
    use super::{Span, Stretch, beside, say_again};
    use procedures_schema::model::{Action, Id, Verb};
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test]
    fn spans_move_with_their_words() {
        let stretch = Stretch::between("Close the valve and lock it.", "Close the ball valve and lock it.");
        assert_eq!(stretch.carry(Span(0, 5)), Some(Span(0, 5)));
        assert_eq!(stretch.carry(Span(0, 15)), Some(Span(0, 20)));
        assert_eq!(stretch.carry(Span(20, 27)), Some(Span(25, 32)));
    }

    fn action(verb: Verb, on: &str, says: Span) -> Action {
        Action { says: vec![says], ..Action::new(verb, vec![Id::new(on)]) }
    }

    #[wasm_bindgen_test]
    fn what_is_typed_beside_what_was_put_right_is_read() {
        // "Close the valve." was read as one valve and put right to be another.
        let right = action(Verb::Isolate, "b", Span(0, 15));
        let wrong = action(Verb::Isolate, "a", Span(0, 15));
        let lid = action(Verb::Remove, "lid", Span(17, 29));
        let typed = |before: &[Action], read: Vec<Action>, from: &str, to: &str| {
            let stretch = Stretch::between(from, to);
            beside(std::slice::from_ref(&right), std::slice::from_ref(&wrong), before, read, stretch)
        };
        let one = ("Close the valve.", "Close the valve. Take the lid");
        let now = typed(std::slice::from_ref(&right), vec![wrong.clone(), lid.clone()], one.0, one.1);
        assert_eq!(now, [right.clone(), lid.clone()]);
        // What has just been read goes on being read, and what was put right stays.
        let screws = action(Verb::Undo, "screws", Span(17, 36));
        let now =
            typed(&now, vec![wrong.clone(), screws.clone()], one.1, "Close the valve. Take the lid screws");
        assert_eq!(now, [right.clone(), screws]);
        let now =
            typed(&now, vec![wrong.clone()], "Close the valve. Take the lid screws", "Close the valve.");
        assert_eq!(now, [right]);
    }

    #[wasm_bindgen_test]
    fn what_the_words_said_follows_them() {
        let set = |count, pattern: Option<&str>| Action {
            count,
            pattern: pattern.map(str::to_owned),
            ..action(Verb::Tighten, "bolts", Span(0, 22))
        };
        let (first, was) = (set(Some(4), Some("crosswise")), set(Some(4), None));
        let stretch = Stretch::between("Tighten the four bolts.", "Tighten the two bolts.");
        let one = std::slice::from_ref(&first);
        let now = beside(one, std::slice::from_ref(&was), one, vec![set(Some(2), None)], stretch);
        assert_eq!(now, [set(Some(2), Some("crosswise"))]);
        // Where one more is typed it is not known which is which: what was set stays, with its own words.
        let other = action(Verb::Tighten, "cap", Span(23, 38));
        let more = Stretch::between("Tighten the four bolts.", "Tighten the cap, then the four bolts.");
        let now = beside(
            one,
            std::slice::from_ref(&was),
            &[other.clone(), first.clone()],
            vec![other.clone(), was.clone()],
            more,
        );
        assert!(now.iter().any(|kept| kept.on == first.on && kept.pattern == first.pattern), "{now:?}");
        // Another thing in the same words is followed too.
        let nuts = Action { on: vec![Id::new("nuts")], ..was.clone() };
        let now = beside(one, std::slice::from_ref(&was), one, vec![nuts], stretch);
        assert_eq!(now.iter().map(|action| action.on.clone()).collect::<Vec<_>>(), [[Id::new("nuts")]]);
    }

    #[wasm_bindgen_test]
    fn words_that_have_gone_say_nothing() {
        let stretch = Stretch::between("Close the valve and lock it.", "Close the valve.");
        assert_eq!(stretch.carry(Span(0, 15)), Some(Span(0, 15)));
        assert_eq!(stretch.carry(Span(20, 27)), None);
    }

    #[wasm_bindgen_test]
    fn the_same_words_say_the_same_again() {
        let first = action(Verb::Prove, "mains", Span(0, 5));
        let mut now = vec![Action { says: Vec::new(), count: Some(2), ..first.clone() }];
        say_again(&mut now, std::slice::from_ref(&first));
        assert_eq!(now, [Action { count: Some(2), ..first }], "the words alone come back");
    }
}
