//! Screws that are named by their thread or drive alone: "both M5s", "four T25s": their noun is understood behind it.

use crate::lexicon::{Break, Token};

/// The tokens with the nouns that are understood among them.
pub(super) fn with_screws(tokens: Vec<Token<'_>>) -> Vec<Token<'_>> {
    if !(0..tokens.len()).any(|at| is_alone(&tokens, at)) {
        return tokens;
    }
    let mut all = Vec::with_capacity(tokens.len() + 2);
    for (at, token) in tokens.iter().enumerate() {
        all.push(token.clone());
        if is_alone(&tokens, at) {
            all.push(Token::without_width("screws", token.span.1, Break::None));
        }
    }
    all
}

/// Whether a thread in the plural stands at a token and no noun behind it: "both M5s", not "the M5 nuts".
fn is_alone(tokens: &[Token<'_>], at: usize) -> bool {
    const BEHIND: &[&str] = &[
        "again", "and", "around", "at", "back", "by", "for", "from", "in", "of", "off", "on", "out", "over",
        "round", "then", "through", "to", "under", "up", "with",
    ];
    let is_thread = |token: &Token<'_>| {
        let size = token.raw.strip_prefix(['M', 'T']).and_then(|size| size.strip_suffix('s'));
        size.is_some_and(|size| !size.is_empty() && size.bytes().all(|byte| byte.is_ascii_digit()))
    };
    tokens.get(at).is_some_and(is_thread)
        && tokens
            .get(at + 1)
            .is_none_or(|next| next.before != Break::None || BEHIND.contains(&next.text.as_ref()))
}
