//! A stretch of a step's words.

use serde::{Deserialize, Serialize};

/// Half-open range in code points of a step's words; in files `[from, to]`.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Span(
    /// The first code point.
    pub u32,
    /// The code point after the last.
    pub u32,
);

impl Span {
    /// The text that the span covers; empty where it reaches beyond the words.
    pub fn of(self, words: &str) -> &str {
        let place = |point: u32| usize::try_from(point).unwrap_or(usize::MAX);
        // Up to the first character that is not of ASCII, a byte is a character.
        if let Some(upto) = words.as_bytes().get(..place(self.1))
            && upto.is_ascii()
        {
            return words.get(place(self.0)..place(self.1)).unwrap_or("");
        }
        let at = |point| words.char_indices().map(|(i, _)| i).chain([words.len()]).nth(place(point));
        match (at(self.0), at(self.1)) {
            (Some(from), Some(to)) => words.get(from..to).unwrap_or(""),
            _ => "",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Span;

    #[test]
    fn spans_count_code_points() {
        assert_eq!(Span(0, 6).of("Lösen Sie"), "Lösen ");
        assert_eq!(Span(6, 9).of("Lösen Sie"), "Sie");
        assert_eq!(Span(6, 99).of("Lösen Sie"), "");
        assert_eq!(Span(3, 2).of("abc"), "");
        assert_eq!(Span(1, 3).of("abc"), "bc");
        assert_eq!(Span(1, 4).of("abc"), "");
    }
}
