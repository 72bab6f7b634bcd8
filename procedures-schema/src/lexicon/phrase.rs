//! Verb phrases and where they stand in a sentence.
//!
//! A phrase is written as in `take|takes|taking … off|out`: words with their other forms, and `…` for up
//! to [`WIDEST`] words between, `#` for a figure or number word. A phrase with more words hides one with fewer that shares a word with it:
//! "shut down" is not "shut", "test point" is not "test".

use super::amount::amount;
use super::negation::Unsaying;
use super::text::{Break, Token};
use super::word_set::WordSet;
use crate::model::{Span, Verb};

/// At most this many words stand in a gap.
const WIDEST: usize = 7;

/// A verb phrase found in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Said {
    /// The verbs that it may mean; none for a noun that looks like one.
    pub means: &'static [Verb],
    /// The tokens of the phrase, without those in its gap.
    pub tokens: Vec<usize>,
    /// Where the tokens stand.
    pub words: Vec<Span>,
    /// Whether "do not" or the like unsays it.
    pub unsaid: bool,
}

impl Said {
    /// Whether it says this verb.
    pub fn says(&self, verb: &Verb) -> bool {
        !self.unsaid && self.means.contains(verb)
    }
}

/// Phrases by their first word.
#[derive(Debug)]
pub(super) struct Phrases {
    by_first: FirstWords,
    /// Words after which a word is a noun.
    before_nouns: &'static WordSet,
}

/// Phrases by their first word, spread over many short lists: most words of a sentence begin none, and that
/// is soon seen.
#[derive(Debug)]
struct FirstWords {
    lists: Vec<Vec<(&'static str, Vec<Phrase>)>>,
    /// A bit for each mixture of a first word; they all fit where the processor looks first.
    bits: [u64; Self::N_BITS / 64],
}

impl FirstWords {
    const N_LISTS: usize = 1024;
    const N_BITS: usize = 8192;

    fn new() -> Self {
        Self { lists: vec![Vec::new(); Self::N_LISTS], bits: [0; Self::N_BITS / 64] }
    }

    fn add(&mut self, first: &'static str, phrase: Phrase) {
        let mixed = mixed(first);
        if let Some(bits) = self.bits.get_mut(mixed / 64 % (Self::N_BITS / 64)) {
            *bits |= 1 << (mixed % 64);
        }
        let Some(list) = self.lists.get_mut(mixed % Self::N_LISTS) else { return };
        match list.iter_mut().find(|(word, _)| *word == first) {
            Some((_, known)) => known.push(phrase),
            None => list.push((first, vec![phrase])),
        }
    }

    fn get(&self, first: &str) -> &[Phrase] {
        let mixed = mixed(first);
        if self.bits.get(mixed / 64 % (Self::N_BITS / 64)).is_none_or(|bits| bits & 1 << (mixed % 64) == 0) {
            return &[];
        }
        let list = self.lists.get(mixed % Self::N_LISTS).map(Vec::as_slice).unwrap_or_default();
        let found = list.iter().find(|(word, _)| *word == first);
        found.map(|(_, phrases)| phrases.as_slice()).unwrap_or_default()
    }
}

/// A number for a word, from its length and the bytes at its ends.
fn mixed(word: &str) -> usize {
    let bytes = word.as_bytes();
    let byte = |at: usize| bytes.get(at).map_or(0, |byte| usize::from(*byte));
    byte(0) * 31 + byte(1) * 7 + byte(bytes.len().saturating_sub(1)) * 173 + bytes.len() * 59
}

#[derive(Clone, Debug)]
struct Phrase {
    /// The words after the first.
    rest: Vec<Part>,
    means: &'static [Verb],
}

#[derive(Clone, Debug)]
enum Part {
    OneOf(Vec<&'static str>),
    Number,
    Gap,
}

fn part(written: &'static str) -> Part {
    match written {
        "…" => Part::Gap,
        "#" => Part::Number,
        forms => Part::OneOf(forms.split('|').collect()),
    }
}

impl Part {
    fn fits(&self, token: &Token<'_>) -> bool {
        match self {
            Self::OneOf(forms) => forms.contains(&&*token.text),
            Self::Number => {
                token.text.starts_with(|c: char| c.is_ascii_digit()) || amount(&token.text).is_some()
            }
            Self::Gap => false,
        }
    }
}

impl Phrases {
    /// The phrases of a table, those that say nothing, and the words that make a noun of the next one.
    pub(super) fn of(
        verbs: &'static [(&'static str, &'static [Verb])],
        lookalikes: &'static [&'static str],
        before_nouns: &'static WordSet,
    ) -> Self {
        let mut by_first = FirstWords::new();
        let nothing: &[Verb] = &[];
        let all = verbs.iter().copied().chain(lookalikes.iter().map(|written| (*written, nothing)));
        for (written, means) in all {
            let mut words = written.split(' ');
            let first = words.next().unwrap_or("");
            let rest: Vec<Part> = words.map(part).collect();
            for form in first.split('|') {
                by_first.add(form, Phrase { rest: rest.clone(), means });
            }
        }
        Self { by_first, before_nouns }
    }

