//! Words cut into tokens, each with its span and with the punctuation before it.

use crate::model::Span;
use std::borrow::Cow;

/// What separates a token from the one before it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Break {
    /// Blanks, brackets, quotation marks.
    None,
    /// A comma or a dash.
    Comma,
    /// A full stop, semicolon, colon, question or exclamation mark, or the end of a line.
    Sentence,
}

/// A word, a figure or a sign.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Token<'w> {
    /// In lower case, with a plain apostrophe.
    pub text: Cow<'w, str>,
    /// As it stands in the words.
    pub raw: &'w str,
    /// Where it stands.
    pub span: Span,
    /// What stands before it.
    pub before: Break,
}

/// Cuts words into tokens.
///
/// A hyphen, point, slash or middle dot between letters or digits belongs to the token (`shut-off`,
/// `d.c`, `1/2`, `N·m`), except a hyphen between digits (`5-6`); a comma only between digits (`0,5`).
pub fn tokens(words: &str) -> Vec<Token<'_>> {
    let mut tokens: Vec<Token<'_>> = Vec::with_capacity(words.len() / 4 + 1);
    let mut before = Break::None;
    let mut rest = words.chars();
    let mut at = 0;
    loop {
        let here = rest.as_str();
        let Some(first) = rest.next() else { break };
        if !is_word_char(first) {
            before = before.max(break_of(first));
            at += 1;
            continue;
        }
        let from = at;
        at += 1;
        let mut left = first;
        let mut is_plain = plain_already(first);
        loop {
            // Most of a sentence: letters that need no second look.
            let run = rest.as_str().bytes().take_while(u8::is_ascii_lowercase).count();
            if let Some((letters, after)) = rest.as_str().split_at_checked(run) {
                at += run;
                left = letters.chars().next_back().unwrap_or(left);
                rest = after.chars();
            }
            let mut ahead = rest.clone();
            let Some(c) = ahead.next() else { break };
            let belongs = is_word_char(c) || ahead.clone().next().is_some_and(|right| joins(left, c, right));
            if !belongs {
                break;
            }
            is_plain &= plain_already(c);
            left = c;
            rest = ahead;
            at += 1;
        }
        let raw = here.get(..here.len() - rest.as_str().len()).unwrap_or_default();
        let text = if is_plain {
            Cow::Borrowed(raw)
        } else if raw.is_ascii() {
            Cow::Owned(raw.to_ascii_lowercase())
        } else {
            Cow::Owned(raw.chars().flat_map(|c| plain(c).to_lowercase()).collect())
        };
        tokens.push(Token { text, raw, span: Span(point(from), point(at)), before });
        before = Break::None;
    }
    tokens
}

/// Whether a character is as a token's text has it.
fn plain_already(c: char) -> bool {
    c.is_ascii() && !c.is_ascii_uppercase()
}

/// The character, a curly apostrophe made plain.
fn plain(c: char) -> char {
    if c == '\u{2019}' { '\'' } else { c }
}

fn point(index: usize) -> u32 {
    u32::try_from(index).unwrap_or(u32::MAX)
}

fn is_word_char(c: char) -> bool {
    c.is_alphanumeric() || matches!(c, '%' | '°')
}

/// Whether a sign between two characters keeps them in one token.
fn joins(left: char, sign: char, right: char) -> bool {
    let digits = || left.is_ascii_digit() && right.is_ascii_digit();
    let both = || left.is_alphanumeric() && right.is_alphanumeric();
    match sign {
        '\'' | '\u{2019}' | '·' | '/' => both(),
        // `5 N.m`, `d.c.`, `0.5`; but "done.Then" is two words.
        '.' => digits() || (both() && (!left.is_lowercase() || right.is_lowercase())),
        ',' => digits(),
        '-' => both() && !digits(),
        _ => false,
    }
}

fn break_of(c: char) -> Break {
    match c {
        '.' | ';' | ':' | '?' | '!' | '\n' | '\r' => Break::Sentence,
        ',' | '\u{2013}' | '\u{2014}' => Break::Comma,
        _ => Break::None,
    }
}
