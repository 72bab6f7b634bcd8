//! "Take off the left cover and *the right one*", "take the filter out and fit *a new one*": a word that stands for a noun
//! that was said before.

use super::Here;
use super::coin::PREPOSITIONS;
use super::mention::{head_of, is_plural};
use super::twins::{are_opposite, is_side};
use crate::lexicon::{Break, Token};
use crate::model::{ApplianceMap, Id, ThingKind, Verb};
use std::ops::Range;

/// Of at most so many words is a name that "one" stands for.
const MOST_WORDS: usize = 4;
/// At most so many places are said of it: "out of the body of the valve".
const MOST_PLACES: usize = 3;

/// The tokens with the nouns that "one" stands for behind a side or "new".
pub(super) fn with_nouns_of_sides(tokens: Vec<Token<'_>>) -> Vec<Token<'_>> {
    if !tokens.iter().any(|token| matches!(&*token.text, "one" | "ones")) {
        return tokens;
    }
    let mut all: Vec<Token<'_>> = Vec::with_capacity(tokens.len() + MOST_WORDS);
    for token in &tokens {
        let at = all.len();
        all.push(token.clone());
        let noun = noun_of_other_side(&all, at).map(|noun| noun..noun + 1).or_else(|| noun_of_old(&all, at));
        let words = noun.and_then(|noun| all.get(noun)).unwrap_or_default();
        let stands_for: Vec<Token<'_>> = words.iter().map(|word| token.standing_for(word)).collect();
        if !stands_for.is_empty() {
            all.truncate(at);
            all.extend(stands_for);
        }
    }
    all
}

/// The tokens with the name of the only part that the step before took out for "a new one" at the beginning of a line; and
/// whether it stands there.
pub(super) fn with_noun_of_step_before<'w>(
    tokens: Vec<Token<'w>>,
    map: &ApplianceMap,
    here: &Here,
) -> (Vec<Token<'w>>, bool) {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let is_new = |i: &usize| match text(*i) {
        "one" => matches!(text(i - 2), "a" | "the") && text(i - 1) == "new",
        "ones" => text(i - 1) == "new",
        _ => false,
    };
    let Some(one) = (2..=MOST_WORDS).find(is_new) else { return (tokens, false) };
    let is_out =
        |id: &&Id| map.thing_kind(id) == Some(ThingKind::Component) && here.is_possible(&Verb::Fit, id);
    let mut out = here.changed_before().filter(is_out);
    let (Some(part), None) = (out.next(), out.next()) else { return (tokens, false) };
    // "Unscrew the nozzle and take the cartridge out": what is screwed out is out as well.
    let is_screwed_out = |id: &Id| {
        let thread = map.connection(id).filter(|thread| thread.name.ends_with(" thread"));
        thread.is_some_and(|thread| !thread.joins.contains(part) && here.is_possible(&Verb::Make, id))
    };
    if here.changed_before().any(is_screwed_out) {
        return (tokens, false);
    }
    let name = map.name_of(part);
    if is_plural(head_of(name)) != (text(one) == "ones") {
        return (tokens, false);
    }
    let stands_for = |(i, token): (usize, Token<'w>)| -> Vec<Token<'w>> {
        if i == one { name.split(' ').map(|word| token.called(word)).collect() } else { vec![token] }
    };
    (tokens.into_iter().enumerate().flat_map(stands_for).collect(), true)
}

/// The noun for which "one" at a token stands.
fn noun_of_other_side(tokens: &[Token<'_>], at: usize) -> Option<usize> {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let joined = |i: usize| tokens.get(i).is_some_and(|token| token.before == Break::None);
    if at < 2 || text(at) != "one" || !joined(at) || !is_side(text(at - 1)) {
        return None;
    }
    let is_sentence = |i: &usize| tokens.get(*i).is_some_and(|token| token.before != Break::Sentence);
    let side = (0..at - 1)
        .rev()
        .take_while(|i| is_sentence(&(i + 1)))
        .find(|i| are_opposite(text(*i), text(at - 1)))?;
    // Of one word: "the left cover", and not "the left fan cover".
    let ends = |i: usize| {
        !joined(i)
            || matches!(text(i), "and" | "back" | "off" | "or" | "out" | "then")
            || PREPOSITIONS.contains(&text(i))
    };
    (joined(side + 1) && side + 1 < at - 1 && ends(side + 2)).then_some(side + 1)
}

/// "Take the air filter out of the housing and fit a new *one*": the noun of what came off, whatever it came off.
fn noun_of_old(tokens: &[Token<'_>], at: usize) -> Option<Range<usize>> {
    const BESIDE: &[&str] = &["away", "down", "off", "out", "up"];
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let before = |back: usize| at.checked_sub(back).map_or("", text);
    let is_it = match text(at) {
        "one" => before(1) == "new" && matches!(before(2), "a" | "the"),
        "ones" => before(1) == "new",
        _ => false,
    };
    if !is_it {
        return None;
    }
    let is_sentence = |i: &usize| tokens.get(i + 1).is_some_and(|token| token.before != Break::Sentence);
    let parts = |i: &usize| matches!(text(*i), "and" | "then");
    let and = (1..at - 1).rev().take_while(is_sentence).find(parts)?;
    let is_said = |i: &usize| !BESIDE.contains(&text(*i)) && !parts(i);
    let mut noun = name_before(tokens, (0..and).rev().find(is_said)? + 1)?;
    // "Off *the flange*" says where it was.
    for _ in 0..MOST_PLACES {
        let Some(lead) = noun.start.checked_sub(2).filter(|i| PREPOSITIONS.contains(&text(*i))) else {
            break;
        };
        // "Take *out* the fan" says how, and not where.
        let is_verb = |i: usize| {
            i == 0 || tokens.get(i).is_some_and(|token| token.before != Break::None) || parts(&(i - 1))
        };
        if BESIDE.contains(&text(lead)) && lead > 0 && is_verb(lead - 1) {
            break;
        }
        let is_word = |i: &usize| !PREPOSITIONS.contains(&text(*i)) && is_said(i);
        noun = name_before(tokens, (0..lead).rev().find(is_word)? + 1)?;
    }
    // Of two, which one is new is not said; and "ones" are several.
    let is_second = noun.start > 1 && text(noun.start - 2) == "and";
    let is_alike = is_plural(text(noun.end - 1)) == (text(at) == "ones");
    (!is_second && is_alike).then_some(noun)
}

/// The words behind an article that end before a token: "the *air filter*".
pub(super) fn name_before(tokens: &[Token<'_>], end: usize) -> Option<Range<usize>> {
    const BEFORE: &[&str] = &["a", "both", "four", "its", "old", "the", "three", "two"];
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let joined = |i: usize| tokens.get(i).is_some_and(|token| token.before == Break::None);
    let is_word = |i: &usize| {
        joined(*i) && text(*i).chars().all(char::is_alphabetic) && !PREPOSITIONS.contains(&text(*i))
    };
    let begins = |i: usize| i.checked_sub(1).is_some_and(|i| BEFORE.contains(&text(i)));
    let start =
        (end.saturating_sub(MOST_WORDS)..end).rev().take_while(is_word).find(|start| begins(*start))?;
    (text(start) != "old").then_some(start..end)
}
