//! Figures with units in words against those of the actions.

use super::beside;
use super::held::{Held, each_held, held, told};
use super::reading::{End, Stated, unit};
use super::{Difference, Value, Words, ends_a_clause, stretch, word};
use crate::check::context::Context;
use crate::lexicon::{Few, Token};
use crate::model::{Span, Step};
use crate::units::{Figure, Quantity, Range, Unit, convert};

/// Adds what differs.
pub(super) fn differ(context: &Context<'_>, step: &Step, words: &Words<'_>, found: &mut Vec<Difference>) {
    let stated = &words.stating.figures;
    for (at, first) in stated.iter().enumerate() {
        let kind = first.unit.quantity();
        let is_of_kind = |stated: &&Stated| stated.unit.quantity() == kind;
        if kind == Quantity::Unknown || stated.iter().take(at).any(|before| is_of_kind(&before)) {
            continue;
        }
        let mut unmet: Few<&Stated> = stated.iter().filter(is_of_kind).collect();
        each_held(context, step, kind, &mut |_, held| unmet.retain(|stated| !agrees(stated, held)));
        if !unmet.is_empty() {
            differ_in(context, step, words, unmet, found);
        }
    }
}

/// Adds what differs of figures of one quantity that no range of an action holds.
fn differ_in<'s>(
    context: &Context<'_>,
    step: &Step,
    words: &Words<'s>,
    mut unmet: Few<&'s Stated>,
    found: &mut Vec<Difference>,
) {
    let Some(kind) = unmet.first().map(|stated| stated.unit.quantity()) else { return };
    let of_kind: Vec<&Stated> =
        words.stating.figures.iter().filter(|stated| stated.unit.quantity() == kind).collect();
    let tokens = words.tokens();
    let mut unsaid = held(context, step, kind, &tokens, &unmet);
    unsaid.retain(|held| !of_kind.iter().any(|stated| is_met(stated, held)));
    if unsaid.is_empty() && of_kind.iter().all(|stated| is_statement(&tokens, stated)) {
        unsaid.extend(beside::holding(context, step, &tokens, &of_kind, is_met));
    }
    if unsaid.is_empty() || has_loose_unit(&tokens, &of_kind, kind) {
        return;
    }
    let told = told(context, step);
    let is_told =
        |stated: &Stated| told.iter().any(|told| agree(stated, &told.unit, Some(told.min), Some(told.max)));
    unmet.retain(|stated| is_statement(&tokens, stated) && (stated.end != End::Open || !is_told(stated)));
    while let Some((which, whose)) = nearest(&unmet, &unsaid) {
        let (stated, held) = (unmet.remove(which), unsaid.remove(whose));
        let (span, text) = whole(&step.words, stretch(&step.words, &tokens, stated.from, stated.last));
        let Held { shown, holder, range, .. } = held;
        let held = format!("its action says {shown}");
        let (unit, end) = (stated.unit.clone(), stated.end);
        let value = range.map_or(Value::Text(shown), |held| Value::Range { held, unit, end });
        found.push(Difference { span, stated: text, held, holder, value });
    }
}

/// A stretch with the figure that a hyphen ties to it: "40-54 Nm" is read by its second figure.
fn whole(words: &str, (span, text): (Span, String)) -> (Span, String) {
    let before = Span(0, span.0).of(words);
    let is_of_figure = |c: char| c.is_ascii_digit() || matches!(c, '.' | ',');
    let first = before.strip_suffix('-').map(|before| before.trim_end_matches(is_of_figure));
    let first = first.map(|rest| before.get(rest.len()..).unwrap_or_default());
    match first.filter(|first| first.starts_with(|c: char| c.is_ascii_digit())) {
        Some(first) => {
            let n = u32::try_from(first.len()).unwrap_or(0);
            (Span(span.0 - n.min(span.0), span.1), [first, &text].concat())
        }
        None => (span, text),
    }
}

