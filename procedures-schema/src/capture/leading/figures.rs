//! Limits and durations in the text of a leading word.
//!
//! Only what can be read without a doubt becomes limits. A sign, a tolerance in another unit or a second figure of
//! another kind leaves the text as it is, because wrong limits are worse than none.

use super::english::{AT_LEAST, AT_MOST, BEYOND, TWO_ENDS};
use crate::capture::quantity::{Figures, quantities};
use crate::lexicon::{Lexicon, tokens};
use crate::model::Span;
use crate::units::{Measured, Quantity, Range};

/// A range and the text before and after it.
pub(in crate::capture) struct Limits<'a> {
    pub(super) before: &'a str,
    pub(in crate::capture) range: Range,
    pub(super) after: &'a str,
}

/// The one range in a text that can be its limits: times count only where there is nothing else.
pub(in crate::capture) fn limits(text: &str) -> Option<Limits<'_>> {
    let all: Vec<(Span, Range)> = ranges(text);
    let others: Vec<&(Span, Range)> =
        all.iter().filter(|(_, range)| range.unit.quantity() != Quantity::Time).collect();
    let chosen = if others.is_empty() { all.iter().collect() } else { others };
    match chosen.as_slice() {
        [(span, range)] => bounded(text, *span, range.clone()),
        _ => None,
    }
}

/// A duration with which a text begins: at least, at most, and the text after it.
pub(super) fn duration(text: &str) -> Option<(Option<Measured>, Option<Measured>, &str)> {
    let (span, range) = ranges(text).into_iter().next()?;
    if range.unit.quantity() != Quantity::Time {
        return None;
    }
    let Limits { before, range, after } = bounded(text, span, range)?;
    let of = |figure| Measured::new(figure, range.unit.clone());
    let (min, max) = (range.min.clone().map(of), range.max.clone().map(of));
    let max = max.filter(|max| min.as_ref() != Some(max));
    before.trim().is_empty().then_some((min, max, after))
}

fn ranges(text: &str) -> Vec<(Span, Range)> {
    let Some(lexicon) = Lexicon::for_language("en") else { return Vec::new() };
    let found = quantities(text, &tokens(text), lexicon, &|_| false).into_iter();
    let range = |figures| match figures {
        Figures::Range(range) => Some(range),
        Figures::Size(_) | Figures::Dimensions(_) => None,
    };
    found.filter_map(|quantity| range(quantity.figures).map(|range| (quantity.span, range))).collect()
}

/// The range with the words before it taken into account.
fn bounded(text: &str, span: Span, mut range: Range) -> Option<Limits<'_>> {
    let stretch = span.of(text);
    let (_, after) = text.split_at_checked(Span(0, span.1).of(text).len())?;
    let to_first_digit = stretch.find(|c: char| c.is_ascii_digit()).unwrap_or(0);
    let (lead, _) = text.split_at_checked(Span(0, span.0).of(text).len() + to_first_digit)?;
    let lead = lead.trim_end();
    let figure = range.min.clone().or_else(|| range.max.clone());
    let one = range.min.is_none() || range.max.is_none() || range.min == range.max;
    let mut before = lead;
    if one {
        // The longer words count: "not below" says something else than "below".
        let most = without_end(lead, AT_MOST);
        let least = without_end(lead, AT_LEAST);
        let length = |rest: Option<&str>| rest.map_or(usize::MAX, str::len);
        match (most, least) {
            (Some(rest), _) if length(most) <= length(least) => {
                (before, range.min, range.max) = (rest, None, figure);
            }
            (_, Some(rest)) => (before, range.min, range.max) = (rest, figure, None),
            _ => {}
        }
    } else {
        before = without_end(lead, TWO_ENDS).unwrap_or(lead);
    }
    let beyond = without_end(before, BEYOND).is_some_and(|shorter| sign_counts(before, shorter, text, lead))
        || ["\u{b1}", "+/-", "+"].iter().any(|sign| after.trim_start().starts_with(sign));
    (!beyond).then_some(Limits { before, range, after })
}

/// A dash counts as a sign only right before the figure: "pressure - 5 bar" is no negative pressure.
fn sign_counts(before: &str, shorter: &str, text: &str, lead: &str) -> bool {
    let last = before.get(shorter.len()..).unwrap_or_default().trim();
    let is_dash = matches!(last, "-" | "\u{2212}");
    let joined = text.get(lead.len()..).is_some_and(|rest| !rest.starts_with(char::is_whitespace));
    !is_dash || joined
}

/// A text without one of these words at its end.
fn without_end<'a>(text: &'a str, words: &[&str]) -> Option<&'a str> {
    let text = text.trim_end().trim_end_matches('.');
    words.iter().find_map(|word| {
        let at = text.len().checked_sub(word.len())?;
        let (rest, end) = text.split_at_checked(at)?;
        let is_word = word.starts_with(|c: char| c.is_ascii_alphabetic());
        let whole = !is_word || rest.is_empty() || rest.ends_with(|c: char| !c.is_alphanumeric());
        (end.eq_ignore_ascii_case(word) && whole).then(|| rest.trim_end())
    })
}

/// Whether a text begins with a figure that has a unit, or with a size.
pub(in crate::capture) fn begins_with_quantity(text: &str) -> bool {
    let tokens = tokens(text);
    let found = Lexicon::for_language("en").map(|lexicon| quantities(text, &tokens, lexicon, &|_| false));
    found.unwrap_or_default().first().is_some_and(|quantity| quantity.span.0 == 0)
}
