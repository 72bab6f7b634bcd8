//! A text in lower case that is asked for many phrases, and a set of names looked up in such texts.

use std::collections::BTreeMap;

/// A text in lower case, with where its words begin.
pub(super) struct Lower {
    text: String,
    /// Where a letter or figure stands after something that is none.
    begins: Vec<usize>,
    /// A bit for each pair of bytes with which a word begins: most phrases are told to be absent by it.
    pairs: u128,
}

impl Lower {
    /// The lower case of a text.
    pub(super) fn of(words: &str) -> Self {
        let text = words.to_lowercase();
        let mut begins = Vec::new();
        let mut within = false;
        for (at, c) in text.char_indices() {
            let is_word = c.is_alphanumeric();
            if is_word && !within {
                begins.push(at);
            }
            within = is_word;
        }
        let pairs =
            begins.iter().filter_map(|at| text.as_bytes().get(*at..)).fold(0, |all, from| all | bit(from));
        Self { text, begins, pairs }
    }

    /// The text.
    pub(super) fn text(&self) -> &str {
        &self.text
    }

    /// Whether it holds a phrase in lower case as whole words; a sign is held wherever it stands.
    pub(super) fn has(&self, phrase: &str) -> bool {
        if !phrase.starts_with(char::is_alphanumeric) {
            return !phrase.is_empty() && self.text.contains(phrase);
        }
        // A phrase of one letter has no pair to ask for.
        let may_be = phrase.len() < 2 || self.pairs & bit(phrase.as_bytes()) != 0;
        may_be
            && self.begins.iter().any(|at| self.text.get(*at..).is_some_and(|here| begins_with(here, phrase)))
    }

    /// Whether it holds one of these phrases.
    pub(super) fn has_any(&self, phrases: &[&str]) -> bool {
        phrases.iter().any(|phrase| self.has(phrase))
    }
}

fn bit(from: &[u8]) -> u128 {
    let pair = match from {
        [first, second, ..] => u32::from(*first) * 31 + u32::from(*second),
        [first] => u32::from(*first) * 31,
        [] => 0,
    };
    1 << (pair % 128)
}

/// Whether a text begins with a phrase that ends where a word ends.
fn begins_with(text: &str, phrase: &str) -> bool {
    let ends_in_word = phrase.chars().next_back().is_some_and(char::is_alphanumeric);
    let rest = text.strip_prefix(phrase);
    rest.is_some_and(|rest| !(ends_in_word && rest.starts_with(char::is_alphanumeric)))
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