    /// The phrases in a text, in the order of their first words.
    pub(super) fn find(&self, tokens: &[Token<'_>]) -> Vec<Said> {
        let mut found: Vec<(Vec<usize>, &'static [Verb])> = Vec::new();
        // Most phrases end after their first word; one list serves them all.
        let mut at: Vec<usize> = Vec::new();
        for (i, token) in tokens.iter().enumerate() {
            let phrases = self.by_first.get(&token.text);
            if phrases.is_empty() {
                continue;
            }
            let before = i.checked_sub(1).and_then(|i| tokens.get(i)).filter(|_| token.before == Break::None);
            if before.is_some_and(|before| self.before_nouns.has(&before.text)) {
                continue;
            }
            for phrase in phrases {
                at.clear();
                at.push(i);
                if self.goes_on(tokens, &phrase.rest, &mut at) {
                    found.push((at.clone(), phrase.means));
                }
            }
        }
        let hidden = |at: &[usize]| {
            found.iter().any(|(other, _)| other.len() > at.len() && other.iter().any(|i| at.contains(i)))
        };
        if found.iter().any(|(at, _)| at.len() > 1) {
            let mut shown = found.iter().map(|(at, _)| !hidden(at)).collect::<Vec<_>>().into_iter();
            found.retain(|_| shown.next().unwrap_or(true));
        }
        let unsaying = Unsaying::of(tokens);
        found
            .into_iter()
            .map(|(at, means)| {
                let words = at.iter().filter_map(|i| tokens.get(*i)).map(|token| token.span).collect();
                let unsaid = unsaying.reaches(at.first().copied().unwrap_or(0));
                Said { means, tokens: at, words, unsaid }
            })
            .collect()
    }

    /// Whether the rest of a phrase follows the last token of `at`; adds the tokens of it.
    fn goes_on(&self, tokens: &[Token<'_>], rest: &[Part], at: &mut Vec<usize>) -> bool {
        let mut widest = 0;
        for part in rest {
            if matches!(part, Part::Gap) {
                widest = WIDEST;
                continue;
            }
            let next = at.last().and_then(|last| self.next(tokens, last + 1, widest, part));
            let Some(next) = next else { return false };
            at.push(next);
            widest = 0;
        }
        true
    }

    /// The first word that fits, at most `widest` words from a place, in the same clause.
    fn next(&self, tokens: &[Token<'_>], from: usize, widest: usize, part: &Part) -> Option<usize> {
        for i in from..=from + widest {
            let token = tokens.get(i)?;
            // A gap is part of one clause; "take the key and switch off" takes nothing off.
            let joined = i.checked_sub(1).and_then(|i| tokens.get(i));
            let joined = joined.is_some_and(|token| matches!(&*token.text, "and" | "then" | "or"));
            if token.before != Break::None || (joined && !self.by_first.get(&token.text).is_empty()) {
                return None;
            }
            if part.fits(token) {
                return Some(i);
            }
        }
        None
    }
}
