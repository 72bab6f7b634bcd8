//! Words cut into tokens, each with its span and with the punctuation before it.

use crate::model::Span;

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
pub struct Token {
    /// In lower case, with a plain apostrophe.
    pub text: String,
    /// As it stands in the words.
    pub raw: String,
    /// Where it stands.
    pub span: Span,
    /// What stands before it.
    pub before: Break,
}

/// Cuts words into tokens.
///
/// A hyphen, point, slash or middle dot between letters or digits belongs to the token (`shut-off`,
/// `d.c`, `1/2`, `N·m`), except a hyphen between digits (`5-6`); a comma only between digits (`0,5`).
pub fn tokens(words: &str) -> Vec<Token> {
    let chars: Vec<char> = words.chars().collect();
    let at = |i: usize| chars.get(i).copied();
    let mut tokens: Vec<Token> = Vec::new();
    let mut before = Break::None;
    let mut i = 0;
    while let Some(c) = at(i) {
        if !is_word_char(c) {
            before = before.max(break_of(c));
            i += 1;
            continue;
        }
        let from = i;
        i += 1;
        while let Some(c) = at(i) {
            let joins = || match (at(i - 1), at(i + 1)) {
                (Some(left), Some(right)) => joins(left, c, right),
                _ => false,
            };
            if !is_word_char(c) && !joins() {
                break;
            }
            i += 1;
        }
        let word = chars.get(from..i).unwrap_or_default();
        let raw: String = word.iter().collect();
        let text = word.iter().flat_map(|c| plain(*c).to_lowercase()).collect();
        tokens.push(Token { text, raw, span: Span(point(from), point(i)), before });
        before = Break::None;
    }
    tokens
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
    let digits = left.is_ascii_digit() && right.is_ascii_digit();
    let both = left.is_alphanumeric() && right.is_alphanumeric();
    match sign {
        '\'' | '\u{2019}' | '·' | '/' => both,
        // `5 N.m`, `d.c.`, `0.5`; but "done.Then" is two words.
        '.' => digits || (both && !left.is_lowercase()) || (both && right.is_lowercase()),
        ',' => digits,
        '-' => both && !digits,
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
