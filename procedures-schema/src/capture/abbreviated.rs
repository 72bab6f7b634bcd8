//! Words that shorthand abbreviates by a stroke: "door off *w/* two screws", "run *w/o* gas"; and sides that go by two
//! words, "the *left-hand* cover".

use crate::lexicon::Token;
use crate::model::Span;

/// The tokens with what the strokes stand for.
pub(super) fn spelt_out<'w>(words: &str, mut tokens: Vec<Token<'w>>) -> Vec<Token<'w>> {
    let sides = ["-hand", "l/h", "r/h", "lh", "rh"];
    if !words.contains('/') && !tokens.iter().any(|token| sides.iter().any(|end| token.text.ends_with(end))) {
        return tokens;
    }
    for i in 0..tokens.len() {
        let Some(token) = tokens.get(i) else { break };
        let to = tokens.get(i + 1).map_or(token.span.1 + 1, |next| next.span.0);
        let meant = match &*token.text {
            "w" if Span(token.span.1, to).of(words).starts_with('/') => "with",
            "w/o" => "without",
            // "The *left-hand* cover."
            "left-hand" | "l/h" | "lh" => "left",
            "right-hand" | "r/h" | "rh" => "right",
            _ => continue,
        };
        let meant = token.taken_for(meant);
        if let Some(token) = tokens.get_mut(i) {
            *token = meant;
        }
    }
    tokens
}
