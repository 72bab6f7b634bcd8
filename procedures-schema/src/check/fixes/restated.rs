//! A figure of an action as a sentence says it, in the place of the one that the sentence has: in the unit and the form
//! that the writer chose.

use crate::check::stated::{Difference, End, Value};
use crate::lexicon::{Amount, Lexicon, number_like, spoken, tokens};
use crate::model::Span;
use crate::units::{Figure, Range, Unit};

/// The first and the last figure of some words, with the digits as typed.
pub(super) fn figures(lexicon: Option<&Lexicon>, words: &str) -> Option<(Figure, Figure)> {
    let tokens = tokens(words);
    let mut behind = 0;
    let mut figure = |at: &usize| {
        let token = tokens.get(*at).filter(|_| *at >= behind)?;
        if let Some((digits, end)) = spoken(&tokens, *at) {
            behind = end;
            return Figure::parse(&digits).ok();
        }
        let raw = token.raw;
        let n_digits = raw.find(|c: char| !c.is_ascii_digit() && c != '.' && c != ',').unwrap_or(raw.len());
        match raw.get(..n_digits).filter(|digits| !digits.is_empty()) {
            Some(digits) => Figure::parse(digits).ok(),
            None => match lexicon?.amount_of(token) {
                Some(Amount::Exactly(n)) => Figure::parse(&n.to_string()).ok(),
                _ => None,
            },
        }
    };
    let all: Vec<Figure> = Lexicon::numbers(&tokens).iter().filter_map(&mut figure).collect();
    Some((all.first()?.clone(), all.last()?.clone()))
}

/// Which stretch of the words gives way to which text, so that they say what is held; none where the sentence around
/// it would have to change too.
pub(super) fn restated(lexicon: Option<&Lexicon>, words: &str, one: &Difference) -> Option<(Span, String)> {
    let was = one.span.of(words);
    match &one.value {
        Value::Range { held, unit, end } => {
            let before = Span(0, one.span.0).of(words).trim_end();
            let is_between = before.to_ascii_lowercase().ends_with("between");
            Some((one.span, range_like(lexicon, held, &Written::of(was, unit), *end, is_between)?))
        }
        Value::Text(held) | Value::Thread(held) => Some((one.span, held.clone())),
        Value::Flats(held, unit) => {
            let flats = Range::new(Some(held.value.clone()), Some(held.value.clone()), held.unit.clone());
            Some((one.span, range_like(lexicon, &flats, &Written::of(was, unit), End::Open, false)?))
        }
        // Of one the noun would have to change too.
        Value::Count(n) if *n > 1 => {
            let number = was.split(' ').next()?;
            let n_letters = u32::try_from(number.chars().count()).ok()?;
            Some((Span(one.span.0, one.span.0 + n_letters), number_like(*n, number)))
        }
        Value::Count(_) | Value::Thing => None,
    }
}

/// How a figure is written in the words.
struct Written<'w> {
    was: &'w str,
    unit: &'w Unit,
    /// Two figures, with something between them.
    is_pair: bool,
    /// The unit stands behind both.
    is_repeated: bool,
}

impl<'w> Written<'w> {
    fn of(was: &'w str, unit: &'w Unit) -> Self {
        let parts = was.split_once(" to ").or_else(|| was.split_once(" and "));
        let has_unit =
            |part: &str| part.chars().any(char::is_alphabetic) && part.contains(|c: char| c.is_ascii_digit());
        let is_pair = parts.is_some() || was.contains(['-', '\u{2013}']);
        Self { was, unit, is_pair, is_repeated: parts.is_some_and(|(first, _)| has_unit(first)) }
    }

    /// What stands behind a figure: the unit as it was written, if it is the same.
    fn behind(&self, held: &Unit, figure: &Figure) -> String {
        if held != self.unit {
            return format!(" {}", held.shown());
        }
        let last = self.was.rfind(|c: char| c.is_ascii_digit()).map(|last| last + 1);
        let last = last.or_else(|| self.was.rfind(' '));
        let unit = last.and_then(|last| self.was.get(last..)).filter(|unit| !unit.trim().is_empty());
        unit.map_or_else(|| format!(" {}", held.shown()), |unit| in_number(unit, figure))
    }
}

/// A unit that is a word, for one or for several.
fn in_number(unit: &str, figure: &Figure) -> String {
    const WORDS: [&str; 7] = ["second", "minute", "min", "hour", "ohm", "volt", "millimetre"];
    let is_one = figure.as_str() == "1";
    let word = unit.trim_start();
    match word.strip_suffix('s') {
        Some(single) if is_one && WORDS.contains(&single) => {
            unit.strip_suffix('s').unwrap_or(unit).to_owned()
        }
        None if !is_one && word != "min" && WORDS.contains(&word) => format!("{unit}s"),
        _ => unit.to_owned(),
    }
}

/// A range in the form of the words in whose place it stands.
fn range_like(
    lexicon: Option<&Lexicon>,
    held: &Range,
    written: &Written<'_>,
    end: End,
    is_between: bool,
) -> Option<String> {
    let number = |figure: &Figure| {
        let n = figure.as_str().parse().ok().filter(|_| !written.was.contains(|c: char| c.is_ascii_digit()));
        n.map_or_else(|| figure.to_string(), |n| number_like(n, written.was))
    };
    let single = |figure: &Figure| number(figure) + &written.behind(&held.unit, figure);
    let is_zero = |figure: &Figure| figure.value() == 0.0;
    let text = match (end, &held.min, &held.max) {
        (End::Most, _, max) => single(max.as_ref()?),
        (End::Least, min, _) => single(min.as_ref()?),
        (End::Open, Some(min), Some(max)) if min == max && !is_between => single(max),
        (End::Open, Some(min), Some(max)) if is_between => format!("{} and {}", number(min), single(max)),
        (End::Open, Some(min), Some(max)) if written.is_repeated => {
            format!("{} to {}", single(min), single(max))
        }
        (End::Open, Some(min), Some(max)) if written.is_pair || !is_zero(min) => {
            format!("{} to {}", number(min), single(max))
        }
        (End::Open, None, Some(max)) if written.is_pair && !is_between => {
            let (min, _) = figures(lexicon, written.was).filter(|(min, _)| is_zero(min))?;
            let min = if written.is_repeated { single(&min) } else { number(&min) };
            format!("{min} to {}", single(max))
        }
        (End::Open, _, Some(max)) if !is_between => format!("at most {}", single(max)),
        (End::Open, Some(min), None) if !is_between => format!("at least {}", single(min)),
        _ => return None,
    };
    Some(text)
}
