//! Words put into a sentence or taken out of it, with the spans that point into it.

use crate::model::{Span, Step};

/// Puts words behind those of an action, as part of them; none, if nothing says the action.
#[must_use]
pub fn say_behind(step: &mut Step, action: usize, text: &str) -> Option<()> {
    let end = step.actions.get(action)?.says.iter().map(|span| span.1).max()?;
    insert(step, end, text)?;
    let last = step.actions.get_mut(action)?.says.iter_mut().find(|span| span.1 == end)?;
    last.1 += length(text);
    Some(())
}

/// Puts words in at a code point; spans that begin there or later move with what they say.
#[must_use]
pub fn insert(step: &mut Step, at: u32, text: &str) -> Option<()> {
    let point = usize::try_from(at).ok()?;
    if point > step.words.chars().count() {
        return None;
    }
    let (before, after) = (step.words.chars().take(point), step.words.chars().skip(point));
    step.words = before.chain(text.chars()).chain(after).collect();
    for span in step.actions.iter_mut().flat_map(|action| &mut action.says) {
        if span.0 >= at {
            span.0 += length(text);
        }
        if span.1 > at {
            span.1 += length(text);
        }
    }
    Some(())
}

/// Puts words in the place of a stretch; spans that end or begin within it hold the new words whole or not at all.
#[must_use]
pub fn put(step: &mut Step, gone: Span, text: &str) -> Option<()> {
    let head = Span(0, gone.0).of(&step.words).len();
    let tail = Span(0, gone.1).of(&step.words).len();
    let (before, behind) = (step.words.get(..head)?, step.words.get(tail..)?);
    let words = [before, text, behind].concat();
    let moved = |point: u32| match point {
        before if before <= gone.0 => before,
        behind if behind >= gone.1 => behind - (gone.1 - gone.0) + length(text),
        _ => gone.0 + length(text),
    };
    for said in step.actions.iter_mut().flat_map(|action| &mut action.says) {
        *said = Span(moved(said.0), moved(said.1));
    }
    step.words = words;
    Some(())
}

/// Takes a stretch of words out; what said only that says nothing any more.
pub fn take_out(step: &mut Step, gone: Span) {
    let words = step.words.chars().enumerate();
    let stays = |at: usize| u32::try_from(at).map_or(true, |at| at < gone.0 || at >= gone.1);
    step.words = words.filter(|(at, _)| stays(*at)).map(|(_, char)| char).collect();
    let moved = |point: u32| point.min(gone.0) + point.saturating_sub(gone.1);
    for action in &mut step.actions {
        action.says = action.says.iter().map(|span| Span(moved(span.0), moved(span.1))).collect();
        action.says.retain(|span| span.0 < span.1);
    }
}

fn length(text: &str) -> u32 {
    u32::try_from(text.chars().count()).unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::{say_behind, take_out};
    use crate::model::{Action, Span, Stage, Step, Verb};

    fn step(words: &str, says: &[&[(u32, u32)]]) -> Step {
        let mut step = Step::new("s".into(), Stage::Refit, words);
        let action = |says: &&[(u32, u32)]| Action {
            says: says.iter().map(|(from, to)| Span(*from, *to)).collect(),
            ..Action::new(Verb::Make, Vec::new())
        };
        step.actions = says.iter().map(action).collect();
        step
    }

    #[test]
    fn what_is_put_behind_an_action_is_part_of_it_and_goes_again() {
        let before = step("Löse A, mache B.", &[&[(0, 6)], &[(8, 15)]]);
        let mut changed = before.clone();
        say_behind(&mut changed, 0, " neu").expect("there");
        assert_eq!(changed.words, "Löse A neu, mache B.");
        assert_eq!(changed.actions[0].says[0].of(&changed.words), "Löse A neu");
        assert_eq!(changed.actions[1].says[0].of(&changed.words), "mache B");
        take_out(&mut changed, Span(6, 10));
        assert_eq!(changed, before);
    }

    #[test]
    fn a_span_that_was_all_taken_out_is_gone() {
        let mut changed = step("Make it new now.", &[&[(0, 7), (8, 11)]]);
        take_out(&mut changed, Span(7, 11));
        assert_eq!(
            (changed.words.as_str(), changed.actions[0].says.as_slice()),
            ("Make it now.", &[Span(0, 7)][..])
        );
    }
}
