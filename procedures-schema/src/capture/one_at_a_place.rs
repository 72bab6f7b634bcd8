//! "The clamp at the elbow and *the one* at the bend", "the two bolts of the upper bracket and *the two* of the lower one": a noun
//! that is said once for two places, "the plug of the fan and *that* of the pump"; and what words call new: "fit *the
//! replacement*", "fit *one of the same rating*".

use super::before_and_after::with_before_and_after;
use super::coin::{CONDITIONS, ENDS, PREPOSITIONS, noun};
use super::mention::{is_plural, singular};
use super::other_side::name_before;
use super::twins::WHERE;
use crate::lexicon::{Break, Token, amount};
use std::ops::Range;

/// In what a new part is like the old one.
const LIKE: &[&str] = &["kind", "make", "model", "rating", "size", "sort", "type"];

/// The tokens with "new" for "replacement" and its like.
pub(super) fn with_new_ones(tokens: Vec<Token<'_>>) -> Vec<Token<'_>> {
    if !tokens.iter().any(|token| matches!(&*token.text, "replacement" | "same")) {
        return tokens;
    }
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let mut all = Vec::with_capacity(tokens.len() + 1);
    let mut i = 0;
    while let Some(token) = tokens.get(i) {
        let joined = |i: usize| tokens.get(i).is_some_and(|token| token.before == Break::None);
        let is_like = [0, 1, 2, 3].map(|n| text(i + n)) == ["one", "of", "the", "same"]
            && LIKE.contains(&text(i + 4))
            && (i + 1..=i + 4).all(joined);
        if is_like {
            all.extend(["a", "new", "one"].map(|word| token.taken_for(word)));
            i += 5;
            continue;
        }
        all.push(if token.text == "replacement" { token.taken_for("new") } else { token.clone() });
        if token.text == "replacement" && !goes_on_with_a_name(&tokens, i + 1) {
            all.push(token.taken_for("one"));
        }
        i += 1;
    }
    all
}

fn goes_on_with_a_name(tokens: &[Token<'_>], at: usize) -> bool {
    tokens.get(at).is_some_and(|next| {
        next.before == Break::None
            && next.text.starts_with(|c: char| c.is_alphanumeric())
            && !PREPOSITIONS.contains(&&*next.text)
            && next.text != "and"
            && !ENDS.contains(&&*next.text)
            && !CONDITIONS.contains(&&*next.text)
    })
}

/// The tokens with the noun for "the one" or "the two" before a place.
pub(super) fn with_nouns_at_places(tokens: Vec<Token<'_>>) -> Vec<Token<'_>> {
    let tokens = with_before_and_after(tokens);
    let stands = |i: &usize| stands_for(&tokens, *i);
    let Some((at, noun)) = (2..tokens.len()).find_map(|i| Some(i).zip(stands(&i))) else {
        return with_place_of_it(tokens);
    };
    let name: Vec<Token<'_>> = tokens.get(noun).unwrap_or_default().to_vec();
    let mut all = Vec::with_capacity(tokens.len() + name.len());
    for (i, token) in tokens.into_iter().enumerate() {
        let is_it = i == at;
        if is_it && matches!(&*token.text, "that" | "those") {
            all.push(token.taken_for("the"));
        } else if !is_it || token.text != "one" {
            all.push(token.clone());
        }
        if is_it {
            all.extend(name.iter().map(|word| token.standing_for(word)));
        }
    }
    // "Of the fan, that of the pump *and that of the valve*."
    with_nouns_at_places(all)
}

/// "The valve before the pump and the valve *after it*": after the pump.
fn with_place_of_it(tokens: Vec<Token<'_>>) -> Vec<Token<'_>> {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let is_where = |i: usize| WHERE.contains(&text(i));
    let it = (3..tokens.len()).find(|i| text(*i) == "it" && is_where(i - 1));
    let place = it.and_then(|it| {
        let parts = (0..it).rev().find(|i| matches!(text(*i), "and" | "then"))?;
        let noun = text(it.checked_sub(2)?).to_owned();
        let is_first = |i: &usize| is_where(*i) && text(i - 1) == noun && text(i + 1) == "the";
        let lead = (1..parts).rev().find(is_first)?;
        let joined = |i: &usize| tokens.get(*i).is_some_and(|token| token.before == Break::None);
        let is_name = |i: &usize| joined(i) && !matches!(text(*i), "and" | "first" | "then");
        let n = (lead + 1..parts).take_while(is_name).count();
        Some((it, lead + 1..lead + 1 + n))
    });
    let Some((it, place)) = place else { return tokens };
    let words: Vec<Token<'_>> = tokens.get(place).unwrap_or_default().to_vec();
    let mut all = Vec::with_capacity(tokens.len() + words.len());
    for (i, token) in tokens.into_iter().enumerate() {
        if i == it {
            all.extend(words.iter().map(|word| token.standing_for(word)));
        } else {
            all.push(token);
        }
    }
    all
}

/// The noun for which a token stands that begins a second place.
fn stands_for(tokens: &[Token<'_>], at: usize) -> Option<Range<usize>> {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let joined = |i: usize| tokens.get(i).is_some_and(|token| token.before == Break::None);
    let is_lead = |i: usize| PREPOSITIONS.contains(&text(i)) || WHERE.contains(&text(i));
    let (is_that, is_one) = (matches!(text(at), "that" | "those"), matches!(text(at), "one" | "that"));
    // "And *that of* the pump", "and the *one at* the bend".
    let first = if is_that { at } else { at - 1 };
    let mut before = first.checked_sub(1)?;
    if text(before) == "then" && is_that {
        before = before.checked_sub(1)?;
    }
    let is_listed = is_that && tokens.get(at).is_some_and(|token| token.before == Break::Comma);
    before = if is_listed { at } else { before };
    let follows = is_listed
        || text(before) == "and"
        || (is_that && (text(before) == "then" || text(before + 1) == "then"));
    let is_joined = (joined(at) || is_listed) && joined(at + 1);
    let is_it = (is_that || text(first) == "the") && follows && is_lead(at + 1) && is_joined;
    if !is_it || !(is_that || is_one || amount(text(at)).is_some()) {
        return None;
    }
    let is_sentence = |i: &usize| tokens.get(i + 1).is_some_and(|token| token.before != Break::Sentence);
    let from = (0..before).rev().take_while(is_sentence).last()?;
    // The place that is set against it, "*at* the elbow and the one *at* the bend", before any other.
    let alike = (from + 1..before).rev().filter(|lead| text(*lead) == text(at + 1));
    let any = (from + 1..before).rev().filter(|lead| is_lead(*lead) && !is_that);
    alike.chain(any).find_map(|lead| {
        let name = name_before(tokens, lead)?;
        let head = text(name.end - 1);
        let is_thing = noun(&[singular(head)]).is_worked_on();
        (is_thing && is_plural(head) != is_one).then_some(name)
    })
}
