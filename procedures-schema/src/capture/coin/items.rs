//! New temporary items. Two of a name are told apart by where they are put: "a cloth over the fan and *a cloth over the
//! pump*".

use super::super::clause::Clause;
use super::super::placed::is_called_after;
use super::bench::Bench;
use super::nouns::{Noun, noun};
use super::phrase::{Lead, Phrase};
use super::wanted::Wanted;
use crate::lexicon::Amount;
use crate::model::{Id, Temporary, ThingKind, Verb};

/// What leads from an item to the thing that it is put at.
pub(in crate::capture) const PLACES: &[&str] = &[
    "across", "at", "below", "beneath", "from", "in", "into", "off", "on", "onto", "over", "round",
    "through", "to", "under",
];

impl Bench<'_> {
    /// Makes the temporary item that a phrase names.
    pub(super) fn make_temporary(&mut self, clause: &Clause, phrase: &Phrase) {
        if self.end_is_asked_for(phrase) {
            return;
        }
        let is_one = !phrase.plural() || phrase.amount == Some(Amount::Exactly(1));
        // Several that are put in one place are one thing: "two trays under the pump".
        let mut name = if is_one { phrase.name() } else { phrase.words.join(" ") };
        let is_taken = self.map.temporary.iter().any(|item| item.name == name);
        if self.is_another(phrase) || is_taken {
            name = self.name_of_another(&name);
        }
        let on = self.end_meant(clause, phrase);
        let place = self.place_of_item(phrase);
        let id = self.push_temporary(&name, &phrase.head_word(), on);
        if let Some(place) = place {
            let called = format!("{place} {}", phrase.stem().join(" "));
            if let Some(item) = self.map_mut().temporary.iter_mut().find(|item| item.id == id) {
                item.aliases.push(called);
            }
        }
        self.note_in_words(&id, ThingKind::Temporary, &name, phrase);
    }

    /// Whether a phrase says one item more: it is put somewhere else than those of its name that are in place.
    pub(super) fn is_one_more_item(&self, clause: &Clause, phrase: &Phrase, wanted: &Wanted) -> bool {
        let says_one = matches!(self.line.text(phrase.start), "a" | "an" | "another");
        if *wanted != Wanted::Temporary || !says_one || !clause.means.contains(&Verb::Place) {
            return false;
        }
        let Some(place) = self.place_of_item(phrase) else { return false };
        let end = self.end_behind(phrase).and_then(|end| self.connection_in(&end));
        let is_elsewhere = |item: &Temporary| {
            let is_there = is_called_after(item, &place)
                || end.as_ref().is_some_and(|end| item.on.as_ref() == Some(end));
            let is_put = self.line.here.temporary.get(&item.id) == Some(&true);
            (is_put || self.made.iter().any(|made| made.thing == item.id)) && !is_there
        };
        let known = self.known(phrase, &[ThingKind::Temporary]);
        let items = known.iter().filter_map(|id| self.map.temporary.iter().find(|item| item.id == *id));
        !known.is_empty() && items.into_iter().all(is_elsewhere)
    }

    /// The name of the thing at which an item is put.
    fn place_of_item(&self, phrase: &Phrase) -> Option<String> {
        let place = self.behind(phrase, PLACES)?;
        let stem = place.stem();
        let is_thing = matches!(
            noun(&stem),
            Noun::Connector(_) | Noun::Isolator(_) | Noun::Joint | Noun::Part | Noun::Port(_)
        );
        is_thing.then(|| place.name())
    }

    /// The item with a name on a connection.
    pub(super) fn push_temporary(&mut self, name: &str, head: &str, on: Option<Id>) -> Id {
        let id = self.new_id(name);
        let is_bond = head == "bond";
        let gauge = matches!(head, "gauge" | "manometer");
        let closes = gauge || matches!(head, "blank" | "bung" | "cap" | "plug");
        let mut item = Temporary::new(id.clone(), name);
        item.bonds = on.clone().filter(|_| is_bond);
        item.on = on.filter(|_| !is_bond);
        item.closes = closes;
        item.notice = matches!(head, "notice" | "sign" | "tag");
        item.gauge = gauge;
        self.map_mut().temporary.push(item);
        id
    }

    /// What stands behind an item and may be what it sits on.
    fn end_behind(&self, phrase: &Phrase) -> Option<Phrase> {
        const LEADS: &[&str] = &["across", "at", "in", "into", "on", "onto", "over", "through", "to"];
        self.phrases.iter().find(|other| other.from > phrase.head && other.is_after(LEADS)).cloned()
    }

    /// Whether what an item sits on waits for an answer; the item then waits too, or it would sit on nothing.
    fn end_is_asked_for(&self, phrase: &Phrase) -> bool {
        let span = self.end_behind(phrase).map(|end| self.span_of(&end));
        span.is_some_and(|span| self.asked.iter().any(|question| question.span == span))
    }

    /// The connection on which an item sits: "on the drain cock", "to it".
    fn end_meant(&mut self, clause: &Clause, phrase: &Phrase) -> Option<Id> {
        let behind = self.end_behind(phrase);
        let direct = || {
            self.phrases.iter().find(|other| other.lead == Lead::Direct && other.from != phrase.from).cloned()
        };
        let named = behind.or_else(direct);
        if let Some(named) = named {
            return self.connection_in(&named).or_else(|| {
                let is_end = matches!(named.head_word().as_str(), "end" | "opening" | "pipe");
                is_end.then(|| self.open_end()).flatten()
            });
        }
        self.line.pronoun(clause).and(self.last_connection.clone())
    }
}
