//! Several things that one verb reads: "read the pressure gauge on the flow *and the pressure gauge on the return*", "measure
//! the current of the fan *and the pump*".

use super::clause::Clause;
use super::coin::{Noun, PREPOSITIONS, noun};
use super::mention::singular;
use super::quantity::Quantity;
use super::read_value::{READ, begins_a_name, is_read, limits_of};
use super::reader::Reader;
use crate::lexicon::Break;
use crate::model::{Reading, Span};
use crate::units::Range;

/// What leads to what is measured of something.
const LEADS: &[&str] = &["across", "at", "in", "of", "on"];
/// What stands before the name of a value and belongs to none.
const OPENS: &[&str] = &["a", "an", "and", "but", "if", "its", "that", "the", "then", "whether", "while"];
/// At most so many words stand before the name of a value behind its article.
const MOST_WORDS: usize = 3;
/// What may stand behind the name of a value and belongs to no name.
const BEHIND: &[&str] = &[
    "after", "are", "as", "before", "gauge", "has", "have", "is", "meter", "reading", "until", "when",
    "while",
];
/// What a stretch behind "and" says to read.
enum Too {
    /// A value by its name: "the return *temperature*".
    Value(String),
    /// The value that was said before, of another thing: "the current of the fan *and the pump*".
    OfAnother(String),
}

