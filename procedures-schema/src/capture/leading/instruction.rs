//! Whether words are an instruction of their own.

use super::english::{CONDITIONS, LEAD_INS, ORDERS};
use crate::lexicon::{Break, Lexicon, Token, tokens};

/// Whether the words begin with what is to be done, perhaps after a condition: "When it is cold, undo the
/// unions".
pub(in crate::capture) fn is_instruction(words: &str) -> bool {
    let tokens = tokens(words);
    let starts = verbs(&tokens);
    let first = |from: usize| {
        let lead_ins = tokens.get(from..).unwrap_or_default().iter();
        from + lead_ins.take_while(|token| LEAD_INS.contains(&token.text.as_ref())).count()
    };
    let begins = |from: usize| begins_order(&tokens, &starts, first(from));
    if begins(0) {
        return true;
    }
    let is_condition = tokens.first().is_some_and(|token| CONDITIONS.contains(&token.text.as_ref()));
    let after_comma = |(i, token): (usize, &Token<'_>)| (i > 0 && token.before == Break::Comma).then_some(i);
    is_condition && tokens.iter().enumerate().filter_map(after_comma).any(begins)
}

/// Whether a verb begins the words and something follows it: "Remove cover", but not "Put back".
pub(in crate::capture) fn orders_a_thing(words: &str) -> bool {
    let tokens = tokens(words);
    let said = Lexicon::for_language("en").map(|lexicon| lexicon.phrases_of(&tokens)).unwrap_or_default();
    said.iter().any(|said| {
        let last = said.tokens.last().copied().unwrap_or_default();
        !said.means.is_empty() && said.tokens.first() == Some(&0) && last + 1 < tokens.len()
    })
}

fn begins_order(tokens: &[Token<'_>], starts: &[usize], at: usize) -> bool {
    let Some(token) = tokens.get(at) else { return false };
    let followed = at + 1 < tokens.len();
    followed && (starts.contains(&at) || ORDERS.contains(&token.text.as_ref()))
}

/// The tokens with which a verb phrase begins.
fn verbs(tokens: &[Token<'_>]) -> Vec<usize> {
    let said = Lexicon::for_language("en").map(|lexicon| lexicon.phrases_of(tokens)).unwrap_or_default();
    said.iter()
        .filter(|said| !said.means.is_empty())
        .filter_map(|said| said.tokens.first().copied())
        .collect()
}
