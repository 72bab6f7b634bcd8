//! What words order without a verb that is known: "do *the same* on the right", "*pull* the fuses F1 and F2".

use crate::capture::begins_with_a_thing;
use crate::lexicon::{Break, Said, tokens};
use crate::model::{Span, Step};

/// "Do *the same* on the right": what was said before is done once more, and the step has no action that says so behind it.
pub(super) fn says_again(step: &Step) -> Option<Span> {
    let all = tokens(&step.words);
    let text = |i: usize| all.get(i).map_or("", |token| &*token.text);
    let behind =
        |i: usize| all.get(i).filter(|token| token.before == Break::None).map_or("", |token| &*token.text);
    let begins = |i: usize| {
        all.get(i).is_some_and(|token| i == 0 || token.before != Break::None)
            || i.checked_sub(1).is_some_and(|before| matches!(text(before), "and" | "do" | "then"))
    };
    let is_it = |i: &usize| {
        // "Pump 2: *the same*", "*same again* on the right".
        let goes_on = matches!(behind(i + 1), "" | "again" | "at" | "for" | "goes" | "on" | "with");
        text(*i) == "same" && goes_on && begins(i - usize::from(*i > 0 && text(i - 1) == "the"))
    };
    let same = (0..all.len()).find(is_it)?;
    let first = same - usize::from(same > 0 && text(same - 1) == "the");
    let span = Span(all.get(first)?.span.0, all.get(same)?.span.1);
    let mut said = step.actions.iter().flat_map(|action| &action.says);
    (!said.any(|said| said.1 > span.0)).then_some(span)
}

/// "Pump 2 *likewise*": a sentence of which no action says anything.
pub(super) fn says_likewise(step: &Step) -> Option<Span> {
    let all = tokens(&step.words);
    let begins = |i: &usize| all.get(*i).is_none_or(|token| token.before == Break::Sentence) || *i == 0;
    let is_it = |i: &usize| all.get(*i).is_some_and(|token| matches!(&*token.text, "ditto" | "likewise"));
    let is_alone = |i: &usize| {
        let first = (0..=*i).rev().find(begins).and_then(|first| all.get(first));
        let last = (i + 1..=all.len()).find(begins).and_then(|end| all.get(end - 1));
        let (Some(first), Some(last)) = (first, last) else { return false };
        let meets = |said: &Span| said.0 < last.span.1 && first.span.0 < said.1;
        !step.actions.iter().flat_map(|action| &action.says).any(meets)
    };
    (0..all.len()).filter(is_it).find(is_alone).and_then(|i| all.get(i)).map(|token| token.span)
}

/// "*Pull* the fuses F1, F2 and F3": a word that moves a thing begins a sentence of which no action says anything, and is no
/// phrase that is known.
pub(super) fn moves_a_thing(step: &Step, said: &[Said]) -> Option<Span> {
    let all = tokens(&step.words);
    let begins = |i: usize| all.get(i).is_none_or(|token| token.before == Break::Sentence) || i == 0;
    let span = |i: usize| all.get(i).map_or(Span(0, 0), |token| token.span);
    let is_free = |i: &usize| {
        let end = (*i + 1..all.len()).find(|end| begins(*end)).unwrap_or(all.len());
        let sentence = Span(span(*i).0, span(end - 1).1);
        let meets = |other: &Span| other.0 < sentence.1 && sentence.0 < other.1;
        let acts = step.actions.iter().flat_map(|action| &action.says).any(meets);
        let is_it = |phrase: &&Said| phrase.words.first().is_some_and(|first| first.0 == span(*i).0);
        let is_phrase = said.iter().filter(|said| !said.unsaid).any(|phrase| is_it(&phrase));
        !acts && !is_phrase && begins_with_a_thing(rest_of_clause(&step.words, span(*i).1))
    };
    let is_moving = |i: &usize| all.get(*i).is_some_and(|token| MOVING.contains(&&*token.text));
    (0..all.len()).filter(|i| begins(*i) && is_moving(i)).find(is_free).map(span)
}

/// Verbs that move a thing and need more words to say how.
const MOVING: &[&str] = &["draw", "lift", "pull", "push", "slide", "slip"];

/// The words behind a place in a sentence, up to its next part.
pub(super) fn rest_of_clause(words: &str, from: u32) -> &str {
    let before = Span(0, from).of(words);
    let rest = words.get(before.len()..).unwrap_or_default();
    rest.split([';', '.']).next().unwrap_or_default()
}

/// "If it weeps, *remake it*", "*renew it* if it is worn": whether an order at a place is on a condition. A question says on which
/// answer it is done.
pub(super) fn is_conditional(words: &str, from: u32) -> bool {
    let all = tokens(words);
    let begins = |i: usize| all.get(i).is_none_or(|token| token.before == Break::Sentence);
    let at = all.iter().position(|token| token.span.0 >= from).unwrap_or(all.len());
    let first = (0..=at).rev().find(|i| begins(*i)).unwrap_or(0);
    let end = (at + 1..all.len()).find(|i| begins(*i)).unwrap_or(all.len());
    let is = |i: usize, words: &[&str]| all.get(i).is_some_and(|token| words.contains(&&*token.text));
    (first..at).any(|i| is(i, &["if", "should", "unless", "when"]))
        || (at..end).any(|i| is(i, &["if", "unless"]))
}
