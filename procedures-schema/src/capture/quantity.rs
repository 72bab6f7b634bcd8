//! Figures with units and sizes in words: durations, torques, pressures, temperatures, threads.

use crate::lexicon::{Amount, Lexicon, Token};
use crate::model::Span;
use crate::units::{Figure, Measured, Quantity as Kind, Range, Unit};

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
    /// One figure or two, in a unit: `12 N·m`, `5 to 6 N·m`, `at most 43 °C`.
    Range(Range),
    /// A thread: `M6`, `M10 x 1`, `G 1 1/2`, `R 3/4`.
    Thread(String),
}

impl Quantity {
    /// The range, if it measures this kind of quantity.
    pub fn range(&self, kind: Kind) -> Option<&Range> {
        match &self.figures {
            Figures::Range(range) if range.unit.quantity() == kind => Some(range),
            _ => None,
        }
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
        match finder.thread(i).or_else(|| finder.range(i)) {
            Some((to, figures)) => {
                let span = Span(finder.span(i).0, finder.span(to - 1).1);
                found.push(Quantity { span, figures, from: i, to });
                i = to;
            }
            None => i += 1,
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

    fn span(&self, i: usize) -> Span {
        self.tokens.get(i).map_or(Span(0, 0), |token| token.span)
    }

    /// `M6`, `M10 x 1`, `M10x1`, `G 1 1/2`, `G1`, `R 3/4`, `Rc 1/2`.
    fn thread(&self, i: usize) -> Option<Found> {
        let raw = self.raw(i);
        let digits = |text: &str| !text.is_empty() && text.starts_with(|c: char| c.is_ascii_digit());
        if let Some(size) = raw.strip_prefix('M').filter(|size| digits(size)) {
            let size = size.replace('x', " x ");
            if self.text(i + 1) == "x" && digits(self.text(i + 2)) {
                return Some((i + 3, Figures::Thread(format!("M{size} x {}", self.text(i + 2)))));
            }
            return Some((i + 1, Figures::Thread(format!("M{size}"))));
        }
        let letters = ["Rc", "Rp", "R", "G"].into_iter().find(|letters| raw.starts_with(letters))?;
        let joined = raw.strip_prefix(letters).unwrap_or("");
        if !joined.is_empty() && !is_inches(joined) {
            return None;
        }
        let mut inches: Vec<&str> = Some(joined).filter(|joined| !joined.is_empty()).into_iter().collect();
        let mut to = i + 1;
        // A whole number of inches, a fraction, or both.
        while inches.len() < 2
            && is_inches(self.text(to))
            && !inches.last().is_some_and(|last| last.contains('/'))
        {
            if !inches.is_empty() && !self.text(to).contains('/') {
                break;
            }
            inches.push(self.text(to));
            to += 1;
        }
        (!inches.is_empty()).then(|| (to, Figures::Thread(format!("{letters} {}", inches.join(" ")))))
    }

    /// `12 N·m`, `5 to 6 N·m`, `5-6 N·m`, `0 V to 5 V`, `at most 43 °C`, `between 5 and 6 bar`.
    fn range(&self, i: usize) -> Option<Found> {
        let (at, bound) = self.bound(i);
        let (first, unit, at) = self.figure(at)?;
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
        let (min, max) = match bound {
            Bound::Most => (None, Some(first)),
            Bound::Least => (Some(first), None),
            Bound::None => (Some(first.clone()), Some(first)),
        };
        Some((at, Figures::Range(Range::new(min, max, unit?))))
    }

    /// Words before a figure that make it an end of a range.
    fn bound(&self, i: usize) -> (usize, Bound) {
        match (self.text(i), self.text(i + 1)) {
            ("up", "to") if (self.is_verb)(i) => (i, Bound::None),
            ("at", "most") | ("up", "to") | ("not", "above" | "over") => (i + 2, Bound::Most),
            ("at", "least") | ("not", "below" | "under") => (i + 2, Bound::Least),
            ("below" | "under" | "max" | "maximum", _) => (i + 1, Bound::Most),
            ("above" | "over", _) => (i + 1, Bound::Least),
            _ => (i, Bound::None),
        }
    }

    /// A figure, its unit if one follows, and the token after both.
    fn figure(&self, i: usize) -> Option<(Figure, Option<Unit>, usize)> {
        let text = self.text(i);
        let n_digits = text.find(|c: char| !c.is_ascii_digit() && c != '.' && c != ',').unwrap_or(text.len());
        let (figure, joined) = text.split_at_checked(n_digits)?;
        let parsed = match self.lexicon.amount(text) {
            Some(Amount::Exactly(n)) if n_digits == 0 => Figure::parse(&n.to_string()),
            _ => Figure::parse(figure),
        };
        let figure = parsed.ok()?;
        if n_digits > 0 && !joined.is_empty() {
            let raw = self.raw(i).get(n_digits..).unwrap_or(joined);
            return Some((figure, Some(unit(raw)?), i + 1));
        }
        match unit(self.raw(i + 1)).filter(|_| !self.between(i + 1).contains(['.', ',', ';'])) {
            Some(unit) => Some((figure, Some(unit), i + 2)),
            None => Some((figure, None, i + 1)),
        }
    }

    /// What stands between a token and the one before it.
    fn between(&self, i: usize) -> &str {
        match i.checked_sub(1).and_then(|before| self.tokens.get(before)).zip(self.tokens.get(i)) {
            Some((before, token)) => Span(before.span.1, token.span.0).of(self.words),
            None => "",
        }
    }
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Bound {
    None,
    Most,
    Least,
}

/// Whether a text is a number of inches: `1`, `3/4`.
fn is_inches(text: &str) -> bool {
    !text.is_empty()
        && text.len() <= 5
        && text.chars().all(|c| c.is_ascii_digit() || c == '/')
        && !text.ends_with('/')
}

/// The unit that a word names.
fn unit(raw: &str) -> Option<Unit> {
    let named = match raw.to_lowercase().as_str() {
        "nm" | "n·m" | "n.m" => Unit::NewtonMetre,
        "lbf·ft" | "lbf.ft" | "lbft" | "ft·lb" => Unit::PoundForceFoot,
        "bar" => Unit::Bar,
        "mbar" | "millibar" => Unit::Millibar,
        "psi" => Unit::Psi,
        "kpa" => Unit::Kilopascal,
        "pa" => Unit::Pascal,
        "mm" | "millimetre" | "millimetres" => Unit::Millimetre,
        "kg" => Unit::Kilogram,
        "lb" => Unit::Pound,
        "°c" | "degrees" | "celsius" => Unit::Celsius,
        "°f" => Unit::Fahrenheit,
        "s" | "sec" | "second" | "seconds" => Unit::Second,
        "min" | "mins" | "minute" | "minutes" => Unit::Minute,
        "h" | "hour" | "hours" => Unit::Hour,
        "v" | "volt" | "volts" => Unit::Volt,
        "a" if raw == "A" => Unit::Ampere,
        "ω" | "ohm" | "ohms" => Unit::Ohm,
        "mω" | "megohm" | "megohms" => Unit::Megohm,
        "l" | "litre" | "litres" => Unit::Litre,
        "l/min" => Unit::LitrePerMinute,
        "m³" | "m3" => Unit::CubicMetre,
        "m³/h" | "m3/h" => Unit::CubicMetrePerHour,
        "kw" => Unit::Kilowatt,
        "%" => Unit::PerCent,
        "ppm" => Unit::PartsPerMillion,
        _ => return None,
    };
    Some(named)
}
