//! Figures with units, read from words.

use super::word;
use crate::lexicon::{Amount, Break, Lexicon, Token};
use crate::units::{Figure, Range, Unit};
use std::borrow::Cow;

/// A figure, or two, with a unit in words, by its first and its last token.
#[derive(Debug)]
pub(super) struct Stated {
    pub(super) from: usize,
    pub(super) last: usize,
    pub(super) range: Range,
}

/// The figures with units in some words, in order.
pub(super) fn stated_in(lexicon: Option<&Lexicon>, tokens: &[Token<'_>]) -> Vec<Stated> {
    let mut all = Vec::new();
    let mut at = 0;
    while at < tokens.len() {
        let Some(stated) = stated_at(lexicon, tokens, at) else {
            at += 1;
            continue;
        };
        at = stated.last + 1;
        all.push(stated);
    }
    all
}

/// `12 N·m`, `5 to 6 N·m`, `5-6 N·m`, `0 V to 5 V`, `between 5 and 6 bar`, `ten minutes`.
fn stated_at(lexicon: Option<&Lexicon>, tokens: &[Token<'_>], at: usize) -> Option<Stated> {
    let (first, unit, last) = figure(lexicon, tokens, at)?;
    let is_between = || at.checked_sub(1).is_some_and(|before| word(tokens, before) == "between");
    let behind = match word(tokens, last + 1) {
        "to" => Some(last + 2),
        "and" if is_between() => Some(last + 2),
        _ if is_dashed(tokens, last + 1) => Some(last + 1),
        _ => None,
    };
    let second = behind.and_then(|behind| figure(lexicon, tokens, behind));
    let second = second.and_then(|(second, other, last)| Some((other?, Figure::parse(&second).ok()?, last)));
    if let Some((other, second, last)) = second
        && unit.as_ref().is_none_or(|unit| *unit == other)
    {
        let range = Range::new(Some(Figure::parse(&first).ok()?), Some(second), other);
        return Some(Stated { from: at, last, range });
    }
    let (unit, first) = (unit?, Figure::parse(&first).ok()?);
    Some(Stated { from: at, last, range: Range::new(Some(first.clone()), Some(first), unit) })
}

/// Whether a dash without blanks stands before a token: `5-6`.
fn is_dashed(tokens: &[Token<'_>], at: usize) -> bool {
    let before = at.checked_sub(1).and_then(|before| tokens.get(before));
    before
        .zip(tokens.get(at))
        .is_some_and(|(before, token)| token.before == Break::Comma && token.span.0 == before.span.1 + 1)
}

/// The digits of a figure, its unit if one follows, and the last token of both.
fn figure<'t>(
    lexicon: Option<&Lexicon>,
    tokens: &[Token<'t>],
    at: usize,
) -> Option<(Cow<'t, str>, Option<Unit>, usize)> {
    let token = tokens.get(at)?;
    let raw = token.raw;
    let n_digits = raw.find(|c: char| !c.is_ascii_digit() && c != '.' && c != ',').unwrap_or(raw.len());
    let (digits, joined) = raw.split_at_checked(n_digits)?;
    if n_digits > 0 && !joined.is_empty() {
        return Some((Cow::Borrowed(digits), Some(unit(joined)?), at));
    }
    let digits = if n_digits > 0 {
        Cow::Borrowed(digits)
    } else {
        match lexicon.and_then(|lexicon| lexicon.amount(&token.text)) {
            Some(Amount::Exactly(n)) if token.text != "both" => Cow::Owned(n.to_string()),
            _ => return None,
        }
    };
    let behind = tokens.get(at + 1).filter(|next| next.before == Break::None);
    let unit = behind.and_then(|next| unit(next.raw));
    let last = at + usize::from(unit.is_some());
    Some((digits, unit, last))
}

/// Units in words, without the dots and in lower case.
const LONG: [(&str, Unit); 17] = [
    ("sec", Unit::Second),
    ("second", Unit::Second),
    ("seconds", Unit::Second),
    ("mins", Unit::Minute),
    ("minute", Unit::Minute),
    ("minutes", Unit::Minute),
    ("hour", Unit::Hour),
    ("hours", Unit::Hour),
    ("volt", Unit::Volt),
    ("volts", Unit::Volt),
    ("degrees", Unit::Celsius),
    ("celsius", Unit::Celsius),
    ("lbfft", Unit::PoundForceFoot),
    ("lbft", Unit::PoundForceFoot),
    ("millibar", Unit::Millibar),
    ("millimetre", Unit::Millimetre),
    ("millimetres", Unit::Millimetre),
];

/// The unit that a word names. A letter alone is one as it is written.
pub(super) fn unit(raw: &str) -> Option<Unit> {
    let first = first_byte(raw)?;
    // Every word of a text is asked; the first letter tells nearly all of them from every unit.
    let may_be = |name: &str| first_byte(name) == Some(first);
    let long =
        LONG.iter().find(|(name, _)| may_be(name) && is_alike(raw, name)).map(|(_, unit)| unit.clone());
    let is_one = |unit: &&Unit| {
        let shown = unit.shown();
        if !may_be(shown) {
            return false;
        }
        if shown.chars().nth(1).is_none() { raw == shown } else { is_alike(raw, shown) }
    };
    long.or_else(|| Unit::ALL.iter().find(is_one).cloned())
}

fn first_byte(text: &str) -> Option<u8> {
    text.bytes().next().map(|byte| byte.to_ascii_lowercase())
}

/// Whether two names are the same but for dots and case.
fn is_alike(one: &str, other: &str) -> bool {
    let letters = |c: &char| !matches!(c, '·' | '.');
    let lower = |c: char| c.to_ascii_lowercase();
    one.chars().filter(letters).map(lower).eq(other.chars().filter(letters).map(lower))
}
