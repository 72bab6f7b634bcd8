//! Words that join two things as "and" does: "the burner *followed by* the fan", "CN4 *plus* CN5", "the fan *as well as* the
//! pump", "and *also* the board".

use crate::lexicon::{Break, Token};

/// What begins the name of what is joined.
const BEGINS: &[&str] = &["a", "an", "both", "its", "that", "the", "their", "your"];

/// The tokens with "and" for each of them.
pub(super) fn with_joined(tokens: Vec<Token<'_>>) -> Vec<Token<'_>> {
    let joins = ["also", "followed", "plus", "well", "afterwards", "next", "likewise"];
    if !tokens.iter().any(|token| joins.contains(&&*token.text)) {
        return tokens;
    }
    let mut all = Vec::with_capacity(tokens.len());
    let mut i = 0;
    while let Some(token) = tokens.get(i) {
        let n = joining(&tokens, i);
        all.push(if n == 0 { token.clone() } else { token.taken_for("and") });
        i += n.max(1);
    }
    all
}

/// How many tokens from one on join two things; none, if they say anything else.
fn joining(tokens: &[Token<'_>], at: usize) -> usize {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let joined = |i: usize| tokens.get(i).is_some_and(|token| token.before == Break::None);
    let is_name = |i: usize| {
        let is_mark = text(i).starts_with(|c: char| c.is_alphabetic())
            && text(i).ends_with(|c: char| c.is_ascii_digit());
        joined(i) && (BEGINS.contains(&text(i)) || is_mark) && text(i + 1) != "one"
    };
    match text(at) {
        "followed" if text(at + 1) == "by" && is_name(at + 2) => 2,
        "plus" if at > 0 && is_name(at + 1) => 1,
        "as" if text(at + 1) == "well" && text(at + 2) == "as" && is_name(at + 3) => 3,
        "and" if matches!(text(at + 1), "afterwards" | "also" | "likewise" | "next") && is_name(at + 2) => 2,
        _ => 0,
    }
}
