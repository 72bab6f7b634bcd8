//! Which words, pairs of words and signs some texts hold between them, so that most phrases are told to be
//! absent from all of them by a look.

use super::text::{Token, mixed, tokens};

/// The words, pairs of words and signs of some texts. It may take one to be there that is not, never the other
/// way round.
#[derive(Clone)]
pub(crate) struct Vocabulary {
    bits: Vec<u64>,
    signs: [bool; 256],
    n_words: usize,
}

impl Vocabulary {
    const N_BITS: usize = 1 << 16;

    /// That of no text.
    pub(crate) fn new() -> Self {
        Self { bits: vec![0; Self::N_BITS / 64], signs: [false; 256], n_words: 0 }
    }

    /// Takes in a text, given in lower case and in tokens.
    pub(crate) fn take_in(&mut self, lower: &str, tokens: &[Token<'_>]) {
        for byte in lower.bytes() {
            if let Some(sign) = self.signs.get_mut(usize::from(byte)) {
                *sign = true;
            }
        }
        let mut words = Words::default();
        for token in tokens {
            words.of_token(token, |place| self.note(place));
        }
    }

    fn note(&mut self, mixed: u32) {
        let (at, bit) = place_of(mixed);
        if let Some(bits) = self.bits.get_mut(at) {
            self.n_words += usize::from(*bits & bit == 0);
            *bits |= bit;
        }
    }

    /// How many words and pairs of words it has noted.
    pub(crate) fn n_words(&self) -> usize {
        self.n_words
    }

    fn has(&self, mixed: u32) -> bool {
        let (at, bit) = place_of(mixed);
        self.bits.get(at).is_some_and(|bits| bits & bit != 0)
    }

    /// Those of some phrases that one of the texts may hold; mostly none of those that nobody should write.
    pub(crate) fn held<'p>(&self, phrases: &[&'p str]) -> Vec<&'p str> {
        phrases.iter().copied().filter(|phrase| self.may_have(phrase)).collect()
    }

    /// Whether one of the texts may hold a phrase in lower case: all its words, pairs of words and bytes.
    fn may_have(&self, phrase: &str) -> bool {
        let mut is_there = phrase.bytes().all(|byte| self.signs.get(usize::from(byte)) == Some(&true));
        let mut words = Words::default();
        for token in tokens(phrase) {
            words.of_token(&token, |mixed| is_there &= self.has(mixed));
        }
        is_there
    }
}

/// The word of the bits and the bit in it that stand for a mixed word or pair.
fn place_of(mixed: u32) -> (usize, u64) {
    (usize::try_from(mixed >> 22).unwrap_or(0), 1 << (mixed >> 16 & 63))
}

/// The word before the one that is looked at.
#[derive(Default)]
struct Words {
    before: Option<u32>,
}

impl Words {
    /// Notes the numbers of the words of a token, and of the pairs that they make with the word before.
    ///
    /// A token may be of several words: whoever asks for "order" means that of "reverse-order" too.
    fn of_token(&mut self, token: &Token<'_>, mut note: impl FnMut(u32)) {
        if token.is_one_word {
            self.word(token.mixed, &mut note);
        } else {
            let words = token.text.split(|c: char| !c.is_alphanumeric());
            words.filter(|word| !word.is_empty()).for_each(|word| self.word(mixed(word), &mut note));
        }
    }

    fn word(&mut self, here: u32, note: &mut impl FnMut(u32)) {
        note(here);
        if let Some(before) = self.before.replace(here) {
            note((before ^ here.rotate_left(16)).wrapping_mul(0x9E37_79B1));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Vocabulary;
    use crate::lexicon::tokens;

    #[test]
    fn a_vocabulary_never_lacks_what_a_text_holds() {
        let texts = ["Tell the Keeper TBD.", "13 \u{b1} 1", "\u{d6}l ablassen", "+/- 2", "in reverse-order"];
        let mut vocabulary = Vocabulary::new();
        for text in texts {
            vocabulary.take_in(&text.to_lowercase(), &tokens(text));
        }
        let n_words = vocabulary.n_words();
        vocabulary.take_in("the keeper", &tokens("The Keeper"));
        assert_eq!(vocabulary.n_words(), n_words, "nothing new");
        for phrase in
            ["tbd", "\u{b1}", "+/-", "the keeper", "\u{f6}l", "ablassen", "reverse", "order", "tell the", "2"]
        {
            assert!(vocabulary.may_have(phrase), "{phrase}");
        }
        for absent in ["tbc", "keep", "??", "times", "as required", "\u{b7}", "tell order"] {
            assert!(!vocabulary.may_have(absent), "{absent}");
        }
    }
}
