//! What the words of a line name and its reading leaves out: it is asked about, so that nothing goes without a word.

use super::super::left_out::begins_with_a_seal;
use super::super::{Choice, LineReading};
use super::{Made, Making, Question};
use crate::model::{Action, Connection, Id, Setting, Span, Temporary, ThingKind};

impl Making {
    /// Where the words name a thing that was made, which no action holds and nothing that was made belongs to.
    pub(super) fn made_and_not_used(&self) -> Vec<Span> {
        let LineReading { actions, doubts, left_out, .. } = &self.reading;
        let choices = doubts.iter().flat_map(|doubt| doubt.choices.iter().flat_map(Choice::actions));
        let all: Vec<&Action> = actions.iter().chain(choices).collect();
        let is_used = |thing: &Id| {
            let places = |action: &Action| {
                [&action.through, &action.vent, &action.at].into_iter().flatten().any(|place| place == thing)
            };
            let owns = |known: &Connection| known.joins.contains(thing);
            let carries =
                |item: &Temporary| item.on.as_ref() == Some(thing) || item.bonds.as_ref() == Some(thing);
            let is_set = |setting: &Setting| setting.of.as_ref() == Some(thing);
            all.iter().any(|action| action.on.contains(thing) || places(action))
                || self.map.connections.iter().any(owns)
                || self.map.temporary.iter().any(carries)
                || self.map.settings.iter().any(is_set)
        };
        let is_told = |span: &Span| {
            let asked = self.asked.iter().filter(|asked| asked.thing.is_none()).map(|asked| &asked.span);
            asked.chain(left_out).any(|told| told.0 < span.1 && span.0 < told.1)
        };
        let may_be = |made: &&Made| {
            !matches!(
                made.kind,
                ThingKind::Circuit | ThingKind::Section | ThingKind::Seal | ThingKind::Setting
            )
        };
        // "The evaporator *of heat pump 1*" is called after it.
        let is_owner = |owner: &&Made| {
            let held = all.iter().flat_map(|action| &action.on).map(|id| self.map.name_of(id));
            held.filter_map(|name| name.strip_prefix(owner.name.as_str())).any(|rest| rest.starts_with(' '))
        };
        let unused = self.made.iter().filter(may_be).filter(|made| !is_used(&made.thing) && !is_owner(made));
        unused.filter_map(|made| made.span).filter(|span| !is_told(span)).collect()
    }

    /// Asks about what the words name and the reading leaves out, where nothing is asked about it yet.
    pub(super) fn asking_of_left_out(mut self, words: &str) -> Self {
        for span in &self.reading.left_out {
            if self.asked.iter().any(|asked| asked.span.0 < span.1 && span.0 < asked.span.1) {
                continue;
            }
            let named = span.of(words);
            let advice = if begins_with_a_seal(named) {
                "Name the joint that it seals"
            } else {
                "Give it a sentence of its own"
            };
            let question = format!("\"{named}\" is named too, and nothing is read of it. {advice}");
            self.asked.push(Question { span: *span, question, choices: Vec::new(), thing: None });
        }
        self
    }
}
