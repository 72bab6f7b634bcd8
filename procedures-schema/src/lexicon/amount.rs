//! Number words.

use self::Amount::Exactly;
use super::text::Token;
use super::word_set::WordSet;

/// How many of something words speak of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Amount {
    /// This many.
    Exactly(u32),
    /// All there are.
    All,
}

const KNOWN: [(&str, Amount); 17] = [
    ("zero", Exactly(0)),
    ("one", Exactly(1)),
    ("two", Exactly(2)),
    ("both", Exactly(2)),
    ("three", Exactly(3)),
    ("four", Exactly(4)),
    ("five", Exactly(5)),
    ("six", Exactly(6)),
    ("seven", Exactly(7)),
    ("eight", Exactly(8)),
    ("nine", Exactly(9)),
    ("ten", Exactly(10)),
    ("eleven", Exactly(11)),
    ("twelve", Exactly(12)),
    ("all", Amount::All),
    ("each", Amount::All),
    ("every", Amount::All),
];

/// The words of them.
const WORDS: [&str; KNOWN.len()] = {
    let mut words = [""; KNOWN.len()];
    let mut at = 0;
    while at < KNOWN.len() {
        words[at] = KNOWN[at].0;
        at += 1;
    }
    words
};

static SET: WordSet = WordSet::of(&WORDS);

/// The amount that a word, or a whole figure, says.
pub(crate) fn amount(word: &str) -> Option<Amount> {
    let known = KNOWN.iter().find(|(known, _)| word.eq_ignore_ascii_case(known));
    known.map(|(_, amount)| *amount).or_else(|| figure(word))
}

/// The same of a token, of which most are no number.
pub(super) fn amount_of(token: &Token<'_>) -> Option<Amount> {
    if SET.may_have(token) { amount(&token.text) } else { figure(token.raw) }
}

/// Whether a token may be a number word; nearly all others are told by one look.
pub(super) fn may_be_word(token: &Token<'_>) -> bool {
    SET.may_have(token)
}

fn figure(word: &str) -> Option<Amount> {
    let is_figure = word.as_bytes().first().is_some_and(u8::is_ascii_digit);
    let is_whole = is_figure && word.bytes().all(|b| b.is_ascii_digit());
    if is_whole { word.parse().ok().map(Exactly) } else { None }
}
