//! Verbs that nobody knows: "take the sign away and *rinse* the bowl". What they act on is none of what the verb
//! before them acts on.
use crate::lexicon::{Said, Token};

/// What may stand behind "and" before an article and is no verb.
const NO_VERBS: &[&str] = &[
    "above", "across", "after", "against", "all", "along", "around", "as", "at", "because", "before",
    "behind", "below", "beside", "between", "both", "but", "by", "down", "for", "from", "half", "if", "in",
    "inside", "into", "near", "not", "of", "off", "on", "once", "only", "onto", "or", "out", "over", "round",
    "so", "that", "then", "through", "till", "to", "towards", "under", "unless", "until", "up", "via",
    "when", "where", "while", "with", "without",
];

/// What a verb acts on begins like this.
const OBJECTS: &[&str] =
    &["a", "an", "her", "him", "it", "its", "the", "their", "them", "these", "this", "those", "your"];

/// Words behind "and" that act on something and say no verb that is known.
pub(super) fn verbs(tokens: &[Token<'_>], said: &[Said]) -> Vec<usize> {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let goes_on = |i: usize| tokens.get(i).is_some_and(|token| token.before == crate::lexicon::Break::None);
    // "And *hold the* pipe" is known to say nothing; "and *leave* it *open*" goes on with what was said.
    let is_known = |i: usize| {
        let is_idle = |said: &Said| said.means.is_empty() && said.tokens.as_slice() == [i, i + 1];
        said.iter().any(|said| said.tokens.contains(&i) && !is_idle(said))
    };
    let is_verb = |i: &usize| {
        let word = text(*i);
        let is_word = word.chars().all(char::is_alphabetic) && !word.ends_with("ly");
        is_word
            && matches!(text(*i - 1), "and" | "then")
            && goes_on(*i)
            && goes_on(*i + 1)
            && OBJECTS.contains(&text(*i + 1))
            && !NO_VERBS.contains(&word)
            && !OBJECTS.contains(&word)
            && !is_known(*i)
    };
    (1..tokens.len()).filter(is_verb).collect()
}
