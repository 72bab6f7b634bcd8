//! Figures with units, ranges and readings as the notation writes them.
//!
//! A range is `5` (both ends), `5..6`, `5..` or `..6`, followed by the code of its unit unless the place
//! has a usual one. A reading is `what|limits|seen|source`, empty parts at the end left out, with `\|` and
//! `\\` for those two characters inside a part. A unit outside the list must look like a code: no blank,
//! and a letter, `[`, `{` or `%` first.

use crate::model::Reading;
use crate::units::{Figure, Measured, Range, Unit};

/// The text of a range; `gap` stands between the figures and the unit.
pub(super) fn range_text(range: &Range, usual: Option<&Unit>, gap: &str) -> String {
    let end = |figure: &Option<Figure>| figure.as_ref().map_or("", Figure::as_str).to_owned();
    let figures = match (&range.min, &range.max) {
        (Some(min), Some(max)) if min == max => min.as_str().to_owned(),
        (min, max) => format!("{}..{}", end(min), end(max)),
    };
    if usual == Some(&range.unit) { figures } else { format!("{figures}{gap}{}", range.unit.code()) }
}

/// Reads a range; `5-6` is read as `5..6`.
pub(super) fn read_range(text: &str, usual: Option<Unit>) -> Option<Range> {
    let text = text.trim();
    let (min, after) = match leading_figure(text) {
        Some((figure, after)) => (Some(figure), after),
        None => (None, text),
    };
    if let Some(after) = after.strip_prefix("..") {
        let (max, after) = match leading_figure(after) {
            Some((figure, after)) => (Some(figure), after),
            None => (None, after),
        };
        return Some(Range::new(min, max, read_unit(after, usual)?));
    }
    let min = min?;
    if let Some(after) = after.strip_prefix(['-', '\u{2013}']) {
        let (max, after) = leading_figure(after)?;
        return Some(Range::new(Some(min), Some(max), read_unit(after, usual)?));
    }
    Some(Range::new(Some(min.clone()), Some(min), read_unit(after, usual)?))
}

/// The text of a measured value.
pub(super) fn measured_text(measured: &Measured, usual: &Unit) -> String {
    if measured.unit == *usual {
        measured.value.as_str().to_owned()
    } else {
        format!("{}{}", measured.value, measured.unit.code())
    }
}

/// Reads a measured value.
pub(super) fn read_measured(text: &str, usual: Unit) -> Option<Measured> {
    let (value, after) = leading_figure(text.trim())?;
    Some(Measured::new(value, read_unit(after, Some(usual))?))
}

/// The figure with which a text begins, and what follows it. Two points end the figure: `5..6`.
fn leading_figure(text: &str) -> Option<(Figure, &str)> {
    let digits = |from: &str| from.bytes().take_while(u8::is_ascii_digit).count();
    let unsigned = text.strip_prefix(['-', '\u{2212}']).unwrap_or(text);
    let whole = text.len() - unsigned.len() + digits(unsigned);
    let fraction = text.get(whole..)?.strip_prefix(['.', ',']).map_or(0, digits);
    let end = if fraction == 0 { whole } else { whole + 1 + fraction };
    let (figure, after) = text.split_at_checked(end)?;
    Some((Figure::parse(figure).ok()?, after))
}

/// Reads a unit by its code or as people write it; an empty text means the usual one.
fn read_unit(text: &str, usual: Option<Unit>) -> Option<Unit> {
    let text = text.trim();
    if text.is_empty() {
        return usual;
    }
    if let Some(unit) = Unit::ALL.iter().find(|unit| unit.code() == text || unit.shown() == text) {
        return Some(unit.clone());
    }
    let first = text.chars().next()?;
    let like_a_code = (first.is_alphabetic() || "[{%".contains(first)) && !text.contains(char::is_whitespace);
    like_a_code.then(|| Unit::from_code(text))
}

/// The text of a reading.
pub(super) fn reading_text(reading: &Reading) -> String {
    let limits = reading.limits.as_ref().map(|range| range_text(range, None, " ")).unwrap_or_default();
    let parts = [reading.what.as_str(), &limits, &reading.seen, &reading.source];
    let n_parts = parts.iter().rposition(|part| !part.is_empty()).map_or(1, |last| last + 1);
    let escaped = parts.iter().take(n_parts).map(|part| part.replace('\\', "\\\\").replace('|', "\\|"));
    escaped.collect::<Vec<_>>().join("|")
}

/// Reads a reading.
pub(super) fn read_reading(text: &str) -> Option<Reading> {
    let mut parts = split_parts(text)?.into_iter();
    let mut next = || parts.next().unwrap_or_default();
    let (what, limits, seen, source) = (next(), next(), next(), next());
    let limits = if limits.is_empty() { None } else { Some(read_range(&limits, None)?) };
    if parts.next().is_some() {
        return None;
    }
    Some(Reading { what, limits, seen, source, ..Reading::default() })
}

/// The parts between the bars, with `\|` and `\\` undone.
fn split_parts(text: &str) -> Option<Vec<String>> {
    let mut parts = Vec::new();
    let mut part = String::new();
    let mut chars = text.chars();
    while let Some(c) = chars.next() {
        match c {
            '\\' => part.push(chars.next().filter(|next| "|\\".contains(*next))?),
            '|' => parts.push(std::mem::take(&mut part)),
            other => part.push(other),
        }
    }
    parts.push(part);
    Some(parts)
}
