//! Stretches of a line that tell something or forbid it: "crack the union, *it'll spit a drop*", "let it hang, *don't
//! kink the capillary*". Whatever they name, the verb before them does not act on it.

use crate::lexicon::{Break, Token};

/// Who or what a thought begins with that is no order.
const SUBJECTS: &[&str] = &[
    "he", "he'll", "he's", "i", "i'd", "i'll", "i'm", "i've", "it", "it'd", "it'll", "it's", "nobody", "she",
    "she'll", "she's", "somebody", "that'll", "that's", "there'll", "they", "they'll", "they're", "they've",
    "we", "we'll", "we're", "we've", "you", "you'd", "you'll", "you're", "you've",
];

/// What forbids.
const FORBIDDING: &[&str] = &["cannot", "can't", "don't", "never", "no", "not", "nothing"];

/// What may stand before such a thought, beside a stop or a comma.
const JOINING: &[&str] = &["and", "because", "but", "since", "then"];

/// Verbs of which a thing is the subject, and nobody is told to do anything.
const TELLING: &[&str] = &[
    "are", "has", "have", "is", "keeps", "looks", "must", "needs", "should", "stays", "wants", "was",
    "weighs", "were",
];

/// The stretches, each from its first token to the one behind its last.
pub(super) fn stretches(tokens: &[Token<'_>]) -> Vec<(usize, usize)> {
    let mut found = Vec::new();
    let mut at = 1;
    while at < tokens.len() {
        if begins(tokens, at) {
            let stops = |i: &usize| tokens.get(*i).is_none_or(|token| token.before != Break::None);
            let end = (at + 1..=tokens.len()).find(stops).unwrap_or(tokens.len());
            found.push((at, end));
            at = end;
        } else {
            at += 1;
        }
    }
    found
}

/// Whether a thought that orders nothing begins at a token.
fn begins(tokens: &[Token<'_>], at: usize) -> bool {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let stands_first = tokens.get(at).is_some_and(|token| token.before != Break::None);
    if !stands_first && !JOINING.contains(&text(at - 1)) {
        return false;
    }
    let forbids = FORBIDDING.contains(&text(at)) || (text(at) == "do" && text(at + 1) == "not");
    // "Same with the other one" says again what nobody has spelt out.
    let repeats = text(at) == "same" && matches!(text(at + 1), "at" | "for" | "goes" | "on" | "with");
    // "…, *but the cover stays off*."
    let contrasts = text(at - 1) == "but" && tells_how_it_is(tokens, at);
    SUBJECTS.contains(&text(at))
        || contrasts
        || (stands_first && (forbids || repeats || tells_how_it_is(tokens, at)))
}

/// "*The plugs are* different", "*the new one comes* without a clip".
fn tells_how_it_is(tokens: &[Token<'_>], at: usize) -> bool {
    const MOST_WORDS: usize = 4;
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let joined = |i: &usize| tokens.get(*i).is_some_and(|token| token.before == Break::None);
    let mut behind = (at + 1..=at + MOST_WORDS).take_while(joined);
    // "*Panels not* yet", "valve *not*, goes back to stores".
    let is_denied = (at + 1..=at + 3).take_while(joined).find(|i| text(*i) == "not");
    if is_denied.is_some_and(|not| !joined(&(not + 1)) || text(not + 1) == "yet") {
        return true;
    }
    let has_article = matches!(text(at), "a" | "an" | "its" | "the" | "their" | "this" | "your");
    // "The new *one comes* with a clip."
    let of_one = || (at + 1..=at + MOST_WORDS).any(|i| text(i) == "one" && text(i + 1).ends_with('s'));
    has_article && (of_one() || behind.any(|i| TELLING.contains(&text(i))))
}

#[cfg(test)]
mod tests {
    use super::stretches;
    use crate::lexicon::tokens;

    #[test]
    fn what_is_told_ends_at_the_next_comma() {
        let told = |words: &str| {
            let all = tokens(words);
            let text = |(from, to): (usize, usize)| {
                all[from..to].iter().map(|token| &*token.text).collect::<Vec<_>>().join(" ")
            };
            stretches(&all).into_iter().map(text).collect::<Vec<_>>()
        };
        assert_eq!(told("crack the union and see, it'll spit a drop, then close it"), ["it'll spit a drop"]);
        assert_eq!(told("let it hang, don't kink the capillary"), ["don't kink the capillary"]);
        assert_eq!(told("lock it, same with the breaker"), ["same with the breaker"]);
        assert_eq!(told("undo it and put it aside"), [""; 0]);
    }
}
