//! Texts in lower case that are asked for phrases, and names looked up in such texts.

use crate::lexicon::{Lowered, mixed};
use std::borrow::Cow;

/// A text in lower case.
pub(super) struct Lower<'t>(
    /// The text.
    pub(super) &'t str,
);

impl Lower<'_> {
    /// Whether it holds a phrase in lower case as whole words; a sign is held wherever it stands.
    pub(super) fn has(&self, phrase: &str) -> bool {
        let Some(first) = phrase.chars().next() else { return false };
        if !first.is_alphanumeric() {
            return self.0.contains(phrase);
        }
        let mut from = 0;
        // A search for one byte is the quickest, and most texts lack it.
        while let Some(at) = self.0.get(from..).and_then(|rest| rest.find(first)) {
            let at = from + at;
            let begins = || !ends_in_word(self.0.get(..at).unwrap_or_default());
            if self.0.get(at..).is_some_and(|here| begins_with(here, phrase)) && begins() {
                return true;
            }
            from = at + first.len_utf8();
        }
        false
    }

    /// Whether it holds a name, however that is written, as whole words.
    pub(super) fn has_name(&self, name: &str) -> bool {
        self.has(&in_lower_case(name))
    }

    /// Whether it holds one of these phrases.
    pub(super) fn has_any(&self, phrases: &[&str]) -> bool {
        phrases.iter().any(|phrase| self.has(phrase))
    }
}

/// A text in lower case, as most names are already.
pub(super) fn in_lower_case(text: &str) -> Cow<'_, str> {
    if text.bytes().all(|byte| byte.is_ascii() && !byte.is_ascii_uppercase()) {
        Cow::Borrowed(text)
    } else {
        Cow::Owned(text.to_lowercase())
    }
}

/// Whether a text begins with a phrase that ends where a word ends.
fn begins_with(text: &str, phrase: &str) -> bool {
    let rest = text.strip_prefix(phrase);
    rest.is_some_and(|rest| !(rest.starts_with(char::is_alphanumeric) && ends_in_word(phrase)))
}

fn ends_in_word(text: &str) -> bool {
    text.ends_with(char::is_alphanumeric)
}

/// Names in lower case.
#[derive(Default)]
pub(super) struct Names {
    lower: Lowered,
    /// A number for the first word of each of them.
    firsts: Vec<u32>,
    /// A bit for each first word: most words of a text are the first of no name, and that is soon seen.
    bits: [u64; 16],
}

impl Names {
    /// Names, however they are written.
    pub(super) fn of<'n>(names: impl Iterator<Item = &'n str>) -> Self {
        let mut lower = Lowered::default();
        names.map(str::trim).filter(|name| !name.is_empty()).for_each(|name| lower.add(name));
        let firsts: Vec<u32> = lower.iter().map(|name| mixed(first_word(name))).collect();
        let mut bits = [0; 16];
        for (at, bit) in firsts.iter().copied().map(place_of) {
            if let Some(bits) = bits.get_mut(at) {
                *bits |= bit;
            }
        }
        Self { lower, firsts, bits }
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
        let first = mixed(first_word(text));
        let (at, bit) = place_of(first);
        if self.bits.get(at).is_none_or(|bits| bits & bit == 0) {
            return false;
        }
        let alike = self.firsts.iter().zip(self.lower.iter()).filter(|(known, _)| **known == first);
        alike.into_iter().any(|(_, name)| begins_with(text, name))
    }
}

/// The word of the bits and the bit in it that stand for the number of a first word.
fn place_of(mixed: u32) -> (usize, u64) {
    (usize::try_from(mixed >> 28).unwrap_or(0), 1 << (mixed >> 22 & 63))
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
        assert!(Lower("tell the keeper tbd.").has("tbd"));
        assert!(Lower("13 \u{b1} 1").has("\u{b1}"));
        assert!(Lower("a").has("a"));
        assert!(Lower("in reverse order").has("reverse order"));
        assert!(!Lower("unsuitable").has("suitable"));
        assert!(!Lower("fewer").has("few"));
        assert!(!Lower("reverse orders").has("reverse order"));
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
