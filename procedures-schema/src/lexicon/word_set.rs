//! A short list of words that tells most absent words by one look.

/// A fixed list of words in lower case.
#[derive(Debug)]
pub(super) struct WordSet {
    words: &'static [&'static str],
    /// A bit for each word; a word whose bit is not set is not in the list.
    bits: u128,
    /// Another, by another measure.
    more_bits: u128,
}

impl WordSet {
    /// The set of these words.
    pub(super) const fn of(words: &'static [&'static str]) -> Self {
        let (mut bits, mut more_bits) = (0, 0);
        let mut left = words;
        while let [word, rest @ ..] = left {
            let (bit, other) = bits_of(word);
            bits |= bit;
            more_bits |= other;
            left = rest;
        }
        Self { words, bits, more_bits }
    }

    /// The words as they were given.
    #[cfg(test)]
    pub(super) fn words(&self) -> &'static [&'static str] {
        self.words
    }

    /// Whether the word is in the list.
    pub(super) fn has(&self, word: &str) -> bool {
        let (bit, other) = bits_of(word);
        self.bits & bit != 0 && self.more_bits & other != 0 && self.words.contains(&word)
    }
}

/// The bits of a word, from the bytes at its ends and its length.
const fn bits_of(word: &str) -> (u128, u128) {
    let bytes = word.as_bytes();
    let (first, second, last) = match bytes {
        [first, second, .., last] => (*first, *second, *last),
        [first, last] => (*first, *last, *last),
        [only] => (*only, *only, *only),
        [] => (0, 0, 0),
    };
    (1 << (first.wrapping_mul(5).wrapping_add(second) % 128), 1 << ((last as usize + bytes.len() * 29) % 128))
}

#[cfg(test)]
mod tests {
    use super::WordSet;

    #[test]
    fn holds_its_words_and_no_other() {
        const SET: WordSet = WordSet::of(&["", "a", "no", "not", "never", "d\u{e9}j\u{e0}"]);
        for word in ["", "a", "no", "not", "never", "d\u{e9}j\u{e0}"] {
            assert!(SET.has(word), "{word}");
        }
        for word in ["b", "on", "nat", "knot", "neuer", "nots"] {
            assert!(!SET.has(word), "{word}");
        }
    }
}
