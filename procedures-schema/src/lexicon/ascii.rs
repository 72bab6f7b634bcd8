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
    let bytes = words.as_bytes();
    let has_percent = bytes.contains(&b'%');
    // Where the token before ended, and where the one began that is being cut, if one is.
    let (mut end, mut from) = (0, None);
    // Whether a sign keeps it and what follows together.
    let mut has_sign = false;
    let mut was_word = 0;
    // The last of them is never full, so that every word ends within.
    for n in 0..=bytes.len() / AT_ONCE {
        let first = n * AT_ONCE;
        let word = word_bits(bytes.get(first..bytes.len().min(first + AT_ONCE)).unwrap_or_default());
        // Where what is of a word begins, and where it ends.
        let before = word << 1 | was_word;
        let mut edges = word ^ before;
        was_word = word >> (AT_ONCE - 1);
        while edges != 0 {
            let bit = edges & edges.wrapping_neg();
            let at = first + usize::try_from(edges.trailing_zeros()).unwrap_or(0);
            edges ^= bit;
            let Some(begin) = from else {
                from = Some(at);
                continue;
            };
            if word & bit != 0 {
                // It goes on behind a sign.
                continue;
            }
            if is_joined(bytes, at) {
                has_sign = true;
                continue;
            }
            let raw = words.get(begin..at).unwrap_or_default();
            let text = match lower {
                Some(lower) => Cow::Borrowed(lower.get(begin..at).unwrap_or_default()),
                None if raw.bytes().any(|c| c.is_ascii_uppercase()) => Cow::Owned(raw.to_ascii_lowercase()),
                None => Cow::Borrowed(raw),
            };
            let is_one_word =
                !(has_sign || has_percent) || raw.bytes().all(|byte| byte.is_ascii_alphanumeric());
            let stop = break_between(bytes.get(end..begin).unwrap_or_default());
            tokens.push(Token::new(text, raw, Span(point(begin), point(at)), stop, is_one_word));
            (from, end, has_sign) = (None, at, false);
        }
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

/// What stands between two tokens.
fn break_between(bytes: &[u8]) -> Break {
    match bytes {
        // A blank, as nearly always, needs no look.
        b" " | b"" => Break::None,
        bytes => bytes.iter().map(|byte| break_of(char::from(*byte))).max().unwrap_or(Break::None),
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
