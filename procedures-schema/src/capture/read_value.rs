//! Reading a value: with its limits, by its name, or of whatever is measured.

use super::clause::Clause;
use super::coin::noun;
use super::other::only_id;
use super::quantity::{Figures, Quantity};
use super::reader::Reader;
use crate::lexicon::{Break, Token};
use crate::model::{Action, Reading};
use crate::units::{Quantity as Kind, Range, Unit};

/// Values that are read by their names.
pub(super) const READ: &[&str] =
    &["pressure", "temperature", "voltage", "current", "level", "flow", "charge"];

/// What shows the value that it is called after.
const SHOWS: &[&str] = &["display", "gauge", "indicator", "meter"];

/// Whether the name of a value begins that of the thing behind it: "the *pressure* switch", "the *flow* valve"; a gauge shows
/// one.
pub(super) fn begins_a_name(next: Option<&Token<'_>>) -> bool {
    next.filter(|next| next.before == Break::None).is_some_and(|next| {
        let is_thing = next.text == "relief" || noun(&[next.text.to_string()]).is_worked_on();
        is_thing && !SHOWS.contains(&&*next.text) && !READ.contains(&&*next.text)
    })
}

/// Whether a figure is of a kind that is read.
pub(super) fn is_read(quantity: &Quantity) -> bool {
    const KINDS: &[Kind] = &[
        Kind::Pressure,
        Kind::Temperature,
        Kind::Voltage,
        Kind::Current,
        Kind::Resistance,
        Kind::Fraction,
        Kind::VolumeFlow,
    ];
    KINDS.iter().any(|kind| quantity.range(*kind).is_some())
}

/// The limits that a figure sets; none, if it is a time.
pub(super) fn limits_of(quantity: &Quantity) -> Option<Range> {
    match &quantity.figures {
        Figures::Range(range) if range.unit != Unit::Minute => Some(range.clone()),
        _ => None,
    }
}

impl Reader<'_> {
    /// A value with limits, or of a kind that is read: pressure, temperature, voltage, level.
    pub(super) fn read_value(
        &self,
        clause: &Clause,
        action: &mut Action,
        said_by: &mut Vec<usize>,
    ) -> Option<()> {
        if let Some((each, figures)) = self.each_with_limits(clause) {
            action.readings = each;
            said_by.extend(figures);
            return Some(());
        }
        let quantity = self.quantities(clause).find(|quantity| is_read(quantity));
        let quantity = quantity.filter(|quantity| !self.describes(quantity));
        let last = clause.phrase.iter().copied().take_while(|i| *i <= clause.verb() + 1).last();
        let from = last.unwrap_or(clause.verb()) + 1;
        let what = (from..clause.to)
            .find(|i| READ.contains(&self.text(*i)) && !begins_a_name(self.tokens.get(i + 1)));
        // "The *flow temperature*" is a temperature.
        let is_value = |i: &usize| {
            READ.contains(&self.text(*i))
                && self.tokens.get(*i).is_some_and(|token| token.before == Break::None)
        };
        let what = what.map(|first| (first + 1..clause.to).take_while(is_value).last().unwrap_or(first));
        let what = what.filter(|what| !self.names_valve_of_both(*what));
        // "Check *you* hold a current ticket."
        let tells = matches!(self.text(from), "you" | "they");
        // The value that stands with the verb: "measure the *resistance* of the sensor".
        let value = clause.phrase.iter().copied().max().filter(|last| *last > clause.verb());
        if quantity.is_none()
            && what.is_none()
            && !tells
            && let Some(what) = self.what_is_measured(clause, value)
        {
            action.readings =
                self.with_others_read(clause, value.unwrap_or(from), Reading { what, ..Reading::default() });
            return Some(());
        }
        if quantity.is_none() && (what.is_none() || tells) {
            return None;
        }
        let limits = quantity.and_then(limits_of);
        let at = self.mentions_in(clause).find(|mention| self.preposition(mention) == Some("at"));
        action.at = at.and_then(only_id);
        // "Write down any code *and* the pressure": the figure is of the last.
        let begin = |what: usize| {
            let joins = |i: &usize| self.text(*i) == "and" && limits.is_some();
            let begin = (from..what).rev().find(joins).map_or(from, |and| and + 1);
            // "Check *that the* temperature is back."
            let leads = |i: &usize| matches!(self.text(*i), "if" | "its" | "that" | "whether");
            (begin..what).find(|i| !leads(i)).unwrap_or(what)
        };
        let what = what.and_then(|i| self.text_from(begin(i), i + 1)).unwrap_or_else(|| "value".to_owned());
        let has_figure = quantity.is_some();
        let first = Reading { what, limits, ..Reading::default() };
        action.readings = if has_figure { vec![first] } else { self.with_others_read(clause, from, first) };
        said_by.extend(quantity.into_iter().flat_map(|quantity| quantity.from..quantity.to));
        Some(())
    }

    /// "Measure *how far the tips stand apart*": whatever it is, it is read.
    fn what_is_measured(&self, clause: &Clause, value: Option<usize>) -> Option<String> {
        let says_what = |what: &String| {
            let first = what.split(' ').next().unwrap_or_default();
            !matches!(first, "and" | "it" | "them" | "then" | "this")
                && first.starts_with(char::is_alphabetic)
        };
        let said = match value {
            Some(value) if self.text(value + 1) == "of" => self.text_from(value, clause.to),
            _ => self.object_text(clause).filter(says_what),
        };
        // "Measure its *resistance* and note it."
        let said = said.or_else(|| self.text_from(value?, value? + 1));
        said.filter(|_| self.text(clause.verb()).starts_with("measur"))
    }
}
