//! How many fasteners words speak of, against the counts of the actions and of the map.

use super::{Difference, Words, only, stretch, word};
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

/// Adds what differs.
pub(super) fn differ(context: &Context<'_>, step: &Step, words: &Words<'_>, found: &mut Vec<Difference>) {
    let stated = &words.stating.counts;
    let held: Vec<(&Action, u32)> =
        step.actions.iter().filter_map(|action| Some((action, count_of(context, action)?))).collect();
    let total: u32 = held.iter().fold(0, |sum, (_, n)| sum.saturating_add(*n));
    let all_stated: u32 = stated.iter().fold(0, |sum, (n, _, _)| sum.saturating_add(*n));
    let is_held = |n: u32| n == total || held.iter().any(|(_, held)| *held == n);
    let is_said = |n: u32| n == all_stated || stated.iter().any(|(stated, _, _)| *stated == n);
    let Some((_, from, last)) = only(stated.iter().filter(|(n, _, _)| !is_held(*n))) else { return };
    let Some((action, n)) = only(held.iter().filter(|(_, n)| !is_said(*n))) else { return };
    let tokens = words.tokens();
    if tokens.iter().any(|token| PARTS.contains(&token.text.as_ref())) {
        return;
    }
    let (span, text) = stretch(&step.words, &tokens, *from, *last);
    let thing = action.on.first().map_or_else(String::new, |id| format!(" of {}", context.the_id(id)));
    found.push(Difference { span, stated: text, held: format!("its action says {n}{thing}") });
}

/// How many an action takes, if it is known of it or of what it names; one is what a map says that knows none.
fn count_of(context: &Context<'_>, action: &Action) -> Option<u32> {
    if !matches!(action.verb, Verb::Undo | Verb::Slacken | Verb::Make | Verb::Tighten) {
        return None;
    }
    let known = action.on.iter().filter_map(|id| context.connection(id)).map(|known| known.count);
    let all: u32 = known.fold(0, u32::saturating_add);
    let one_each = u32::try_from(action.on.len()).unwrap_or(u32::MAX);
    action.count.or(Some(all).filter(|all| *all > one_each))
}

/// The numbers of fasteners in the words: `four bolts`, `two of the lid screws`, `4 M6 screws`; none where two
/// numbers share a noun: "two upper and two lower bolts". Only the tokens at these positions may be numbers.
pub(super) fn stated(
    lexicon: Option<&Lexicon>,
    tokens: &[Token<'_>],
    numbers: &[usize],
) -> Vec<(u32, usize, usize)> {
    let mut all = Vec::new();
    for &at in numbers {
        let Some(Amount::Exactly(n)) = amount_at(lexicon, tokens, at) else { continue };
        match counted(lexicon, tokens, at) {
            Counted::Noun(last) if n > 1 && word(tokens, at) != "both" => all.push((n, at, last)),
            Counted::Shared => return Vec::new(),
            _ => {}
        }
    }
    all
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

fn counted(lexicon: Option<&Lexicon>, tokens: &[Token<'_>], number: usize) -> Counted {
    const FARTHEST: usize = 4;
    let behind = (number + 1..tokens.len().min(number + 1 + FARTHEST))
        .take_while(|at| tokens.get(*at).is_some_and(|token| token.before == Break::None));
    for at in behind {
        let text = word(tokens, at);
        if text == "and" && amount_at(lexicon, tokens, at + 1).is_some() {
            return Counted::Shared;
        }
        if COUNTED.contains(&text) {
            return Counted::Noun(at);
        }
        if amount_at(lexicon, tokens, at).is_some() || OTHERS.contains(&text) {
            break;
        }
    }
    Counted::Other
}
