//! A text in lower case that is asked for many phrases, and a set of names looked up in such texts.

use std::collections::BTreeMap;

/// A text in lower case that tells most absent phrases without being read again.
pub(super) struct Lower {
    text: String,
    begins: Begins,
}

impl Lower {
    /// The lower case of a text.
    pub(super) fn of(words: &str) -> Self {
        let text = if words.is_ascii() { words.to_ascii_lowercase() } else { words.to_lowercase() };
        let begins = Begins::of(&text);
        Self { text, begins }
    }

    /// The text.
    pub(super) fn text(&self) -> &str {
        &self.text
    }

    /// Whether it holds a phrase in lower case as whole words; a sign is held wherever it stands.
    #[inline]
    pub(super) fn has(&self, phrase: &str) -> bool {
        self.begins.may_have(phrase) && self.holds(phrase)
    }

    fn holds(&self, phrase: &str) -> bool {
        let Some(first) = phrase.bytes().next() else { return false };
        if !phrase.starts_with(char::is_alphanumeric) {
            // Few texts have any such sign, and a search for one byte is the quickest.
            return self.text.as_bytes().contains(&first) && self.text.contains(phrase);
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

/// With which bytes the words and signs of a text begin: a bit for what may stand there, so that most
/// phrases are told to be absent by one look.
struct Begins {
    bits: [u64; Self::N_BITS / 64],
}

impl Begins {
    const N_BITS: usize = 512;

    fn of(text: &str) -> Self {
        let mut bits = [0; Self::N_BITS / 64];
        let (mut first, mut second, mut within) = (0_u8, 0, false);
        for third in text.bytes() {
            let is_word = first.is_ascii_alphanumeric();
            // Letters beyond ASCII count as beginnings wherever they stand: a bit too many costs a look.
            if !within || !is_word {
                let (at, bit) = place_of(first, second, third);
                if let Some(bits) = bits.get_mut(at) {
                    *bits |= bit;
                }
            }
            (first, second, within) = (second, third, is_word);
        }
        Self { bits }
    }

    /// Whether a phrase may be there, from its first word and its last.
    #[inline]
    fn may_have(&self, phrase: &str) -> bool {
        self.may_begin(phrase) && phrase.rsplit(' ').next().is_none_or(|last| self.may_begin(last))
    }

    /// Whether something may begin so; what has fewer than three bytes always may.
    #[inline]
    fn may_begin(&self, text: &str) -> bool {
        let [first, second, third, ..] = text.as_bytes() else { return true };
        let (at, bit) = place_of(*first, *second, *third);
        self.bits.get(at).is_some_and(|bits| bits & bit != 0)
    }
}

/// The word of the bits and the bit in it that stand for three bytes.
fn place_of(first: u8, second: u8, third: u8) -> (usize, u64) {
    // The golden ratio spreads what is alike; the topmost bits are the best mixed.
    let mixed = u32::from_be_bytes([0, first, second, third]).wrapping_mul(0x9E37_79B1) >> 23;
    (usize::try_from(mixed / 64).unwrap_or(0), 1 << (mixed % 64))
}

/// Whether a text begins with a phrase that ends where a word ends.
fn begins_with(text: &str, phrase: &str) -> bool {
    let ends_in_word = || phrase.ends_with(char::is_alphanumeric);
    let rest = text.strip_prefix(phrase);
    rest.is_some_and(|rest| !(rest.starts_with(char::is_alphanumeric) && ends_in_word()))
}

/// Names in lower case, by their first word.
#[derive(Default)]
pub(super) struct Names {
    by_first: BTreeMap<String, Vec<String>>,
}

impl Names {
    /// Names, however they are written.
    pub(super) fn of<'n>(names: impl Iterator<Item = &'n str>) -> Self {
        let mut by_first: BTreeMap<String, Vec<String>> = BTreeMap::new();
        for name in names.map(|name| name.trim().to_lowercase()).filter(|name| !name.is_empty()) {
            let known = by_first.entry(first_word(&name).to_owned()).or_default();
            if !known.contains(&name) {
                known.push(name);
            }
        }
        Self { by_first }
    }

    /// Whether a text in lower case holds one of them as whole words.
    pub(super) fn stand_in(&self, lower: &str) -> bool {
        let mut last = ' ';
        lower.char_indices().any(|(at, c)| {
            let begins = !last.is_alphanumeric() || !c.is_alphanumeric();
            last = c;
            let here = lower.get(at..).unwrap_or_default();
            begins
                && self
                    .by_first
                    .get(first_word(here))
                    .is_some_and(|names| names.iter().any(|name| begins_with(here, name)))
        })
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
    use super::{Lower, Names};

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
