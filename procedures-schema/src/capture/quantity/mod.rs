//! Figures with units and sizes in words: durations, torques, pressures, temperatures, threads, inches.

mod bound;
mod size;
mod tolerance;
mod unit;

use super::coin::is_label_behind_owner;
use crate::lexicon::{Amount, Lexicon, Token, spoken};
use crate::model::Span;
use crate::units::{Figure, Measured, Quantity as Kind, Range, Unit};
use bound::Bound;

/// A figure with its unit, or a size, and where it stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Quantity {
    /// Where it stands.
    pub span: Span,
    /// What it says.
    pub figures: Figures,
    pub(super) from: usize,
    pub(super) to: usize,
}

/// What a quantity says.
#[derive(Clone, Debug, PartialEq)]
pub enum Figures {
    /// One figure or two, in a unit: `12 N·m`, `5 to 6 N·m`, `at most 43 °C`, `9.0 % ± 0.3`.
    Range(Range),
    /// A thread or a nominal size: `M6`, `M10 x 1`, `G 1 1/2`, `R 3/4`, `1/2 in`.
    Size(String),
    /// What a seal measures: `18 x 2.5 mm`, `24 x 16 x 2 mm`.
    Dimensions(String),
}

impl Quantity {
    /// The range, if it measures this kind of quantity.
    pub fn range(&self, kind: Kind) -> Option<&Range> {
        match &self.figures {
            Figures::Range(range) if range.unit.quantity() == kind => Some(range),
            _ => None,
        }
    }

    /// The one length that it says, which beside a nut is its width across flats; "at least 10 mm" is none.
    pub(super) fn width(&self) -> Option<&Range> {
        let of_one = |range: &&Range| range.unit == Unit::Millimetre && range.min == range.max;
        self.range(Kind::Length).filter(of_one)
    }

    /// A single value of this kind of quantity: the smaller end of a range.
    pub fn measured(&self, kind: Kind) -> Option<Measured> {
        let range = self.range(kind)?;
        let value = range.min.clone().or_else(|| range.max.clone())?;
        Some(Measured::new(value, range.unit.clone()))
    }
}

/// The quantities in some words, in order; they do not overlap.
///
/// `is_verb` tells which tokens say a verb: "do the nut *up* to 12 Nm" gives no bound.
pub(super) fn quantities(
    words: &str,
    tokens: &[Token<'_>],
    lexicon: &Lexicon,
    is_verb: &dyn Fn(usize) -> bool,
) -> Vec<Quantity> {
    let finder = Finder { words, tokens, lexicon, is_verb };
    let mut found = Vec::new();
    let mut i = 0;
    while i < tokens.len() {
        let quantity = finder.thread(i).or_else(|| finder.dimensions(i)).or_else(|| finder.inches(i));
        let quantity = quantity.or_else(|| finder.part_of_an_hour(i));
        if let Some((to, figures)) = quantity.or_else(|| finder.range(i)) {
            let span = Span(finder.span(i).0, finder.span(to - 1).1);
            found.push(Quantity { span, figures, from: i, to });
            i = to;
        } else {
            found.extend(finder.torque_without_unit(i, &found));
            i += 1;
        }
    }
    found
}

struct Finder<'a> {
    words: &'a str,
    tokens: &'a [Token<'a>],
    lexicon: &'a Lexicon,
    is_verb: &'a dyn Fn(usize) -> bool,
}

/// The token after the last of a quantity, and what the quantity says.
type Found = (usize, Figures);

