//! Texts in lower case that are asked for phrases, and names looked up in such texts.

/// A text in lower case.
pub(super) struct Lower {
    text: String,
}

impl Lower {
    /// The lower case of a text.
    pub(super) fn of(words: &str) -> Self {
        Self { text: if words.is_ascii() { words.to_ascii_lowercase() } else { words.to_lowercase() } }
    }

    /// Whether it holds a phrase in lower case as whole words; a sign is held wherever it stands.
    pub(super) fn has(&self, phrase: &str) -> bool {
        let Some(first) = phrase.bytes().next() else { return false };
        // Most texts lack the byte, and a search for one byte is the quickest.
        if !self.text.as_bytes().contains(&first) {
            return false;
        }
        if !phrase.starts_with(char::is_alphanumeric) {
            return self.text.contains(phrase);
        }
        let mut within = false;
        self.text.char_indices().any(|(at, c)| {
            let begins = c.is_alphanumeric() && !within;
            within = c.is_alphanumeric();
            begins && self.text.get(at..).is_some_and(|here| begins_with(here, phrase))
        })
    }

    /// Whether it holds one of these phrases.
    pub(super) fn has_any(&self, phrases: &[&str]) -> bool {
        phrases.iter().any(|phrase| self.has(phrase))
    }
}

/// Which words, pairs of words and signs some texts hold between them, so that most phrases are told to be
/// absent from all of them by a look. It may take one to be there that is not, never the other way round.
#[derive(Clone)]
pub(super) struct Vocabulary {
    bits: Vec<u64>,
    signs: [bool; 256],
}

impl Vocabulary {
    const N_BITS: usize = 1 << 16;

    /// Those of texts, whatever their case.
    pub(super) fn of<'t>(texts: impl Iterator<Item = &'t str>) -> Self {
        let mut vocabulary = Self { bits: vec![0; Self::N_BITS / 64], signs: [false; 256] };
        texts.for_each(|text| vocabulary.take_in(text));
        vocabulary
    }

    /// Takes in those of one more text.
    pub(super) fn take_in(&mut self, text: &str) {
        if text.is_ascii() {
            self.add(text.bytes().map(|byte| byte.to_ascii_lowercase()));
        } else {
            self.add(text.to_lowercase().bytes());
        }
    }

    fn add(&mut self, lower: impl Iterator<Item = u8>) {
        let mut words = Words::default();
        for byte in lower {
            if is_of_word(byte) {
                words.add(byte);
            } else {
                words.end(byte).for_each(|place| self.note(place));
                if let Some(sign) = self.signs.get_mut(usize::from(byte)) {
                    *sign = true;
                }
            }
        }
        words.end(0).for_each(|place| self.note(place));
    }

    fn note(&mut self, (at, bit): (usize, u64)) {
        if let Some(bits) = self.bits.get_mut(at) {
            *bits |= bit;
        }
    }

    /// Those of some phrases that one of the texts may hold; mostly none of those that nobody should write.
    pub(super) fn held<'p>(&self, phrases: &[&'p str]) -> Vec<&'p str> {
        phrases.iter().copied().filter(|phrase| self.may_have(phrase)).collect()
    }

    /// Whether one of the texts may hold a phrase in lower case: all its words, pairs of words and signs.
    fn may_have(&self, phrase: &str) -> bool {
        let mut words = Words::default();
        phrase.bytes().chain([0]).all(|byte| {
            if is_of_word(byte) {
                words.add(byte);
                return true;
            }
            let is_there = byte == 0 || self.signs.get(usize::from(byte)).is_some_and(|has| *has);
            is_there && words.end(byte).all(|(at, bit)| self.bits.get(at).is_some_and(|bits| bits & bit != 0))
        })
    }
}

/// Whether a byte belongs to a word. What is not ASCII parts words here, in the texts as in the phrases: more
/// words than there are do no harm.
fn is_of_word(byte: u8) -> bool {
    byte.is_ascii_alphanumeric()
}

/// Numbers for the word that is being read and for the one before it, if a blank alone is between them.
#[derive(Default)]
struct Words {
    before: u32,
    here: u32,
}

impl Words {
    fn add(&mut self, byte: u8) {
        // The golden ratio spreads what is alike; the topmost bits are the best mixed.
        self.here = (self.here ^ u32::from(byte)).wrapping_add(1).wrapping_mul(0x9E37_79B1);
    }

