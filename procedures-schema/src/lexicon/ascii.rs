//! Words of ASCII alone cut into tokens, 64 bytes at a time.
//!
//! It cuts as [`cut`](super::text) does, sooner: a byte is a character here, and the ends of words are found
//! by bits instead of by a question a byte, whose answer no processor can foresee.

use super::text::{Break, Token, break_of, joins, point};
use crate::model::Span;
use std::borrow::Cow;

/// How many bytes are looked at together.
const AT_ONCE: usize = 64;

/// Cuts words of ASCII alone; with the same words in lower case, if they are there already.
pub(super) fn cut_ascii<'w>(words: &'w str, lower: Option<&'w str>, tokens: &mut Vec<Token<'w>>) {
    let has_percent = words.as_bytes().contains(&b'%');
    let mut cutter =
        Cutter { words, lower, has_percent, from: None, goes_on: false, has_sign: has_percent, end: 0 };
    let mut was_word = 0;
    for (n, chunk) in words.as_bytes().chunks(AT_ONCE).enumerate() {
        let word = word_bits(chunk);
        // Where what is of a word begins, and where it ends.
        let mut edges = word ^ (word << 1 | was_word);
        was_word = word >> (AT_ONCE - 1);
        while edges != 0 {
            let at = edges.trailing_zeros();
            edges &= edges - 1;
            cutter.edge(n * AT_ONCE + usize::try_from(at).unwrap_or(0), tokens);
        }
    }
    if was_word == 1 {
        cutter.edge(words.len(), tokens);
    }
}

/// A bit for each byte that is of a word.
fn word_bits(bytes: &[u8]) -> u64 {
    let bits = bytes.iter().enumerate().map(|(i, byte)| {
        let is_one = WORD_BYTES.get(usize::from(*byte)).copied().unwrap_or(false);
        u64::from(is_one) << i
    });
    bits.fold(0, |all, bit| all | bit)
}

/// Which bytes of ASCII are of words.
static WORD_BYTES: [bool; 256] = {
    let mut bytes = [false; 256];
    let mut byte = 0_u8;
    while byte < 128 {
        bytes[byte as usize] = byte.is_ascii_alphanumeric() || byte == b'%';
        byte += 1;
    }
    bytes
};

/// What is between two edges.
struct Cutter<'w> {
    words: &'w str,
    lower: Option<&'w str>,
    /// Whether a per cent sign may be in any token.
    has_percent: bool,
    /// Where the token began that is being cut.
    from: Option<usize>,
    /// Whether a sign keeps it and what follows together.
    goes_on: bool,
    /// Whether it may hold a sign.
    has_sign: bool,
    /// Where the token before it ended.
    end: usize,
}

impl<'w> Cutter<'w> {
    /// Letters and figures begin here, or end.
    fn edge(&mut self, at: usize, tokens: &mut Vec<Token<'w>>) {
        let Some(from) = self.from else {
            self.from = Some(at);
            return;
        };
        if self.goes_on {
            self.goes_on = false;
            return;
        }
        if is_joined(self.words.as_bytes(), at) {
            (self.goes_on, self.has_sign) = (true, true);
            return;
        }
        let raw = self.words.get(from..at).unwrap_or_default();
        let text = match self.lower.and_then(|lower| lower.get(from..at)) {
            Some(lower) => Cow::Borrowed(lower),
            None if raw.bytes().any(|byte| byte.is_ascii_uppercase()) => Cow::Owned(raw.to_ascii_lowercase()),
            None => Cow::Borrowed(raw),
        };
        let before = self.break_before(from);
        let is_one_word = !self.has_sign || raw.bytes().all(|byte| byte.is_ascii_alphanumeric());
        tokens.push(Token::new(text, raw, Span(point(from), point(at)), before, is_one_word));
        (self.from, self.end, self.has_sign) = (None, at, self.has_percent);
    }

    /// What stands between the token before and the one that begins here.
    fn break_before(&self, from: usize) -> Break {
        match self.words.as_bytes().get(self.end..from).unwrap_or_default() {
            // A blank, as nearly always, needs no look.
            b" " | b"" => Break::None,
            between => between.iter().map(|byte| break_of(char::from(*byte))).max().unwrap_or(Break::None),
        }
    }
}

/// Whether a sign here keeps what is on its sides in one token.
fn is_joined(bytes: &[u8], at: usize) -> bool {
    let is_sign = bytes.get(at).is_some_and(|byte| matches!(byte, b'\'' | b'/' | b'.' | b',' | b'-'));
    is_sign
        && matches!(bytes.get(at.saturating_sub(1)..at + 2), Some([left, sign, right])
            if joins(char::from(*left), char::from(*sign), char::from(*right)))
}

#[cfg(test)]
mod tests {
    use super::super::text::cut;
    use super::{AT_ONCE, cut_ascii};

    #[test]
    fn ascii_is_cut_as_any_text_is() {
        let signs = ["a", "B", "7", " ", ",", ".", "-", "/", "'", "%", ":", "\n", "(", "zz", "N"];
        // Every text of four of these signs, and each across the border of what is looked at together.
        for number in 0..signs.len().pow(4) {
            let text: String = (0..4).map(|at| signs[number / signs.len().pow(at) % signs.len()]).collect();
            let ahead = ["", "a", " "][number % 3].repeat(AT_ONCE - number % 7);
            for text in [&text, &format!("{ahead}{text}")] {
                let lower = text.to_ascii_lowercase();
                let (mut quick, mut lowered, mut any) = (Vec::new(), Vec::new(), Vec::new());
                cut_ascii(text, None, &mut quick);
                cut_ascii(text, Some(&lower), &mut lowered);
                cut(text, &mut any);
                assert_eq!(quick, any, "{text:?}");
                assert_eq!(lowered, any, "{text:?}");
            }
        }
    }
}
