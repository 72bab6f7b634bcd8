//! "The union *on either side* of the pump": two of them, of what stands behind.

use super::coin::noun;
use super::mention::is_plural;
use crate::lexicon::{Break, Token};

/// At most so many words stand between an article and the noun.
const MOST_WORDS: usize = 3;

/// The tokens with "both unions" for "the union on either side".
pub(super) fn with_both_sides(tokens: Vec<Token<'_>>) -> Vec<Token<'_>> {
    if !tokens.iter().any(|token| matches!(&*token.text, "both" | "each" | "either")) {
        return tokens;
    }
    let mut all = Vec::with_capacity(tokens.len());
    let mut i = 0;
    while let Some(token) = tokens.get(i) {
        if article(&tokens, i).is_some() {
            // Behind the noun: "on either side".
            all.push(token.in_plural());
            i += 4;
            continue;
        }
        let leads = (i + 1..=i + 1 + MOST_WORDS).any(|noun| article(&tokens, noun) == Some(i));
        all.push(if leads { token.taken_for("both") } else { token.clone() });
        i += 1;
    }
    all
}

/// The article of a noun in the singular that is said to be on two sides.
fn article(tokens: &[Token<'_>], at: usize) -> Option<usize> {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let joined = |i: usize| tokens.get(i).is_some_and(|token| token.before == Break::None);
    let sides = matches!(
        (text(at + 1), text(at + 2), text(at + 3)),
        ("at" | "on", "each" | "either", "end" | "hand" | "side") | ("at" | "on", "both", "ends" | "sides")
    );
    let head = [text(at).to_owned()];
    let is_thing = noun(&head).is_worked_on();
    if !sides || !is_thing || is_plural(text(at)) || !(at + 1..=at + 3).all(joined) {
        return None;
    }
    let before = (at.saturating_sub(MOST_WORDS + 1)..at).rev();
    before.take_while(|i| joined(i + 1)).find(|i| matches!(text(*i), "a" | "the"))
}
