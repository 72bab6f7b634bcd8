//! Verb phrases and where they stand in a sentence.
//!
//! A phrase is written as in `take|takes|taking … off|out`: words with their other forms, and `…` for up
//! to [`WIDEST`] words between, `#` for a figure or number word. A phrase with more words hides one with fewer that shares a word with it:
//! "shut down" is not "shut", "test point" is not "test".

use super::amount::amount_of;
use super::negation::Unsaying;
use super::text::{Break, Token, mixed};
use super::word_set::WordSet;
use crate::model::{Span, Verb};
use smallvec::SmallVec;

/// At most this many words stand in a gap.
pub(super) const WIDEST: usize = 7;

/// Where "and" in a gap leads to one thing more, so many words name it, its article among them: "push the fan plug and
/// *the gas valve plug* home".
const ONE_MORE: usize = 5;

/// A list that needs no room of its own while it is as short as nearly every phrase.
pub type Few<T> = SmallVec<[T; 3]>;

/// A verb phrase found in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Said {
    /// The verbs that it may mean; none for a noun that looks like one.
    pub means: &'static [Verb],
    /// The tokens of the phrase, without those in its gap.
    pub tokens: Few<usize>,
    /// Where the tokens stand.
    pub words: Few<Span>,
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
    lists: Vec<Vec<Beginning>>,
    /// A bit for each mixture of a first word; they all fit where the processor looks first.
    bits: [u64; Self::N_BITS / 64],
}

impl FirstWords {
    const N_LISTS: usize = 2048;
    const N_BITS: usize = 16384;

    fn new() -> Self {
        Self { lists: vec![Vec::new(); Self::N_LISTS], bits: [0; Self::N_BITS / 64] }
    }

    /// The list, the word of the bits and the bit in it that stand for a mixed word.
    fn place_of(mixed: u32) -> (usize, usize, u64) {
        let place = usize::try_from(mixed >> 18).unwrap_or(0);
        (place % Self::N_LISTS, place / 64, 1 << (place % 64))
    }

    fn add(&mut self, first: &'static str, phrase: Phrase) {
        let (list, at, bit) = Self::place_of(mixed(first));
        if let Some(bits) = self.bits.get_mut(at) {
            *bits |= bit;
        }
        let Some(list) = self.lists.get_mut(list) else { return };
        let need = phrase.needs.first().copied().unwrap_or(ALWAYS);
        match list.iter_mut().find(|known| known.word == first) {
            Some(known) => {
                known.needs.push(need);
                known.phrases.push(phrase);
            }
            None => list.push(Beginning { word: first, needs: vec![need], phrases: vec![phrase] }),
        }
    }

    fn get(&self, first: &Token<'_>) -> Option<&Beginning> {
        let (list, at, bit) = Self::place_of(first.mixed);
        if self.bits.get(at).is_none_or(|bits| bits & bit == 0) {
            return None;
        }
        self.lists.get(list)?.iter().find(|known| known.word == first.text)
    }
}

/// The phrases of one first word.
#[derive(Clone, Debug)]
struct Beginning {
    word: &'static str,
    /// For each phrase what it needs first, in a list of their own: most need what does not follow, and are
    /// never looked at.
    needs: Vec<u128>,
    phrases: Vec<Phrase>,
}

/// Stands for what every word is followed by; a word may share it, and is then always taken to be there.
const ALWAYS: u128 = 1;

#[derive(Clone, Debug)]
struct Phrase {
    /// The words after the first.
    rest: Vec<Part>,
    /// For each of those words a bit for each of its forms: if none of them stands in the clause, nor does the
    /// phrase.
    needs: Few<u128>,
    means: &'static [Verb],
}

impl Phrase {
    fn new(rest: Vec<Part>, means: &'static [Verb]) -> Self {
        let needs = rest.iter().filter_map(|part| match part {
            Part::OneOf(forms) => Some(forms.iter().fold(0, |bits, (mixed, _)| bits | bit_of(*mixed))),
            Part::Number | Part::Gap => None,
        });
        Self { needs: needs.collect(), rest, means }
    }

    /// Whether words with these bits may hold all of it.
    fn may_stand_in(&self, bits: u128) -> bool {
        self.needs.iter().all(|need| need & bits != 0)
    }
}

