//! Finding a name in words and putting another in its place, with the spans that point into those words.
//!
//! A name counts where it stands as whole words, as it is written in the map; where a sentence begins its
//! first letter may be a capital, and stays one. It does not count within a longer name, within a link to a
//! step, or where a hyphen makes it part of another word ("ring" in "O-ring"). What cannot come back: a small
//! letter at the begin of a sentence whose new name is written with a capital.

use crate::model::{Span, step_links};

/// Where a name stands in words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Found {
    /// The first code point.
    from: usize,
    /// The code point after the last.
    to: usize,
    /// Whether it stands there with the capital with which a sentence begins.
    is_capital: bool,
}

impl Found {
    /// Where it begins; and of two that begin at one place the longer first.
    pub(super) fn begin_and_length(&self) -> (usize, std::cmp::Reverse<usize>) {
        (self.from, std::cmp::Reverse(self.to))
    }

    /// The code point after its last.
    pub(super) fn end(&self) -> usize {
        self.to
    }
}

/// A name that is looked for.
pub(super) struct Sought {
    plain: Vec<char>,
    /// With a capital first letter.
    capital: Vec<char>,
    /// Longer names that hold it, in lower case: within them it means something else.
    longer: Vec<Vec<char>>,
}

impl Sought {
    /// A name among all others, which may hold it.
    pub(super) fn new<'n>(name: &str, others: impl Iterator<Item = &'n str>) -> Self {
        let plain: Vec<char> = name.trim().chars().collect();
        let within = lower(&plain);
        let longer = others
            .map(|other| lower(&other.trim().chars().collect::<Vec<_>>()))
            .filter(|other| other.len() > within.len())
            .filter(|other| (0..other.len()).any(|at| stands_at(other, at, &within)))
            .collect();
        Self { capital: with_capital(&plain), plain, longer }
    }

    /// Where it stands in these words, from left to right.
    pub(super) fn find(&self, words: &str) -> Vec<Found> {
        // Most sentences do not name the thing at all.
        let tail: String = self.plain.iter().skip(1).collect();
        if self.plain.is_empty() || !words.contains(&tail) {
            return Vec::new();
        }
        let chars: Vec<char> = words.chars().collect();
        let other = self.of_something_else(words, &chars);
        let mut found: Vec<Found> = Vec::new();
        let mut at = 0;
        while at < chars.len() {
            let to = at + self.plain.len();
            let is_capital = stands_at(&chars, at, &self.capital) && begins_a_sentence(&chars, at);
            let stands = is_capital || stands_at(&chars, at, &self.plain);
            if stands && !other.iter().any(|(from, end)| *from < to && at < *end) {
                found.push(Found { from: at, to, is_capital });
                at = to;
            } else {
                at += 1;
            }
        }
        found
    }

    /// The stretches of words that are links or longer names.
    fn of_something_else(&self, words: &str, chars: &[char]) -> Vec<(usize, usize)> {
        let point = |point: u32| usize::try_from(point).unwrap_or(usize::MAX);
        let links = step_links(words).into_iter().map(|link| (point(link.span.0), point(link.span.1)));
        let mut stretches: Vec<(usize, usize)> = links.collect();
        if !self.longer.is_empty() {
            let lower = lower(chars);
            for name in &self.longer {
                let places = (0..lower.len()).filter(|at| stands_at(&lower, *at, name));
                stretches.extend(places.map(|at| (at, at + name.len())));
            }
        }
        stretches
    }
}

/// The words with another name in those places.
pub(super) fn replaced(words: &str, found: &[Found], name: &str) -> String {
    let capital: String = with_capital(&name.chars().collect::<Vec<_>>()).into_iter().collect();
    let mut new = String::new();
    let mut end = 0;
    for place in found {
        new.extend(words.chars().skip(end).take(place.from - end));
        new.push_str(if place.is_capital { &capital } else { name });
        end = place.to;
    }
    new.extend(words.chars().skip(end));
    new
}

/// The span that says the same after a name of this length has taken those places. Where it held a part of
/// the old name it holds the whole of the new one.
pub(super) fn shifted(span: Span, found: &[Found], length: usize) -> Span {
    if span.0 >= span.1 {
        // It says nothing, and goes on saying nothing.
        let at = moved(span.0, found, length, false);
        return Span(at, at.saturating_sub(span.0 - span.1));
    }
    Span(moved(span.0, found, length, false), moved(span.1, found, length, true))
}

/// Where a code point is afterwards; one inside an old name goes to the end of the new one, or its begin.
fn moved(point: u32, found: &[Found], length: usize, to_end: bool) -> u32 {
    let point = usize::try_from(point).unwrap_or(usize::MAX);
    let (mut before, mut after) = (0, 0);
    for place in found.iter().take_while(|place| place.from < point) {
        let inside = point < place.to;
        // What lies before the name has moved by what the names before it are longer or shorter.
        let begin = (place.from + after).saturating_sub(before);
        if inside {
            return number(if to_end { begin + length } else { begin });
        }
        before += place.to - place.from;
        after += length;
    }
    number(point.saturating_add(after).saturating_sub(before))
}

fn number(point: usize) -> u32 {
    u32::try_from(point).unwrap_or(u32::MAX)
}

/// Whether a name stands at a place as whole words.
fn stands_at(chars: &[char], at: usize, name: &[char]) -> bool {
    if !chars.get(at..).is_some_and(|here| here.starts_with(name)) {
        return false;
    }
    let char_at = |at: Option<usize>| at.and_then(|at| chars.get(at)).copied();
    let joins = |inner: Option<&char>, next: Option<char>, after_next: Option<char>| {
        let is_word = |c: Option<char>| c.is_some_and(char::is_alphanumeric);
        let hyphenated = next == Some('-') && is_word(after_next);
        is_word(inner.copied()) && (is_word(next) || hyphenated)
    };
    let end = at + name.len();
    let before = |n: usize| char_at(at.checked_sub(n));
    !joins(name.first(), before(1), before(2))
        && !joins(name.last(), char_at(Some(end)), char_at(Some(end + 1)))
}

/// Whether nothing but a stop, a colon or the begin of the words is before a place.
fn begins_a_sentence(chars: &[char], at: usize) -> bool {
    let before = chars.get(..at).unwrap_or_default();
    let last = before.iter().rev().find(|c| c.is_alphanumeric() || !is_between(**c));
    last.is_none_or(|last| matches!(last, '.' | '!' | '?' | ':'))
}

/// Blanks, quotes and brackets, which may stand before the first word of a sentence.
fn is_between(c: char) -> bool {
    c.is_whitespace() || matches!(c, '"' | '\'' | '(' | '[' | '\u{201c}' | '\u{2018}')
}

/// In lower case, one letter for one letter, so that places stay what they are.
fn lower(chars: &[char]) -> Vec<char> {
    chars.iter().map(|c| one(c.to_lowercase(), *c)).collect()
}

fn with_capital(name: &[char]) -> Vec<char> {
    let mut name = name.to_vec();
    if let Some(first) = name.first_mut() {
        *first = one(first.to_uppercase(), *first);
    }
    name
}

/// The one letter that another case gives; the letter itself where it gives several.
fn one(mut cased: impl Iterator<Item = char>, letter: char) -> char {
    match (cased.next(), cased.next()) {
        (Some(only), None) => only,
        _ => letter,
    }
}
