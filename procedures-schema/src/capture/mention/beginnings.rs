//! A quick look at which names a line may hold.

use super::{PREPOSITIONS, is_number_or_letter};
use crate::lexicon::Token;

/// How the words of a line begin: a bit for each mixture of two letters. Singular and plural begin alike.
pub(super) struct Beginnings([u64; 16]);

impl Beginnings {
    pub(super) fn of(tokens: &[Token<'_>]) -> Self {
        let mut bits = [0; 16];
        for token in tokens {
            let (at, bit) = Self::place_of(token.text.as_bytes());
            if let Some(bits) = bits.get_mut(at) {
                *bits |= bit;
            }
        }
        Self(bits)
    }

    /// Whether a line may hold what the core of a name ends with: the last word before a preposition, or the one before
    /// that if it is a letter or number.
    pub(super) fn may_hold_head_of(&self, name: &str) -> bool {
        let is_plain = |c: char| c.is_alphanumeric() || matches!(c, ' ' | '-');
        let words = name.split(' ').filter(|word| !word.is_empty());
        // Sides are spelt out, and a dash by itself is no word.
        let is_side = |word: &str| word.eq_ignore_ascii_case("lh") || word.eq_ignore_ascii_case("rh");
        let is_dash = |word: &str| !word.contains(char::is_alphanumeric);
        if !name.chars().all(is_plain) || words.clone().any(|word| is_side(word) || is_dash(word)) {
            return self.may_hold_one_of(name);
        }
        let is_preposition = |word: &str| PREPOSITIONS.iter().any(|known| known.eq_ignore_ascii_case(word));
        let (mut last, mut before) = ("", "");
        for word in words.take_while(|word| !is_preposition(word)) {
            (before, last) = (last, word);
        }
        self.may_hold_one_of(last) || (is_number_or_letter(last) && self.may_hold_one_of(before))
    }

    fn may_hold_one_of(&self, name: &str) -> bool {
        let is_word = |byte: &u8| byte.is_ascii_alphanumeric() || !byte.is_ascii();
        let mut words = name.as_bytes().split(|byte| !is_word(byte)).filter(|word| !word.is_empty());
        words.any(|word| {
            let (at, bit) = Self::place_of(word);
            self.0.get(at).is_some_and(|bits| bits & bit != 0)
        })
    }

    /// The word of the bits and the bit in it for how a word begins; letters beyond ASCII are all one.
    fn place_of(word: &[u8]) -> (usize, u64) {
        let letter = |at: usize| match word.get(at) {
            Some(byte) if byte.is_ascii_alphanumeric() => u32::from(byte.to_ascii_lowercase() & 31),
            Some(byte) if !byte.is_ascii() => 31,
            _ => 0,
        };
        let place = letter(0) << 5 | letter(1);
        (usize::try_from(place >> 6).unwrap_or(0), 1 << (place & 63))
    }
}
