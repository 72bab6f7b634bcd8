//! Figures with units, read from words.

use super::word;
use crate::capture::is_label_of_owner;
use crate::lexicon::{Amount, Break, Few, Lexicon, Token, spoken};
use crate::units::Unit;
use std::collections::BTreeMap;
use std::sync::LazyLock;

/// A figure, or two, with a unit in words, by its first and its last token.
#[derive(Debug)]
pub(super) struct Stated {
    pub(super) from: usize,
    pub(super) last: usize,
    pub(super) unit: Unit,
    /// The figure, or the first of two.
    pub(super) min: f64,
    /// The same figure, or the second of two.
    pub(super) max: f64,
    /// Whether it is said to be an end of what is accepted.
    pub(super) end: End,
}

/// Which end of what is accepted a figure is said to be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::check) enum End {
    /// `at most 5 bar`, `not above 5 bar`, `5 bar or less`.
    Most,
    /// `at least 5 bar`, `not below 5 bar`, `5 bar or more`.
    Least,
    /// None is said.
    Open,
}

/// The figures with units in some words, in order.
pub(super) fn stated_in(lexicon: Option<&Lexicon>, tokens: &[Token<'_>]) -> Few<Stated> {
    stated_by(lexicon, tokens, &Lexicon::numbers(tokens))
}

/// The same where only the tokens at these positions may be numbers.
pub(super) fn stated_by(lexicon: Option<&Lexicon>, tokens: &[Token<'_>], numbers: &[usize]) -> Few<Stated> {
    let mut all: Few<Stated> = Few::new();
    for &at in numbers {
        let is_new = all.last().is_none_or(|before| before.last < at);
        all.extend(is_new.then(|| stated_at(lexicon, tokens, at)).flatten());
    }
    all
}

/// `12 N·m`, `5 to 6 N·m`, `5-6 N·m`, `0 V to 5 V`, `between 5 and 6 bar`, `ten minutes`.
fn stated_at(lexicon: Option<&Lexicon>, tokens: &[Token<'_>], at: usize) -> Option<Stated> {
    let (first, unit, last) = figure(lexicon, tokens, at)?;
    let is_between = || at.checked_sub(1).is_some_and(|before| word(tokens, before) == "between");
    let behind = match word(tokens, last + 1) {
        "to" if unit.is_none() && is_label_of_owner(tokens, at) => return None,
        "to" => Some(last + 2),
        "and" if is_between() => Some(last + 2),
        _ if is_dashed(tokens, last + 1) => Some(last + 1),
        _ => None,
    };
    if let Some((max, Some(other), last)) = behind.and_then(|behind| figure(lexicon, tokens, behind))
        && unit.as_ref().is_none_or(|unit| *unit == other)
    {
        return Some(Stated { from: at, last, unit: other, min: first, max, end: End::Open });
    }
    let unit = unit?;
    Some(Stated { from: at, last, unit, min: first, max: first, end: end_at(tokens, at, last) })
}

/// Which end a figure is said to be by the words around it. "Above 43 °C" alone may tell what is not accepted.
fn end_at(tokens: &[Token<'_>], from: usize, last: usize) -> End {
    let before = |n: usize| from.checked_sub(n).map_or("", |at| word(tokens, at));
    let is_not = |word: &str| matches!(word, "not" | "no" | "never");
    match (before(2), before(1)) {
        ("at", "most") | (_, "max" | "maximum") => return End::Most,
        ("at", "least") | (_, "minimum") => return End::Least,
        (not, "above" | "over") if is_not(not) => return End::Most,
        (not, "below" | "under") if is_not(not) => return End::Least,
        ("more" | "higher", "than") if is_not(before(3)) => return End::Most,
        ("less" | "lower", "than") if is_not(before(3)) => return End::Least,
        _ => {}
    }
    match (word(tokens, last + 1), word(tokens, last + 2)) {
        ("at", "most") | ("or", "less") | ("max" | "maximum", _) => End::Most,
        ("at", "least") | ("or", "more") | ("minimum", _) => End::Least,
        _ => End::Open,
    }
}

/// Whether a dash without blanks stands before a token: `5-6`.
fn is_dashed(tokens: &[Token<'_>], at: usize) -> bool {
    let before = at.checked_sub(1).and_then(|before| tokens.get(before));
    before
        .zip(tokens.get(at))
        .is_some_and(|(before, token)| token.before == Break::Comma && token.span.0 == before.span.1 + 1)
}

/// A figure, its unit if one follows, and the last token of both.
fn figure(lexicon: Option<&Lexicon>, tokens: &[Token<'_>], at: usize) -> Option<(f64, Option<Unit>, usize)> {
    let token = tokens.get(at)?;
    let raw = token.raw;
    let n_digits = raw.find(|c: char| !c.is_ascii_digit() && c != '.' && c != ',').unwrap_or(raw.len());
    let (digits, joined) = raw.split_at_checked(n_digits)?;
    if n_digits > 0 && !joined.is_empty() {
        return Some((value(digits)?, Some(unit(joined)?), at));
    }
    let said = spoken(tokens, at).and_then(|(digits, behind)| Some((value(&digits)?, behind)));
    if let Some((figure, behind)) = said {
        let unit =
            tokens.get(behind).filter(|next| next.before == Break::None).and_then(|next| unit(next.raw));
        let last = behind - usize::from(unit.is_none());
        return Some((figure, unit, last));
    }
    let figure = if n_digits > 0 {
        value(digits)?
    } else {
        match lexicon?.amount_of(token) {
            Some(Amount::Exactly(n)) if token.text != "both" => f64::from(n),
            _ => return None,
        }
    };
    let behind = tokens.get(at + 1).filter(|next| next.before == Break::None);
    let unit = behind.and_then(|next| unit(next.raw));
    let last = at + usize::from(unit.is_some());
    Some((figure, unit, last))
}

/// The value of digits with one point or comma between them, if any.
fn value(digits: &str) -> Option<f64> {
    let (whole, fraction) = digits.split_once(['.', ',']).unwrap_or((digits, "0"));
    let is_figure = |digits: &str| !digits.is_empty() && digits.bytes().all(|byte| byte.is_ascii_digit());
    if !is_figure(whole) || !is_figure(fraction) {
        return None;
    }
    if digits.contains(',') { digits.replace(',', ".").parse().ok() } else { digits.parse().ok() }
}

/// Units in words, without the dots and in lower case.
const LONG: [(&str, Unit); 22] = [
    ("sec", Unit::Second),
    ("second", Unit::Second),
    ("seconds", Unit::Second),
    ("mins", Unit::Minute),
    ("minute", Unit::Minute),
    ("minutes", Unit::Minute),
    ("hour", Unit::Hour),
    ("hours", Unit::Hour),
    ("ohm", Unit::Ohm),
    ("ohms", Unit::Ohm),
    ("megohm", Unit::Megohm),
    ("megohms", Unit::Megohm),
    ("percent", Unit::PerCent),
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

/// The units by the first byte, in lower case, of what they are called.
static BY_FIRST: LazyLock<BTreeMap<u8, Vec<(&'static str, Unit)>>> = LazyLock::new(|| {
    let mut by_first: BTreeMap<u8, Vec<_>> = BTreeMap::new();
    let shown = Unit::ALL.iter().map(|unit| (unit.shown(), unit.clone()));
    for (name, unit) in LONG.into_iter().chain(shown) {
        by_first.entry(first_byte(name)).or_default().push((name, unit));
    }
    by_first
});

/// The unit that a word names. A letter alone is one as it is written.
pub(super) fn unit(raw: &str) -> Option<Unit> {
    let is_named = |name: &str| name.chars().nth(1).is_some() && is_alike(raw, name);
    let known = BY_FIRST.get(&first_byte(raw))?;
    let as_shown = known.iter().find(|(name, _)| raw == *name);
    as_shown.or_else(|| known.iter().find(|(name, _)| is_named(name))).map(|(_, unit)| unit.clone())
}

fn first_byte(text: &str) -> u8 {
    text.bytes().next().map_or(0, |byte| byte.to_ascii_lowercase())
}

/// Whether two names are the same but for dots and case.
fn is_alike(one: &str, other: &str) -> bool {
    let letters = |c: &char| !matches!(c, '·' | '.');
    let lower = |c: char| c.to_ascii_lowercase();
    one.chars().filter(letters).map(lower).eq(other.chars().filter(letters).map(lower))
}
