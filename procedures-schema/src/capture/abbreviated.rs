//! Words that shorthand abbreviates by a stroke: "door off *w/* two screws", "run *w/o* gas"; sides that go by two words,
//! "the *left-hand* cover"; the T&P valve; and "pump *1's* plug".

use super::coin::is_label;
use crate::lexicon::Token;
use crate::model::Span;

/// The tokens with what the strokes stand for.
pub(super) fn spelt_out<'w>(words: &str, tokens: Vec<Token<'w>>) -> Vec<Token<'w>> {
    let mut tokens = with_labels_of_owners(with_relief_valve(tokens));
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

/// "Pump *1's* plug", which is the pump 1 plug.
fn with_labels_of_owners(mut tokens: Vec<Token<'_>>) -> Vec<Token<'_>> {
    for token in &mut tokens {
        if let Some(owner) = token.without_possessive().filter(|owner| is_label(owner.raw)) {
            *token = owner;
        }
    }
    tokens
}

/// "The *T&P* valve" that opens by temperature and by pressure: one word of its name.
fn with_relief_valve(mut tokens: Vec<Token<'_>>) -> Vec<Token<'_>> {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let n_signs = |at: usize| usize::from(text(at + 1) == "and");
    let is_it = |at: &usize| {
        let last = at + 1 + n_signs(*at);
        (text(*at), text(last)) == ("t", "p")
            && matches!(text(last + 1), "lever" | "relief" | "valve" | "valves")
    };
    if let Some(at) = (0..tokens.len()).find(is_it) {
        let n = 1 + n_signs(at);
        let named = tokens.get(at).map(|first| first.taken_for("t&p"));
        tokens.splice(at..=at + n, named);
    }
    tokens
}
