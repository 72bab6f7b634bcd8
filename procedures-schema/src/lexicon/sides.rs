//! Words for a side that are verbs as well: "the *left* valve closed", "remove *extract* filter", "take *lower* cover off".

use super::phrase::Said;
use super::text::{Break, Token};

/// What stands behind such a word where it is a verb.
const OBJECTS: &[&str] = &[
    "a",
    "all",
    "alone",
    "an",
    "and",
    "any",
    "as",
    "behind",
    "both",
    "closed",
    "down",
    "each",
    "everything",
    "fitted",
    "for",
    "half",
    "hanging",
    "in",
    "into",
    "it",
    "its",
    "lying",
    "off",
    "on",
    "one",
    "open",
    "or",
    "out",
    "over",
    "overnight",
    "running",
    "safe",
    "shut",
    "some",
    "than",
    "that",
    "the",
    "their",
    "them",
    "this",
    "to",
    "two",
    "until",
    "up",
    "with",
    "you",
    "your",
];

/// What is on the extract side where air is moved.
const EXTRACTED: &[&str] =
    &["air", "belt", "damper", "duct", "fan", "filter", "filters", "grille", "motor", "side", "silencer"];

/// Takes the phrases away that begin with such a word where it says a side.
pub(super) fn drop_sides(tokens: &[Token<'_>], said: &mut Vec<Said>, n_before: usize) {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    if !said.iter().skip(n_before).any(|phrase| first_of(phrase).is_some_and(|first| is_word(text(first)))) {
        return;
    }
    let firsts: Vec<usize> = said.iter().skip(n_before).filter_map(first_of).collect();
    let mut at = 0;
    said.retain(|phrase| {
        at += 1;
        at <= n_before || first_of(phrase).is_none_or(|first| !is_side(tokens, first, &firsts))
    });
}

fn first_of(phrase: &Said) -> Option<usize> {
    phrase.tokens.first().copied()
}

fn is_word(text: &str) -> bool {
    matches!(text, "extract" | "left" | "lower")
}

/// Whether a word says a side: a noun follows it at once; "extract" only of what moves air, and beside another verb.
fn is_side(tokens: &[Token<'_>], at: usize, firsts: &[usize]) -> bool {
    let joined = |i: usize| tokens.get(i).is_some_and(|token| token.before == Break::None);
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let next = text(at + 1);
    let is_noun = joined(at + 1)
        && next.bytes().all(|byte| byte.is_ascii_alphabetic() || byte == b'-')
        && !next.ends_with("ly")
        && !OBJECTS.contains(&next);
    let in_stretch = |other: usize| {
        let (from, to) = (at.min(other), at.max(other));
        other != at && (from + 1..=to).all(joined)
    };
    match text(at) {
        "left" | "lower" => is_noun,
        "extract" => {
            let is_told = (at + 2..tokens.len()).take_while(|i| joined(*i)).any(|i| text(i).ends_with("ed"));
            let before = |back: usize| at.checked_sub(back).map_or("", text);
            // "The supply *and extract* belts", "open *extract* door".
            let is_other_side = joined(at) && before(1) == "and" && matches!(before(2), "exhaust" | "supply");
            let is_object = joined(at) && at.checked_sub(1).is_some_and(|before| firsts.contains(&before));
            let moves_air = EXTRACTED.contains(&next);
            let is_beside_verb = is_told || firsts.iter().any(|first| in_stretch(*first));
            is_noun && (is_other_side || is_object || (moves_air && is_beside_verb))
        }
        _ => false,
    }
}
