//! Words that lead to what is done next, as "then" does: "shut the gas cock, *and after that* the flow valve".

use crate::lexicon::{Break, Token};

/// The tokens with "then" for what stands for it.
pub(super) fn with_then(tokens: Vec<Token<'_>>) -> Vec<Token<'_>> {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let joined = |i: usize| tokens.get(i).is_some_and(|token| token.before == Break::None);
    let stands_for_then = |i: usize| {
        let is_so = matches!((text(i), text(i + 1)), ("after", "that" | "this") | ("followed", "by"));
        let is_led = i > 0 && (!joined(i) || text(i - 1) == "and");
        let leads_on = joined(i + 2) && matches!(text(i + 2), "a" | "an" | "both" | "its" | "the" | "their");
        is_so && is_led && joined(i + 1) && leads_on
    };
    let places: Vec<usize> = (1..tokens.len()).filter(|i| stands_for_then(*i)).collect();
    let mut tokens = tokens;
    for at in places.into_iter().rev() {
        tokens.remove(at + 1);
        if let Some(token) = tokens.get_mut(at) {
            *token = token.taken_for("then");
        }
    }
    tokens
}