    /// The places that stand for the word that ends here and for the pair that it makes, as the word of the
    /// bits and the bit in it.
    fn end(&mut self, byte: u8) -> impl Iterator<Item = (usize, u64)> + use<> {
        let (before, here) = (self.before, std::mem::take(&mut self.here));
        self.before = if byte == b' ' { here } else { 0 };
        let pair = (before ^ here.rotate_left(16)).wrapping_mul(0x9E37_79B1);
        let word = (here != 0).then_some(here);
        let pair = word.filter(|_| before != 0).map(|_| pair);
        let place = |mixed: u32| (usize::try_from(mixed >> 22).unwrap_or(0), 1 << (mixed >> 16 & 63));
        word.into_iter().chain(pair).map(place)
    }
}

/// Whether a text begins with a phrase that ends where a word ends.
fn begins_with(text: &str, phrase: &str) -> bool {
    let ends_in_word = || phrase.ends_with(char::is_alphanumeric);
    let rest = text.strip_prefix(phrase);
    rest.is_some_and(|rest| !(rest.starts_with(char::is_alphanumeric) && ends_in_word()))
}

/// Names in lower case, sorted.
#[derive(Default)]
pub(super) struct Names {
    names: Vec<String>,
}

impl Names {
    /// Names, however they are written.
    pub(super) fn of<'n>(names: impl Iterator<Item = &'n str>) -> Self {
        let lower = names.map(|name| name.trim().to_lowercase()).filter(|name| !name.is_empty());
        let mut names: Vec<String> = lower.collect();
        names.sort_unstable();
        names.dedup();
        Self { names }
    }

    /// Whether a text in lower case holds one of them as whole words.
    pub(super) fn stand_in(&self, lower: &str) -> bool {
        let mut last = ' ';
        lower.char_indices().any(|(at, c)| {
            let begins = !last.is_alphanumeric() || !c.is_alphanumeric();
            last = c;
            let here = lower.get(at..).unwrap_or_default();
            begins && self.begin(here)
        })
    }

    /// Whether a text begins with one of them.
    fn begin(&self, text: &str) -> bool {
        let first = first_word(text);
        let from = self.names.partition_point(|name| name.as_str() < first);
        let alike = self.names.iter().skip(from).take_while(|name| name.starts_with(first));
        alike.into_iter().any(|name| begins_with(text, name))
    }
}

/// The letters and figures with which a text begins, or the sign.
fn first_word(text: &str) -> &str {
    let end = text
        .char_indices()
        .find(|(_, c)| !c.is_alphanumeric())
        .map_or(text.len(), |(at, c)| if at == 0 { c.len_utf8() } else { at });
    text.get(..end).unwrap_or(text)
}

#[cfg(test)]
mod tests {
    use super::{Lower, Names, Vocabulary};

    #[test]
    fn phrases_are_whole_words() {
        assert!(Lower::of("Tell the keeper TBD.").has("tbd"));
        assert!(Lower::of("13 \u{b1} 1").has("\u{b1}"));
        assert!(Lower::of("a").has("a"));
        assert!(Lower::of("in reverse order").has("reverse order"));
        assert!(!Lower::of("unsuitable").has("suitable"));
        assert!(!Lower::of("fewer").has("few"));
        assert!(!Lower::of("reverse orders").has("reverse order"));
    }

    #[test]
    fn a_vocabulary_never_lacks_what_a_text_holds() {
        let texts = ["Tell the Keeper TBD.", "13 \u{b1} 1", "\u{d6}l ablassen", "+/- 2", "in reverse-order"];
        let vocabulary = Vocabulary::of(texts.into_iter());
        let phrases =
            ["tbd", "\u{b1}", "+/-", "the keeper", "\u{f6}l", "ablassen", "reverse", "order", "tell"];
        for phrase in phrases {
            assert!(texts.iter().any(|text| Lower::of(text).has(phrase)), "{phrase}");
            assert!(vocabulary.may_have(phrase), "{phrase}");
        }
        for absent in ["tbc", "keep", "??", "times", "as required", "\u{b7}", "tell order"] {
            assert!(!vocabulary.may_have(absent), "{absent}");
        }
    }

    #[test]
    fn names_stand_as_whole_words() {
        let names = Names::of(["Lid screws", "pump", "O-ring", "\u{d8} 12 pin"].into_iter());
        for held in ["undo the lid screws", "the pump.", "a new o-ring", "drive the \u{f8} 12 pin in"] {
            assert!(names.stand_in(held), "{held}");
        }
        for absent in ["the lid", "pumps run", "a ring", ""] {
            assert!(!names.stand_in(absent), "{absent}");
        }
    }
}
