//! Where a paragraph is cut into instructions.

use super::english::ABBREVIATIONS;
use crate::capture::leading::{is_instruction, leading};

/// The ends of the pieces of a text: a cut stands only where both sides are instructions, or before a
/// leading word. `words` gives the plain words of a stretch.
pub(super) fn cuts(text: &str, words: impl Fn(&str) -> String) -> Vec<usize> {
    let mut cuts = Vec::new();
    let mut is_instructed = false;
    let mut from = 0;
    for to in sentence_ends(text).into_iter().chain([text.len()]) {
        let sentence = words(text.get(from..to).unwrap_or_default());
        let leads = from > 0 && leading(&sentence).is_some();
        let instructs = is_instruction(&sentence);
        if from > 0 && (leads || (instructs && is_instructed)) {
            cuts.push(from);
        }
        is_instructed |= instructs;
        from = to;
        if leads {
            // A message takes the sentences behind it.
            break;
        }
    }
    cuts.push(text.len());
    cuts
}

/// The places behind a full stop, question or exclamation mark that a capital follows.
fn sentence_ends(text: &str) -> Vec<usize> {
    let ends = text.char_indices().filter(|(at, c)| {
        let after = text.get(at + c.len_utf8()..).unwrap_or_default();
        let next = after.trim_start_matches(|c: char| c.is_whitespace() || matches!(c, '"' | '\'' | '('));
        let is_spaced = after.starts_with(|c: char| c.is_whitespace());
        matches!(c, '.' | '!' | '?')
            && is_spaced
            && next.starts_with(char::is_uppercase)
            && !(*c == '.' && is_short(text.get(..*at).unwrap_or_default()))
    });
    ends.map(|(at, c)| at + c.len_utf8()).collect()
}

/// Whether the last word before a full stop is an abbreviation or a single letter.
fn is_short(before: &str) -> bool {
    let word = before.rsplit(|c: char| c.is_whitespace() || c == '(').next().unwrap_or_default();
    let is_letter = word.chars().count() == 1 && word.chars().all(char::is_alphabetic);
    is_letter || ABBREVIATIONS.iter().any(|known| known.eq_ignore_ascii_case(word))
}
