//! How many fasteners words speak of, against the counts of the actions and of the map.

use super::counted_beside::beside;
use super::{Difference, Holder, Value, Words, only, stretch, word};
use crate::check::context::Context;
use crate::lexicon::{Amount, Break, Lexicon, Token};
use crate::model::{Action, Step, Verb};

/// What is counted: fasteners and what is made one by one.
const COUNTED: &[&str] = &["bolts", "screws", "nuts", "studs", "clips", "fasteners", "terminals", "clamps"];

/// Words that end the search for what a number counts.
const OTHERS: &[&str] = &["people", "persons", "turns", "passes", "steps", "and"];

/// Words by which a number is only a part of what is meant.
const PARTS: &[&str] =
    &["each", "every", "per", "other", "another", "more", "remaining", "pair", "pairs", "time"];

/// A number of fasteners in words, by its first token and that of its noun.
pub(super) type Stated = (u32, usize, usize);

/// A number of fasteners that an action takes, or the map knows of its things.
#[derive(Clone, Copy)]
pub(super) struct Held {
    /// How many.
    pub(super) n: u32,
    /// The position of the action.
    pub(super) action: usize,
    /// Where it is held.
    pub(super) holder: Holder,
}

/// Adds what differs.
pub(super) fn differ(context: &Context<'_>, step: &Step, words: &Words<'_>, found: &mut Vec<Difference>) {
    let stated = &words.stating.counts;
    let held: Vec<Held> =
        step.actions.iter().enumerate().filter_map(|(k, action)| count_of(context, k, action)).collect();
    let total: u32 = held.iter().fold(0, |sum, held| sum.saturating_add(held.n));
    let all_stated: u32 = stated.iter().fold(0, |sum, (n, _, _)| sum.saturating_add(*n));
    // "The two screws of the one and the single screw of the other": beside things of which there is one each.
    let n_beside = |held: &Held| {
        let on = step.actions.get(held.action).into_iter().flat_map(|action| &action.on);
        let single = on.filter(|id| context.connection(id).is_some_and(|known| known.count == 1));
        u32::try_from(single.count()).unwrap_or(u32::MAX)
    };
    let is_held = |n: u32| {
        n == total || held.iter().any(|held| held.n == n || held.n == n.saturating_add(n_beside(held)))
    };
    let is_said = |n: u32| n == all_stated || stated.iter().any(|(stated, _, _)| *stated == n);
    let unmet = only(stated.iter().filter(|(n, _, _)| !is_held(*n)));
    let unsaid = only(held.iter().filter(|held| !is_said(held.n)));
    if stated.iter().all(|(n, _, _)| is_held(*n)) {
        return;
    }
    let tokens = words.tokens();
    let pair = unmet.zip(unsaid.copied()).or_else(|| beside(context, step, stated, &tokens));
    let Some(((_, from, last), Held { n, action, holder })) = pair else { return };
    if tokens.iter().any(|token| PARTS.contains(&token.text.as_ref())) {
        return;
    }
    let (span, text) = stretch(&step.words, &tokens, *from, *last);
    let first = step.actions.get(action).and_then(|action| action.on.get(holder.thing()));
    let thing = first.map_or_else(String::new, |id| format!(" of {}", context.the_id(id)));
    let held = format!("its action says {n}{thing}");
    found.push(Difference { span, stated: text, held, holder, value: Value::Count(n) });
}

/// Whether of what an action does a number can be said.
pub(super) fn is_counting(action: &Action) -> bool {
    matches!(action.verb, Verb::Undo | Verb::Slacken | Verb::Make | Verb::Tighten)
}

/// How many an action takes, if it is known of it or of what it names; one is what a map says that knows none.
fn count_of(context: &Context<'_>, k: usize, action: &Action) -> Option<Held> {
    if !is_counting(action) {
        return None;
    }
    if let Some(n) = action.count {
        return Some(Held { n, action: k, holder: Holder::Count(k) });
    }
    let known = action.on.iter().filter_map(|id| context.connection(id)).map(|known| known.count);
    let all: u32 = known.fold(0, u32::saturating_add);
    let one_each = u32::try_from(action.on.len()).unwrap_or(u32::MAX);
    // Of several things together nobody says which of them has another number.
    let holder = if action.on.len() == 1 { Holder::MapCount(k, 0) } else { Holder::Thing(k) };
    (all > one_each).then_some(Held { n: all, action: k, holder })
}

/// The numbers of fasteners in the words: `four bolts`, `two of the lid screws`, `4 M6 screws`; none where two
/// numbers share a noun: "two upper and two lower bolts". Only the tokens at these positions may be numbers.
pub(super) fn stated(lexicon: Option<&Lexicon>, tokens: &[Token<'_>], numbers: &[usize]) -> Vec<Stated> {
    let mut all = Vec::new();
    for &at in numbers {
        let Some(Amount::Exactly(n)) = amount_at(lexicon, tokens, at) else { continue };
        match counted(lexicon, tokens, at) {
            Counted::Noun(last) if n > 1 && word(tokens, at) != "both" && !measures(tokens, at) => {
                all.push((n, at, last));
            }
            Counted::Shared => return Vec::new(),
            _ => {}
        }
    }
    all
}

/// Whether a number is a length and counts nothing: "M8 x *20* screws", "the *22* mm nuts".
fn measures(tokens: &[Token<'_>], at: usize) -> bool {
    is_length(tokens, at) || word(tokens, at + 1) == "mm"
}

/// Whether a number is a length behind a thread: "M8 x *20*".
fn is_length(tokens: &[Token<'_>], at: usize) -> bool {
    at.checked_sub(1).is_some_and(|before| word(tokens, before) == "x")
}

fn amount_at(lexicon: Option<&Lexicon>, tokens: &[Token<'_>], at: usize) -> Option<Amount> {
    lexicon?.amount_of(tokens.get(at)?)
}

/// What a number counts.
enum Counted {
    /// Fasteners, by the token of their noun.
    Noun(usize),
    /// What the number behind "and" counts.
    Shared,
    /// Something else.
    Other,
}

/// "Two bolts of the fan *and the four of* the pump".
fn counts_on(lexicon: Option<&Lexicon>, tokens: &[Token<'_>], noun: usize) -> bool {
    let leads = |at: usize| matches!(word(tokens, at), "at" | "from" | "of" | "off" | "on");
    let is_again = |and: usize| {
        word(tokens, and) == "and"
            && word(tokens, and + 1) == "the"
            && amount_at(lexicon, tokens, and + 2).is_some()
            && leads(and + 3)
    };
    let begins = |at: &usize| tokens.get(*at).is_some_and(|token| token.before == Break::Sentence);
    let end = (noun + 1..tokens.len()).find(begins).unwrap_or(tokens.len());
    (noun + 1..end).any(is_again)
}

fn counted(lexicon: Option<&Lexicon>, tokens: &[Token<'_>], number: usize) -> Counted {
    const FARTHEST: usize = 6;
    let behind = (number + 1..tokens.len().min(number + 1 + FARTHEST))
        .take_while(|at| tokens.get(*at).is_some_and(|token| token.before == Break::None));
    for at in behind {
        let text = word(tokens, at);
        if text == "and" && amount_at(lexicon, tokens, at + 1).is_some() {
            return Counted::Shared;
        }
        if COUNTED.contains(&text) {
            return if counts_on(lexicon, tokens, at) { Counted::Shared } else { Counted::Noun(at) };
        }
        let counts = amount_at(lexicon, tokens, at).is_some() && !is_length(tokens, at);
        if counts || OTHERS.contains(&text) {
            break;
        }
    }
    Counted::Other
}