impl Finder<'_> {
    fn text(&self, i: usize) -> &str {
        self.tokens.get(i).map_or("", |token| token.text.as_ref())
    }

    fn raw(&self, i: usize) -> &str {
        self.tokens.get(i).map_or("", |token| token.raw)
    }

    /// Whether a number that a range might begin with tells a thing apart: it is understood, or stands behind an owner.
    fn is_label(&self, i: usize) -> bool {
        self.span(i).0 == self.span(i).1 || is_label_of_owner(self.tokens, i)
    }

    fn span(&self, i: usize) -> Span {
        self.tokens.get(i).map_or(Span(0, 0), |token| token.span)
    }

    /// `12 N·m`, `5 to 6 N·m`, `5-6 N·m`, `0 V to 5 V`, `at most 43 °C`, `between 5 and 6 bar`, `20.6 % or better`.
    fn range(&self, i: usize) -> Option<Found> {
        let (at, bound) = self.bound(i);
        // "*Anything above* 0 V and you have the wrong spur" sets no limit to what is read.
        // "*Within* 0.1 bar of the gauge" is how far it may be off.
        let is_near = i.checked_sub(1).is_some_and(|before| self.text(before) == "within");
        let is_other =
            i.checked_sub(1).is_some_and(|before| matches!(self.text(before), "anything" | "everything"));
        if is_other && bound != Bound::None {
            return None;
        }
        let (first, unit, at) = self.figure(at).filter(|_| !self.is_label(at))?;
        if is_near && self.text(at) == "of" {
            return None;
        }
        if bound == Bound::None && self.has_tolerance(at, unit.is_some()) {
            // "1 bar ± 5 %" is not 1 bar.
            return self.tolerance(&first, unit.as_ref(), at).map(|(range, at)| (at, Figures::Range(range)));
        }
        let next = match self.text(at) {
            "to" | "and" => Some(at + 1),
            _ if self.between(at).contains(['-', '\u{2013}']) => Some(at),
            _ => None,
        };
        let second =
            next.and_then(|at| self.figure(at)).filter(|(_, other, _)| unit.is_none() || unit == *other);
        if let Some((second, Some(unit), at)) = second.filter(|_| bound == Bound::None) {
            return Some((at, Figures::Range(Range::new(Some(first), Some(second), unit))));
        }
        let (at, bound) = if bound == Bound::None { self.bound_behind(at) } else { (at, bound) };
        let (min, max) = match bound {
            Bound::Most => (None, Some(first)),
            Bound::Least => (Some(first), None),
            Bound::None => (Some(first.clone()), Some(first)),
        };
        Some((at, Figures::Range(Range::new(min, max, unit?))))
    }

    /// A figure, its unit if one follows, and the token after both.
    fn figure(&self, i: usize) -> Option<(Figure, Option<Unit>, usize)> {
        let said = spoken(self.tokens, i).and_then(|(digits, at)| Some((Figure::parse(&digits).ok()?, at)));
        if let Some((figure, at)) = said {
            let unit = self.unit(at).filter(|_| !self.between(at).contains(['.', ',', ';']));
            return Some(unit.map_or((figure.clone(), None, at), |(unit, to)| (figure, Some(unit), to)));
        }
        let text = self.text(i);
        let n_digits = text.find(|c: char| !c.is_ascii_digit() && c != '.' && c != ',').unwrap_or(text.len());
        let (figure, joined) = text.split_at_checked(n_digits)?;
        let parsed = match self.lexicon.amount(text) {
            Some(Amount::Exactly(n)) if n_digits == 0 => Figure::parse(&n.to_string()),
            _ if self.is_below_zero(i) => Figure::parse(&format!("-{figure}")),
            _ => Figure::parse(figure),
        };
        let figure = parsed.ok()?;
        if n_digits > 0 && !joined.is_empty() {
            let raw = self.raw(i).get(n_digits..).unwrap_or(joined);
            return Some((figure, Some(unit::of_word(raw)?), i + 1));
        }
        let unit = self.unit(i + 1).filter(|_| !self.between(i + 1).contains(['.', ',', ';']));
        match unit {
            Some((unit, to)) => Some((figure, Some(unit), to)),
            None => Some((figure, None, i + 1)),
        }
    }

    /// `half an hour`, `quarter of an hour`, `an hour`, `a minute`.
    fn part_of_an_hour(&self, i: usize) -> Option<Found> {
        let at = |n: usize| self.text(i + n);
        let (minutes, n) = match (at(0), at(1), at(2), at(3)) {
            ("half", "an", "hour", _) => ("30", 3),
            ("half", "hour", ..) => ("30", 2),
            ("quarter", "of", "an", "hour") => ("15", 4),
            ("an" | "one", "hour", ..) if !matches!(at(2), "and" | "per") => ("60", 2),
            ("a", "minute", ..) if !self.is_rate(i) => ("1", 2),
            _ => return None,
        };
        let figure = Figure::parse(minutes).ok()?;
        Some((i + n, Figures::Range(Range::new(Some(figure.clone()), Some(figure), Unit::Minute))))
    }

    /// Whether "a minute" is said of a rate: "10 litres a minute".
    fn is_rate(&self, i: usize) -> bool {
        let before = i.checked_sub(1).map_or("", |before| self.text(before));
        matches!(before, "l" | "litre" | "litres" | "turns" | "revs" | "times")
    }

    /// "The inlet to 30 Nm, the outlet to *23*": the figure of a torque that is understood, in the unit of the one
    /// before it.
    fn torque_without_unit(&self, i: usize, found: &[Quantity]) -> Option<Quantity> {
        let (figure, None, to) = self.figure(i)? else { return None };
        let is_torque = |token: &Token<'_>| token.is_understood() && token.text == "torque";
        let led = self.tokens.get(i.saturating_sub(7)..i).unwrap_or_default();
        let last = found.iter().rev().find_map(|quantity| quantity.range(Kind::Torque))?;
        let is_it = led.last().is_some_and(|token| token.text == "to") && led.iter().any(is_torque);
        let range = Range::new(Some(figure.clone()), Some(figure), last.unit.clone());
        is_it.then(|| Quantity { span: self.span(i), figures: Figures::Range(range), from: i, to })
    }

    /// Whether a dash right before a figure, and behind a blank, is its sign: "below -12 °C", not "5-6 bar".
    fn is_below_zero(&self, i: usize) -> bool {
        let between = self.between(i);
        let sign = between.strip_suffix(['-', '\u{2212}']);
        sign.is_some_and(|before| before.ends_with(char::is_whitespace))
    }

    /// What stands between a token and the one before it.
    fn between(&self, i: usize) -> &str {
        match i.checked_sub(1).and_then(|before| self.tokens.get(before)).zip(self.tokens.get(i)) {
            Some((before, token)) => Span(before.span.1, token.span.0).of(self.words),
            None => "",
        }
    }
}

/// "Tighten the screws of pump *1* to 12 Nm": a number behind whose they are, before what is set.
pub(crate) fn is_label_of_owner(tokens: &[Token<'_>], at: usize) -> bool {
    let is =
        |i: Option<usize>, word: &str| i.and_then(|i| tokens.get(i)).is_some_and(|token| token.text == word);
    let is_owned = is(at.checked_sub(2), "of") || is(at.checked_sub(3), "of");
    is_owned && is(Some(at + 1), "to") && is_label_behind_owner(tokens, at)
}