/// "Take pump A and *pump B* out": what is told apart by a letter or a number is a thing.
fn is_marked(tokens: &[Token<'_>], at: usize) -> bool {
    let joined = |i: usize| tokens.get(i).filter(|token| token.before == Break::None);
    let is_both =
        tokens.get(at).is_some_and(|token| matches!(&*token.text, "plug" | "pump" | "tap" | "vent"));
    let is_mark = |raw: &str| match raw.as_bytes() {
        [only] => only.is_ascii_digit() || (only.is_ascii_uppercase() && *only != b'I'),
        _ => false,
    };
    is_both
        && joined(at + 1).is_some_and(|next| is_mark(next.raw))
        && joined(at + 2)
            .is_none_or(|next| matches!(&*next.text, "and" | "from" | "of" | "off" | "on" | "out"))
}

/// The bit of a mixed word among 128.
const fn bit_of(mixed: u32) -> u128 {
    1 << (mixed >> 25)
}

/// The bits of the words behind a token, up to the end of its clause.
fn bits_behind(tokens: &[Token<'_>], at: usize) -> u128 {
    let behind = tokens.iter().skip(at + 1).take_while(|token| token.before == Break::None);
    behind.fold(ALWAYS, |bits, token| bits | bit_of(token.mixed))
}

#[derive(Clone, Debug)]
enum Part {
    OneOf(Vec<(u32, &'static str)>),
    Number,
    Gap,
}

fn part(written: &'static str) -> Part {
    match written {
        "…" => Part::Gap,
        "#" => Part::Number,
        forms => Part::OneOf(forms.split('|').map(|form| (mixed(form), form)).collect()),
    }
}

impl Part {
    fn fits(&self, token: &Token<'_>) -> bool {
        match self {
            Self::OneOf(forms) => {
                forms.iter().any(|(mixed, form)| *mixed == token.mixed && *form == token.text)
            }
            Self::Number => {
                token.text.starts_with(|c: char| c.is_ascii_digit()) || amount_of(token).is_some()
            }
            Self::Gap => false,
        }
    }
}

impl Phrases {
    /// The phrases of a table, those that say nothing, and the words that make a noun of the next one.
    pub(super) fn of(
        verbs: impl Iterator<Item = (&'static str, &'static [Verb])>,
        lookalikes: &'static [&'static str],
        before_nouns: &'static WordSet,
    ) -> Self {
        let mut by_first = FirstWords::new();
        let nothing: &[Verb] = &[];
        let all = verbs.chain(lookalikes.iter().map(|written| (*written, nothing)));
        for (written, means) in all {
            let mut words = written.split(' ');
            let first = words.next().unwrap_or("");
            let rest: Vec<Part> = words.map(part).collect();
            for form in first.split('|') {
                by_first.add(form, Phrase::new(rest.clone(), means));
            }
        }
        Self { by_first, before_nouns }
    }

    /// Whether a phrase begins with a word.
    pub(super) fn may_begin(&self, word: &Token<'_>) -> bool {
        self.by_first.get(word).is_some()
    }

    /// Adds the phrases in a text, in the order of their first words.
    pub(super) fn find(&self, tokens: &[Token<'_>], found: &mut Vec<Said>) {
        let n_before = found.len();
        for (i, token) in tokens.iter().enumerate() {
            let Some(beginning) = self.by_first.get(token).filter(|_| !is_marked(tokens, i)) else {
                continue;
            };
            let before = i.checked_sub(1).and_then(|i| tokens.get(i)).filter(|_| token.before == Break::None);
            if before.is_some_and(|before| self.before_nouns.has(before)) {
                continue;
            }
            // Most phrases of a word are told absent by one look at what follows it.
            let bits = bits_behind(tokens, i);
            for (need, phrase) in beginning.needs.iter().zip(&beginning.phrases) {
                if need & bits == 0 || !phrase.may_stand_in(bits) {
                    continue;
                }
                let mut at = Few::new();
                at.push(i);
                if self.goes_on(tokens, &phrase.rest, &mut at) {
                    found.push(Said { means: phrase.means, tokens: at, words: Few::new(), unsaid: false });
                }
            }
        }
        drop_hidden(found, n_before);
        let found = found.get_mut(n_before..).unwrap_or_default();
        if !found.is_empty() {
            let unsaying = Unsaying::of(tokens);
            for said in found {
                let at = said.tokens.iter().filter_map(|i| tokens.get(*i));
                said.words = at.map(|token| token.span).collect();
                said.unsaid = unsaying.reaches(said.tokens.first().copied().unwrap_or(0));
            }
        }
    }

    /// Whether the rest of a phrase follows the last token of `at`; adds the tokens of it.
    fn goes_on(&self, tokens: &[Token<'_>], rest: &[Part], at: &mut Few<usize>) -> bool {
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
        let mut last = from + widest;
        for i in from.. {
            let token = tokens.get(i).filter(|_| i <= last)?;
            // A gap is part of one clause; "take the key and switch off" takes nothing off.
            let joined = i.checked_sub(1).and_then(|i| tokens.get(i));
            let joined = joined.is_some_and(|token| matches!(&*token.text, "and" | "then" | "or"));
            // "Slide it down *and out*."
            let goes_on = joined && matches!(&*token.text, "off" | "out") && part.fits(token);
            if token.before != Break::None
                || (joined && !goes_on && self.by_first.get(token).is_some() && !is_marked(tokens, i))
            {
                return None;
            }
            if part.fits(token) {
                return Some(i);
            }
            if joined && widest > 0 && matches!(&*token.text, "both" | "its" | "the") {
                last = last.max(i + ONE_MORE);
            }
        }
        None
    }
}

/// Drops, of those behind the first few, the phrases that a longer one hides.
fn drop_hidden(found: &mut Vec<Said>, n_before: usize) {
    let here = found.get(n_before..).unwrap_or_default();
    if here.iter().all(|said| said.tokens.len() == 1) {
        return;
    }
    let hides = |said: &Said, other: &Said| {
        other.tokens.len() > said.tokens.len() && other.tokens.iter().any(|i| said.tokens.contains(i))
    };
    let is_hidden = |said: &Said| here.iter().any(|other| hides(said, other));
    let hidden: SmallVec<[bool; 16]> = here.iter().map(is_hidden).collect();
    let mut n_kept = n_before;
    for (at, is_hidden) in (n_before..).zip(hidden) {
        if !is_hidden {
            found.swap(n_kept, at);
            n_kept += 1;
        }
    }
    found.truncate(n_kept);
}