/// Of figures and of what is held those two that lie nearest each other: most likely one was meant for the other.
fn nearest(stated: &[&Stated], held: &[Held]) -> Option<(usize, usize)> {
    let pairs = stated.iter().enumerate().flat_map(|(which, stated)| {
        held.iter().enumerate().map(move |(whose, held)| (apart(stated, held), which, whose))
    });
    pairs.min_by(|one, other| one.0.total_cmp(&other.0)).map(|(_, which, whose)| (which, whose))
}

/// How far a figure lies from what is held, as a part of the greater one.
fn apart(stated: &Stated, held: &Held) -> f64 {
    let Ok(figure) = convert(stated.max, &stated.unit, &held.unit) else { return f64::INFINITY };
    let known = held.max.or(held.min).unwrap_or(0.0);
    (figure - known).abs() / figure.abs().max(known.abs()).max(f64::MIN_POSITIVE)
}

/// Whether a figure says what shall be, and does not describe a thing: "the 6 bar valve", "rated 6 bar", "every 5 min".
fn is_statement(tokens: &[Token<'_>], stated: &Stated) -> bool {
    let before = stated.from.checked_sub(1).map_or("", |before| word(tokens, before));
    let is_described = matches!(before, "each" | "every" | "rated" | "another");
    !is_described && (stated.end != End::Open || may_be_followed(tokens, stated.last))
}

/// Whether a unit of a kind stands behind no figure that was read: "half an hour".
fn has_loose_unit(tokens: &[Token<'_>], read: &[&Stated], kind: Quantity) -> bool {
    (0..tokens.len()).any(|at| {
        let is_read = read.iter().any(|stated| (stated.from..=stated.last).contains(&at));
        !is_read && tokens.get(at).and_then(|t| unit(t.raw)).is_some_and(|unit| unit.quantity() == kind)
    })
}

/// Whether a figure may be followed by this: before a noun it describes a thing, as in "the 6 bar valve".
fn may_be_followed(tokens: &[Token<'_>], last: usize) -> bool {
    let is_follower = |word: &str| {
        matches!(
            word,
            "to" | "and" | "or" | "for" | "at" | "each" | "in" | "within" | "until" | "on" | "then"
        ) || matches!(word, "with" | "from" | "while" | "when" | "after" | "before" | "between" | "across")
            || matches!(word, "cold" | "hot" | "crosswise" | "long" | "first")
    };
    ends_a_clause(tokens, last) || is_follower(word(tokens, last + 1))
}

/// Whether words that state a range agree with one that holds. A single figure agrees with the range that it
/// lies in, an end with the same end.
fn agrees(stated: &Stated, held: &Range) -> bool {
    let end = |end: &Option<Figure>| end.as_ref().map(Figure::value);
    agree(stated, &held.unit, end(&held.min), end(&held.max))
}

fn is_met(stated: &Stated, held: &Held) -> bool {
    agree(stated, &held.unit, held.min, held.max)
}

fn agree(stated: &Stated, unit: &Unit, least: Option<f64>, most: Option<f64>) -> bool {
    let of = |figure: f64| convert(figure, &stated.unit, unit);
    let (Ok(min), Ok(max)) = (of(stated.min), of(stated.max)) else { return false };
    if !is_near(min, max) {
        return ends(min, least) && ends(max, most);
    }
    let is_end = |end: Option<f64>| end.is_some_and(|end| is_near(min, end));
    match stated.end {
        End::Most => is_end(most),
        End::Least => is_end(least),
        // Of what has one end only, or begins at zero, a figure tells that end and none within.
        End::Open => is_end(least) || is_end(most) || is_within(min, least, most),
    }
}

fn is_within(figure: f64, least: Option<f64>, most: Option<f64>) -> bool {
    match (least, most) {
        (Some(least), Some(most)) => !is_near(least, 0.0) && figure >= least && figure <= most,
        (None, Some(_)) => is_near(figure, 0.0),
        _ => false,
    }
}

fn ends(stated: f64, held: Option<f64>) -> bool {
    // "0 V to 5 V" and "at most 5 V" say the same of what is never below zero.
    held.map_or(is_near(stated, 0.0), |held| is_near(stated, held))
}

fn is_near(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-9 + 1e-6 * one.abs().max(other.abs())
}
