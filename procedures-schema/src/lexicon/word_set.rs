//! A short list of words that tells most absent words by one look.

use super::text::{Token, mixed};

/// A fixed list of words in lower case.
#[derive(Debug)]
pub(super) struct WordSet {
    words: &'static [&'static str],
    /// A bit for each word; a word whose bit is not set is not in the list.
    bits: [u64; Self::N_BITS / 64],
}

impl WordSet {
    const N_BITS: usize = 1024;

    /// The set of these words.
    pub(super) const fn of(words: &'static [&'static str]) -> Self {
        let mut bits = [0; Self::N_BITS / 64];
        let mut left = words;
        while let [word, rest @ ..] = left {
            let (at, bit) = place_of(mixed(word));
            bits[at] |= bit;
            left = rest;
        }
        Self { words, bits }
    }

    /// The words as they were given.
    #[cfg(test)]
    pub(super) fn words(&self) -> &'static [&'static str] {
        self.words
    }

    /// Whether the word of a token is in the list.
    pub(super) fn has(&self, token: &Token<'_>) -> bool {
        self.may_have(token) && self.words.contains(&&*token.text)
    }

    /// Whether it may be; it is not, for nearly all words that are not in the list.
    pub(super) fn may_have(&self, token: &Token<'_>) -> bool {
        let (at, bit) = place_of(token.mixed);
        self.bits.get(at).is_some_and(|bits| bits & bit != 0)
    }
}

/// The word of the bits and the bit in it that stand for a mixed word.
const fn place_of(mixed: u32) -> (usize, u64) {
    let place = mixed >> 22;
    ((place / 64) as usize, 1 << (place % 64))
}

#[cfg(test)]
mod tests {
    use super::WordSet;
    use crate::lexicon::tokens;

    #[test]
    fn holds_its_words_and_no_other() {
        const SET: WordSet = WordSet::of(&["a", "no", "not", "never", "d\u{e9}j\u{e0}"]);
        for token in tokens("a no not never d\u{e9}j\u{e0}") {
            assert!(SET.has(&token), "{token:?}");
        }
        for token in tokens("b on nat knot neuer nots") {
            assert!(!SET.has(&token), "{token:?}");
        }
    }
}
