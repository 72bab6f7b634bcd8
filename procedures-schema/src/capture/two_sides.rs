//! "The union *on either side* of the pump": two of them, of what stands behind.

use super::coin::noun;
use super::mention::{is_plural, singular};
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
        if let Some(n) = sides_behind(&tokens, i).filter(|_| is_plural(&token.text)) {
            // "The valves *either side* of the pump" are those of it.
            all.push(token.clone());
            i += 1 + n;
            continue;
        }
        if article(&tokens, i).is_some() {
            // Behind the noun: "on either side".
            all.push(token.in_plural());
            i += 1 + sides_behind(&tokens, i).unwrap_or(0);
            continue;
        }
        let leads = (i + 1..=i + 1 + MOST_WORDS).any(|noun| article(&tokens, noun) == Some(i));
        all.push(if leads { token.taken_for("both") } else { token.clone() });
        i += 1;
    }
    all
}

/// How many tokens behind a thing say that it is on two sides: "on either side", "each end".
fn sides_behind(tokens: &[Token<'_>], at: usize) -> Option<usize> {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let joined = |i: usize| tokens.get(i).is_some_and(|token| token.before == Break::None);
    let n_leads = usize::from(matches!(text(at + 1), "at" | "on"));
    let first = at + 1 + n_leads;
    let says = match (text(first), text(first + 1)) {
        ("each" | "either", "end" | "hand" | "side") => true,
        ("both", "ends" | "sides") => n_leads == 1,
        _ => false,
    };
    let is_thing = || noun(&[singular(text(at))]).is_worked_on();
    // "Either side of *both* pumps" are more than two.
    let is_of_several = matches!((text(first + 2), text(first + 3)), ("of", "both" | "each"));
    (says && !is_of_several && (at + 1..=first + 1).all(joined) && is_thing()).then_some(n_leads + 2)
}

/// The article of a noun in the singular that is said to be on two sides.
fn article(tokens: &[Token<'_>], at: usize) -> Option<usize> {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let joined = |i: usize| tokens.get(i).is_some_and(|token| token.before == Break::None);
    sides_behind(tokens, at).filter(|_| !is_plural(text(at)))?;
    let before = (at.saturating_sub(MOST_WORDS + 1)..at).rev();
    before.take_while(|i| joined(i + 1)).find(|i| matches!(text(*i), "a" | "the"))
}
