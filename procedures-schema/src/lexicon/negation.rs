//! What unsays a verb: "do not", "never", "without", "before", as far as they reach.
//!
//! When in doubt a verb counts as unsaid: a warning too many is an annoyance, an order that was never
//! given is a danger.

use super::text::{Break, Token};

/// Words that unsay what follows.
const UNSAY: &[&str] = &[
    "aren't",
    "avoid",
    "before",
    "can't",
    "cannot",
    "couldn't",
    "didn't",
    "doesn't",
    "don't",
    "forbidden",
    "hasn't",
    "haven't",
    "isn't",
    "mustn't",
    "needn't",
    "neither",
    "never",
    "nobody",
    "none",
    "nor",
    "not",
    "prohibited",
    "rather",
    "shouldn't",
    "unless",
    "wasn't",
    "without",
    "won't",
];

/// Words that unsay what follows unless they are unsaid themselves: "skip the leak test".
const LEAVE_OUT: &[&str] = &["forget", "omit", "omitting", "skip", "skipping"];

/// Words that, after "not", unsay what came before: "locking is not needed".
const NOT_WANTED: &[&str] = &["allowed", "necessary", "needed", "permitted", "required", "wanted"];

/// Words after which an unsaying word does not count: "do not forget to lock it off", "not only".
const KEEP_SAYING: &[&str] = &["fail", "forget", "omit", "only"];

/// Words that end the reach.
const ENDS: &[&str] = &["but", "instead", "otherwise", "then"];

/// Whether what begins at a token is unsaid.
pub(super) fn is_unsaid(tokens: &[Token<'_>], begin: usize) -> bool {
    let sentence =
        tokens.iter().take(begin + 1).rposition(|token| token.before == Break::Sentence).unwrap_or(0);
    let word = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let unsays = |i: usize| {
        let kept = KEEP_SAYING.contains(&word(i + 1));
        let in_two = matches!((word(i), word(i + 1)), ("no", "need") | ("instead", "of"));
        let before = i.checked_sub(1).map_or("", word);
        let left_out = LEAVE_OUT.contains(&word(i)) && !UNSAY.contains(&before);
        (UNSAY.contains(&word(i)) && !kept) || in_two || left_out
    };
    let before = (sentence..begin).any(|i| unsays(i) && reaches(tokens, i, begin));
    before || is_not_wanted(tokens, begin)
}

/// Whether "not needed" or the like follows in the same part of the sentence.
fn is_not_wanted(tokens: &[Token<'_>], begin: usize) -> bool {
    let after = tokens.iter().skip(begin + 1);
    let part: Vec<&str> =
        after.take_while(|token| token.before == Break::None).map(|token| &*token.text).collect();
    part.windows(2).any(|pair| matches!(pair, ["not", wanted] if NOT_WANTED.contains(wanted)))
}

/// Whether what an unsaying word says reaches up to a token of the same sentence.
///
/// A comma ends it, unless the sentence goes on with "or": "do not open, close or lock it".
fn reaches(tokens: &[Token<'_>], from: usize, to: usize) -> bool {
    let mut between = tokens.iter().take(to + 1).skip(from + 1);
    let ended = between.clone().any(|token| ENDS.contains(&&*token.text));
    let comma = between.position(|token| token.before == Break::Comma);
    let goes_on_with_or = |comma: usize| {
        let rest = tokens.iter().skip(from + 1 + comma);
        let mut sentence = rest.take_while(|token| token.before != Break::Sentence);
        sentence.any(|token| token.text == "or" || token.text == "nor")
    };
    !ended && comma.is_none_or(goes_on_with_or)
}
