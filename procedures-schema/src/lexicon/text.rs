//! Words cut into tokens, each with its span and with the punctuation before it.

use super::ascii::cut_ascii;
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
    /// A number for its text, by which most words are told apart without being compared.
    pub(super) mixed: u32,
    /// Whether it is letters and figures alone.
    pub(super) is_one_word: bool,
}

impl<'w> Token<'w> {
    pub(super) fn new(
        text: Cow<'w, str>,
        raw: &'w str,
        span: Span,
        before: Break,
        is_one_word: bool,
    ) -> Self {
        let mixed = mixed(&text);
        Self { text, raw, span, before, mixed, is_one_word }
    }
}

impl Token<'_> {
    /// The same place in the words, standing behind what stands there for a word that is said elsewhere.
    pub(crate) fn standing_for(&self, other: &Self) -> Self {
        Self::new(other.text.clone(), self.raw, self.span, Break::None, other.is_one_word)
    }

    /// The same place in the words, standing for a word of a name.
    pub(crate) fn called(&self, word: &str) -> Self {
        let text = Cow::Owned(word.to_lowercase());
        Self::new(text, self.raw, self.span, self.before, word.chars().all(char::is_alphanumeric))
    }

    /// The same place in the words, taken for another word.
    pub(crate) fn taken_for(&self, text: &'static str) -> Self {
        Self::new(Cow::Borrowed(text), self.raw, self.span, self.before, true)
    }

    /// The same noun in the plural.
    pub(crate) fn in_plural(&self) -> Self {
        let text = Cow::Owned(format!("{}s", self.text));
        Self::new(text, self.raw, self.span, self.before, self.is_one_word)
    }

    /// The same word, understood behind a place and not written there.
    pub(crate) fn lent_to(&self, at: u32) -> Self {
        Self::new(self.text.clone(), self.raw, Span(at, at), Break::None, self.is_one_word)
    }

    /// The same word in the place of another that stands for it.
    pub(crate) fn in_place_of(&self, other: &Self) -> Self {
        Self::new(self.text.clone(), self.raw, other.span, Break::None, self.is_one_word)
    }

    /// The label of a name that owns what follows: "pump *1's* plug".
    pub(crate) fn without_possessive(&self) -> Option<Self> {
        let text = self.text.strip_suffix("'s")?;
        let raw = self.raw.get(..text.len())?;
        let span = Span(self.span.0, self.span.1.checked_sub(2)?);
        Some(Self::new(Cow::Owned(text.to_owned()), raw, span, self.before, self.is_one_word))
    }

    /// A word that is understood before a place and not written.
    pub(crate) fn without_width(text: &'static str, at: u32, before: Break) -> Self {
        Self::new(Cow::Borrowed(text), "", Span(at, at), before, true)
    }

    /// Whether it is understood and not written.
    pub(crate) fn is_understood(&self) -> bool {
        self.raw.is_empty()
    }
}

/// A number for a word, from its length and four of its bytes.
#[expect(
    clippy::cast_possible_truncation,
    reason = "words that differ by four billion letters may be mixed up"
)]
pub(crate) const fn mixed(word: &str) -> u32 {
    let bytes = word.as_bytes();
    let ends = match bytes {
        [first, second, third, .., last] => [*first, *second, *third, *last],
        [first, second, last] => [*first, *second, 0, *last],
        [first, last] => [*first, 0, 0, *last],
        [only] => [*only, 0, 0, 0],
        [] => [0; 4],
    };
    // The golden ratio spreads what is alike; the topmost bits are the best mixed.
    let length = (bytes.len() as u32).wrapping_mul(0x85EB_CA6B);
    (u32::from_be_bytes(ends) ^ length).wrapping_mul(0x9E37_79B1)
}

/// Cuts words into tokens.
///
/// A hyphen, point, slash or middle dot between letters or digits belongs to the token (`shut-off`,
/// `d.c`, `1/2`, `N·m`), except a hyphen between digits (`5-6`); a comma only between digits (`0,5`).
pub fn tokens(words: &str) -> Vec<Token<'_>> {
    let mut tokens = Vec::with_capacity(words.len() / 4 + 1);
    if words.is_ascii() {
        cut_ascii(words, None, &mut tokens);
    } else {
        cut(words, &mut tokens);
    }
    tokens
}

/// As [`tokens`], into a list that keeps its room from one text to the next, with the same words in lower case.
pub(crate) fn tokens_into<'w>(words: &'w str, lower: &'w str, tokens: &mut Vec<Token<'w>>) {
    tokens.clear();
    if words.is_ascii() {
        cut_ascii(words, Some(lower), tokens);
    } else {
        cut(words, tokens);
    }
}

/// Cuts any words.
pub(super) fn cut<'w>(words: &'w str, tokens: &mut Vec<Token<'w>>) {
    let mut before = Break::None;
    // Where the token began that is being cut, if one is, and its last character.
    let (mut from, mut left) = (None, ' ');
    let mut at = 0;
    for (byte, c) in words.char_indices() {
        let here = at;
        at += 1;
        if is_word_char(c) {
            from = from.or(Some((here, byte)));
            left = c;
            continue;
        }
        if let Some((first, first_byte)) = from {
            let right = words.get(byte + c.len_utf8()..).and_then(|rest| rest.chars().next());
            if right.is_some_and(|right| joins(left, c, right)) {
                left = c;
                continue;
            }
            let raw = words.get(first_byte..byte).unwrap_or_default();
            tokens.push(token(raw, Span(point(first), point(here)), before));
            (before, from) = (Break::None, None);
        }
        before = before.max(break_of(c));
    }
    if let Some((first, first_byte)) = from {
        let raw = words.get(first_byte..).unwrap_or_default();
        tokens.push(token(raw, Span(point(first), point(at)), before));
    }
}

/// A token of any characters.
fn token(raw: &str, span: Span, before: Break) -> Token<'_> {
    let text = if raw.chars().all(plain_already) {
        Cow::Borrowed(raw)
    } else {
        Cow::Owned(raw.chars().flat_map(|c| plain(c).to_lowercase()).collect())
    };
    Token::new(text, raw, span, before, raw.chars().all(char::is_alphanumeric))
}

/// Whether a character is as a token's text has it.
fn plain_already(c: char) -> bool {
    c.is_ascii() && !c.is_ascii_uppercase()
}

/// The character, a curly apostrophe made plain.
fn plain(c: char) -> char {
    if c == '\u{2019}' { '\'' } else { c }
}

pub(super) fn point(index: usize) -> u32 {
    u32::try_from(index).unwrap_or(u32::MAX)
}

fn is_word_char(c: char) -> bool {
    c.is_alphanumeric() || matches!(c, '%' | '°')
}

/// Whether a sign between two characters keeps them in one token.
pub(super) fn joins(left: char, sign: char, right: char) -> bool {
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

pub(super) fn break_of(c: char) -> Break {
    match c {
        '.' | ';' | ':' | '?' | '!' | '\n' | '\r' => Break::Sentence,
        ',' | '\u{2013}' | '\u{2014}' => Break::Comma,
        _ => Break::None,
    }
}
