//! Lines that are headings, and the stage that they name.

use super::english::HEADINGS;
use super::marker::Marked;
use crate::capture::leading::{is_instruction, leading, orders_a_thing};
use crate::lexicon::Lexicon;
use crate::model::Stage;

/// A heading has no more words than this.
const MOST_WORDS: usize = 8;

/// A heading; without a stage it stays text.
pub(super) struct Heading {
    /// The stage that it names.
    pub(super) stage: Option<Stage>,
}

/// The heading that a line is, if it is one.
pub(super) fn heading(words: &str, marked: &Marked<'_>) -> Option<Heading> {
    let bare = words.trim_end_matches([':', ' ']);
    let has_colon = bare.len() < words.len();
    let n_words = bare.split_whitespace().count();
    let is_sentence = bare.ends_with(['.', ';', ',', '?', '!']);
    if n_words == 0 || n_words > MOST_WORDS || is_sentence || leading(words).is_some() {
        return None;
    }
    let stage = stage(bare);
    if marked.is_heading {
        return Some(Heading { stage });
    }
    if orders_a_thing(bare) {
        return None;
    }
    if stage.is_some() && (!marked.is_item || n_words <= 2) {
        return Some(Heading { stage });
    }
    let names = !marked.is_item && !is_instruction(bare);
    (names && (has_colon || is_shouted(bare))).then_some(Heading { stage: None })
}

fn stage(bare: &str) -> Option<Stage> {
    let known = HEADINGS.iter().find(|(heading, _)| bare.eq_ignore_ascii_case(heading));
    let known = known.map(|(_, stage)| stage.clone());
    known.or_else(|| Lexicon::for_language("en").and_then(|lexicon| lexicon.stage(bare)))
}

/// Capitals throughout, and words rather than a sign or a type.
fn is_shouted(bare: &str) -> bool {
    let n_letters = bare.chars().filter(|c| c.is_alphabetic()).count();
    let n_digits = bare.chars().filter(char::is_ascii_digit).count();
    n_letters >= 4 && n_digits == 0 && !bare.chars().any(char::is_lowercase)
}