impl Reader<'_> {
    /// The readings of a clause without limits whose first is known, each called after its words. `from` is the first token
    /// behind the verb.
    pub(super) fn with_others_read(&self, clause: &Clause, from: usize, first: Reading) -> Vec<Reading> {
        let parts = self.parts_joined(from, clause.to);
        let Some(((own_from, own_to), others)) = parts.split_first().filter(|(_, others)| !others.is_empty())
        else {
            return vec![first];
        };
        if let Some(each) = self.of_one_value(&parts) {
            return each;
        }
        let mut all = vec![first];
        for (from, to) in others {
            let Some(too) = self.what_is_read_too(*from, *to, (*own_from, *own_to)) else { continue };
            let is_so_called = |what: &str| all.iter().any(|reading| reading.what == what);
            let what = match too {
                // Two gauges: each is called with its place.
                Too::Value(what) if is_so_called(&what) => self.text_from(*from, *to).unwrap_or(what),
                Too::Value(what) => {
                    all.push(Reading { what, ..Reading::default() });
                    continue;
                }
                Too::OfAnother(what) => what,
            };
            if let Some((first, whole)) = all.first_mut().zip(self.text_from(*own_from, *own_to)) {
                first.what = whole;
            }
            if all.iter().all(|reading| reading.what != what) {
                all.push(Reading { what, ..Reading::default() });
            }
        }
        all
    }

    /// "Take the readings: *nozzle pressure 780 to 860 Pa, motor current at most 4.3 A*": a reading for each figure that is of a
    /// value by its name, and the tokens of the figures; none where there are not several.
    pub(super) fn each_with_limits(&self, clause: &Clause) -> Option<(Vec<Reading>, Vec<usize>)> {
        let figures: Vec<&Quantity> = self.quantities(clause).filter(|quantity| is_read(quantity)).collect();
        if figures.len() < 2 {
            return None;
        }
        let mut from = clause.verb() + 1;
        let mut each = Vec::new();
        for figure in &figures {
            let value = (from..figure.from).rev().find(|i| READ.contains(&self.text(*i)))?;
            let joined = |i: &usize| self.tokens.get(i + 1).is_some_and(|next| next.before == Break::None);
            let is_name = |i: &usize| {
                let text = self.text(*i);
                joined(i) && !PREPOSITIONS.contains(&text) && !OPENS.contains(&text)
            };
            let first = (from..value).rev().take_while(is_name).last().unwrap_or(value);
            let what = self.text_from(first, value + 1)?;
            each.push(Reading { what, limits: Some(limits_of(figure)?), ..Reading::default() });
            from = figure.to;
        }
        Some((each, figures.iter().flat_map(|figure| figure.from..figure.to).collect()))
    }

    /// "Check the inlet pressure (20 mbar) *and the burner pressure (8 to 9 mbar)*", of which a test holds one: the name of each
    /// value whose limits no action holds, beside others that one holds.
    pub(super) fn figures_left_out(&self) -> Vec<Span> {
        let reads = self.reading().actions.iter().flat_map(|action| &action.readings);
        let held: Vec<&Range> = reads.filter_map(|reading| reading.limits.as_ref()).collect();
        let figures = self.reading().quantities.iter().filter(|quantity| is_read(quantity));
        let limits = figures.filter_map(|figure| Some((figure, limits_of(figure)?)));
        let left: Vec<&Quantity> =
            limits.filter(|(_, limits)| !held.contains(&limits)).map(|(figure, _)| figure).collect();
        let named = left.into_iter().filter_map(|figure| {
            let value = figure.from.checked_sub(1).filter(|value| READ.contains(&self.text(*value)))?;
            // "Test it *at* a pressure of 25 mbar" is in the action that tests.
            let article = (value.saturating_sub(MOST_WORDS)..value).rev().find(|i| self.text(*i) == "the")?;
            let is_listed = article.checked_sub(1).is_some_and(|and| self.text(and) == "and");
            is_listed.then(|| self.span(article + 1, value + 1))
        });
        if held.is_empty() { Vec::new() } else { named.collect() }
    }

    /// The stretches between "and" and commas; one, where nothing is joined.
    fn parts_joined(&self, from: usize, to: usize) -> Vec<(usize, usize)> {
        let before = |i: usize| self.tokens.get(i).map_or(Break::Sentence, |token| token.before);
        let end = (from + 1..to).find(|i| before(*i) == Break::Sentence).unwrap_or(to);
        let and = (from + 1..end).rev().find(|i| self.text(*i) == "and");
        let Some(and) = and.filter(|and| and + 1 < end && before(and + 1) == Break::None) else {
            return vec![(from, end)];
        };
        let mut parts = Vec::new();
        let mut at = from;
        for i in from + 1..end {
            let is_and = self.text(i) == "and";
            if is_and || (i < and && before(i) == Break::Comma) {
                parts.push((at, i));
                at = i + usize::from(is_and);
            } else if before(i) == Break::Comma {
                // What follows a comma behind the list says something else.
                parts.push((at, i));
                return parts;
            }
        }
        parts.push((at, end));
        parts
    }

    /// "The flow and return *temperatures*": the same value of each.
    fn of_one_value(&self, parts: &[(usize, usize)]) -> Option<Vec<Reading>> {
        let (from, to) = *parts.last()?;
        let values = self.text(to.checked_sub(1)?);
        let value = singular(values);
        let is_bare = to > from + 1 && !matches!(self.text(from), "a" | "an" | "its" | "the");
        if !is_bare || value == values || !READ.contains(&value.as_str()) {
            return None;
        }
        let each = parts.iter().map(|(from, to)| {
            let to = if self.text(to - 1) == values { to - 1 } else { *to };
            let what = format!("{} {value}", self.text_from(*from, to)?);
            Some(Reading { what, ..Reading::default() })
        });
        each.collect()
    }

    /// "The *temperature* and pressure relief valve" is one valve.
    pub(super) fn names_valve_of_both(&self, value: usize) -> bool {
        let joined = |i: &usize| self.tokens.get(*i).is_some_and(|token| token.before == Break::None);
        let is_bare = |i: &usize| !matches!(self.text(*i), "a" | "an" | "its" | "of" | "the");
        let mut behind = (value + 1..value + 6).take_while(|i| joined(i) && is_bare(i));
        self.text(value + 1) == "and" && behind.any(|i| matches!(self.text(i), "valve" | "valves"))
    }

    /// What a further stretch says to read: a value by its name, or the value of the first stretch of another thing.
    fn what_is_read_too(&self, from: usize, to: usize, first: (usize, usize)) -> Option<Too> {
        let is_value = |i: &usize| READ.contains(&self.text(*i));
        if let Some(value) = (from..to).find(is_value) {
            // "The *flow temperature*" is a temperature.
            let value = (value + 1..to).take_while(is_value).last().unwrap_or(value);
            let next = self.text(value + 1);
            let ends = value + 1 == to || BEHIND.contains(&next) || PREPOSITIONS.contains(&next);
            let head = self.text(to.checked_sub(1)?).to_owned();
            return match next {
                // "And the *flow temperature setting*" is written down.
                _ if [next, &head].iter().any(|word| noun(&[singular(word)]) == Noun::Setting) => None,
                _ if ends => self.text_from(from, value + 1).map(Too::Value),
                _ if begins_a_name(self.tokens.get(value + 1)) => None,
                // "And the *flow delay time*" is no flow.
                _ => self.text_from(from, to).map(Too::Value),
            };
        }
        // "The current of the fan *and of the pump*".
        let is_again = LEADS.contains(&self.text(from));
        let from = from + usize::from(is_again);
        let head = self.text(to.checked_sub(1)?).to_owned();
        let is_thing = matches!(self.text(from), "a" | "an" | "its" | "the")
            && (is_again || noun(&[head]).is_worked_on());
        let thing = self.text_from(from, to).filter(|_| is_thing)?;
        let lead = (first.0 + 1..first.1).find(|i| LEADS.contains(&self.text(*i)));
        let value = lead.and_then(|lead| self.text_from(first.0, lead + 1));
        Some(Too::OfAnother(match value {
            Some(value) => format!("{value} the {thing}"),
            None => thing,
        }))
    }
}
