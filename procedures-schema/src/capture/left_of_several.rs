//! What a line says of several things of which fewer are held: "the gas cock *of each boiler*", "open *both valves*" of which one is
//! known, "the lids off the box *and the centre*".

use super::clause::Clause;
use super::coin::{self, Lead, Noun, Phrase, noun};
use super::left_out::owns_one_of;
use super::mention::{head_of, is_plural, singular};
use super::reader::Reader;
use crate::lexicon::{Amount, Break};
use crate::model::{Connection, Id, Span, ThingKind, Verb};

impl Reader<'_> {
    /// "Open *both heating valves*", "unplug *the two motors*", of which the map has one.
    pub(super) fn fewer_than_said(&self, clause: &Clause) -> Option<Span> {
        let (counted, n) = self.several_things(clause)?;
        let is_isolator = |id: &&Id| self.map.isolators.iter().any(|isolator| isolator.id == **id);
        let is_part = noun(&counted.stem()) == Noun::Part;
        // "The two covers" may be one thing, or one joint of several.
        let is_several = |id: &Id| is_plural(head_of(self.map.name_of(id)));
        let is_one = |id: &Id| {
            let of_several = |known: &Connection| known.count > 1 || known.joins.iter().any(is_several);
            !is_several(id) && !self.map.connection(id).is_some_and(of_several)
        };
        let of_clause = |i: &usize| clause.phrase.contains(i) || (counted.start..=counted.head).contains(i);
        let meets =
            |says: &[Span]| (clause.verb()..=counted.head).filter(of_clause).any(|i| self.meets(i, says));
        let acts = |verb: &Verb| !is_part || verb.changes_the_appliance() || *verb == Verb::Clean;
        let actions =
            self.reading().actions.iter().filter(|action| acts(&action.verb) && meets(&action.says));
        let mut held: Vec<&Id> =
            actions.flat_map(|action| &action.on).filter(|id| is_part || is_isolator(id)).collect();
        // "Switch off both pumps at the pump switch."
        let is_counted = |id: &Id| {
            matches!(self.map.thing_kind(id), Some(ThingKind::Component | ThingKind::Connection))
                && is_one(id)
        };
        if is_part && !held.iter().all(|id| is_counted(id)) {
            return None;
        }
        held.sort();
        held.dedup();
        let held = held.len();
        let is_fewer = held > 0 && u32::try_from(held).is_ok_and(|held| held < n);
        is_fewer.then(|| self.span(counted.start, counted.head + 1))
    }

    /// On how many things the actions of a clause are done.
    fn n_held_by(&self, clause: &Clause) -> usize {
        let is_own = |says: &[Span]| clause.phrase.iter().any(|i| self.meets(*i, says));
        let own = self.reading().actions.iter().filter(|action| is_own(&action.says));
        let mut on: Vec<&Id> = own.flat_map(|action| &action.on).collect();
        on.sort();
        on.dedup();
        on.len()
    }

    /// The valves, switches or parts that a clause counts, if it works no others: "open *both heating valves*".
    pub(super) fn several_things(&self, clause: &Clause) -> Option<(Phrase, u32)> {
        let is_worked = |phrase: &Phrase| {
            phrase.lead == Lead::Direct && matches!(noun(&phrase.stem()), Noun::Isolator(_) | Noun::Part)
        };
        let all = coin::phrases(self, clause);
        let mut counted = all.iter().filter(|phrase| is_worked(phrase));
        let only = counted.next().filter(|_| counted.next().is_none()).filter(|only| only.plural())?;
        match only.amount {
            Some(Amount::Exactly(n)) => Some((only.clone(), n)),
            _ => None,
        }
    }

    /// "Close the gas cock *of each boiler*", of which one is closed.
    pub(super) fn of_each(&self, clause: &Clause) -> Option<Span> {
        let is_it = |i: &usize| {
            matches!(self.text(*i), "each" | "every")
                && matches!(self.text(i - 1), "from" | "of" | "off" | "on")
                && !is_plural(self.text(i - 2))
                && !coin::PREPOSITIONS.contains(&self.text(i + 1))
                && matches!(noun(&[self.text(i + 1).to_owned()]), Noun::Part | Noun::Unknown)
        };
        if !clause.means.iter().any(Verb::changes_the_appliance) {
            return None;
        }
        let each = (clause.verb() + 2..self.end_of_sentence(clause)).find(is_it)?;
        let joined = self.tokens.get(each + 1).is_some_and(|token| token.before == Break::None);
        (joined && self.n_held_by(clause) < 2).then(|| self.span(each, each + 2))
    }

    /// "The suction and discharge valves *of both pumps*", of which only one pair is held.
    pub(super) fn of_both(&self, clause: &Clause) -> Option<Span> {
        let is_it = |i: &usize| {
            let head = (i + 1..i + 4).find(|head| is_plural(self.text(*head)));
            self.text(*i) == "both"
                && matches!(self.text(i - 1), "from" | "of" | "off" | "on")
                && head.is_some_and(|head| {
                    matches!(noun(&[singular(self.text(head))]), Noun::Part | Noun::Unknown)
                })
        };
        let works = |verb: &Verb| verb.changes_the_appliance() || *verb == Verb::Lock;
        if !clause.means.iter().any(works) {
            return None;
        }
        let both = (clause.verb() + 2..self.end_of_sentence(clause)).find(is_it)?;
        let phrases = coin::phrases(self, clause);
        let direct = |phrase: &&Phrase| {
            phrase.lead == Lead::Direct && phrase.from > clause.verb() && phrase.head < both
        };
        let n = phrases.iter().filter(direct).count();
        let held = self.n_held_by(clause) >= 2 * n;
        (n > 1 && !held).then(|| self.span(both, both + 2))
    }

    /// "The lids off the control box *and the wiring centre*", of which only the first owner is known as one.
    pub(super) fn is_second_owner(&self, phrases: &[Phrase], phrase: &Phrase) -> bool {
        let is_joined = phrase.start.checked_sub(1).is_some_and(|and| self.text(and) == "and");
        let before = phrases.iter().rfind(|other| other.head < phrase.start);
        let held = self.held();
        let owns = |owner: &Phrase| owner.lead == phrase.lead && owns_one_of(self, &held, owner);
        let is_led = phrase.start < phrase.from;
        is_joined && is_led && noun(&phrase.stem()) == Noun::Unknown && before.is_some_and(owns)
    }
}
