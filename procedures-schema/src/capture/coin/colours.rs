//! Colours that count what they are said of: "the brown, blue and green/yellow wires" are three.

use super::super::mention::COLOURS;
use super::super::reader::Reader;
use crate::lexicon::Break;

/// The token behind several colours that begin at one, and how many they are.
pub(super) fn colours(line: &Reader<'_>, from: usize, to: usize) -> Option<(usize, u32)> {
    let is_colour = |i: usize| i < to && COLOURS.contains(&line.text(i));
    let (mut i, mut n) = (from, 0);
    while is_colour(i) {
        n += 1;
        i += 1;
        if line.text(i) == "and" && is_colour(i + 1) {
            i += 1;
        }
    }
    let goes_on = i < to && line.tokens.get(i).is_some_and(|token| token.before == Break::None);
    (n > 1 && goes_on).then_some((i, n))
}
