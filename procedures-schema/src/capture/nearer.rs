//! What stands nearer to a pronoun than all that the line has said: "screw the cartridge out and throw *it* away", "held
//! by six screws; undo *these*".

use super::agreement::Said;
use super::clause::Clause;
use super::coin::{Lead, Noun, PREPOSITIONS, Phrase, noun, phrases, phrases_between};
use super::mention::{Candidate, Mention, is_plural};
use super::reader::Reader;
use crate::lexicon::Break;
use crate::model::{Id, ThingKind, Verb};

/// How words begin that order something which is no action, before one that is.
const MARKING: &[&str] = &["hold", "label", "mark", "number", "steady", "support"];

impl Reader<'_> {
    /// Whether a clause before this one, of which nothing could be read, names something that nobody knows: the pronoun
    /// is more likely to mean that than anything before it.
    pub(super) fn is_nearer_unknown(&self, clause: &Clause) -> bool {
        let from = self.end_of_said();
        if self.begins_with_unknown(clause) || self.follows_unread_stretch(clause) {
            return true;
        }
        let unread = self.clauses.iter().filter(|other| (from..clause.verb()).contains(&other.verb()));
        unread.into_iter().any(|other| {
            let own = |phrase: &Phrase| phrase.from > other.verb() && phrase.head < clause.verb();
            phrases(self, other).iter().any(|phrase| own(phrase) && self.is_unknown_object(phrase))
        })
    }

    /// "Take the cap off, *pull the mesh*, wash it": whether the stretch before that of a clause says something of a thing that
    /// nobody knows, by a word that is no verb.
    fn follows_unread_stretch(&self, clause: &Clause) -> bool {
        let breaks = |i: &usize| self.tokens.get(*i).is_some_and(|token| token.before == Break::Comma);
        let mut commas = (1..=clause.verb()).rev().filter(breaks);
        let (Some(end), Some(from)) = (commas.next(), commas.next()) else { return false };
        let is_article = matches!(self.text(from + 1), "a" | "an" | "its" | "the" | "their" | "your");
        let is_read = self.clauses.iter().any(|other| (from..end).contains(&other.verb()));
        let is_word = self.text(from).chars().all(char::is_alphabetic)
            && !PREPOSITIONS.contains(&self.text(from))
            && !matches!(self.text(from), "and" | "but" | "then");
        let named = phrases_between(self, from + 1, end);
        is_article
            && is_word
            && !is_read
            && from >= self.end_of_said()
            && matches!(named.as_slice(), [only] if only.head + 1 == end && self.is_unknown_object(only))
    }

    /// "Spread the lugs of the guard and lift *it* off": whether the sentence of a clause begins with a verb that nobody
    /// knows, said of something that nobody knows.
    fn begins_with_unknown(&self, clause: &Clause) -> bool {
        let from = self.beginning_of_sentence(clause);
        let word = self.text(from);
        let is_verb = ["a", "an", "both", "each", "it", "its", "the", "them", "these", "this"]
            .iter()
            .all(|no| *no != word)
            && word.chars().all(char::is_alphabetic)
            && !PREPOSITIONS.contains(&word)
            && !word.ends_with("ing")
            && self.mentions.iter().all(|mention| mention.from != from)
            && self.clauses.iter().all(|other| !(from..clause.verb()).contains(&other.verb()));
        let first = phrases_between(self, from + 1, clause.verb());
        is_verb
            && from < clause.verb()
            && from >= self.end_of_said()
            && first.first().is_some_and(|first| self.is_unknown_object(first))
    }

    /// "Reconnect the tube and tighten *its* nut": whether a connection belongs to something else than what the line was
    /// about last.
    pub(super) fn is_of_another_than_said(&self, mention: &Mention, id: &Id) -> bool {
        let Some(known) = self.map.connection(id) else { return false };
        let is_own = (mention.from.saturating_sub(3)..mention.from).any(|i| self.text(i) == "its");
        let is_one_of_many = !is_plural(self.text(mention.to - 1)) && known.count > 1;
        let is_owner = |last: &Candidate| match last.kind {
            ThingKind::Component => known.joins.is_empty() || known.joins.contains(&last.id),
            ThingKind::Connection => {
                let own = self.map.connection(&last.id).map(|own| own.joins.as_slice()).unwrap_or_default();
                last.id == *id
                    || own.iter().any(|part| known.joins.contains(part))
                    || (known.joins.is_empty() && !is_one_of_many)
            }
            _ => true,
        };
        is_own && !self.last.is_empty() && !self.last.iter().any(is_owner)
    }

    /// "Held by six screws; undo *these*": what the nearest words in the plural name behind all that the line has said; none
    /// where they name nothing, and nothing at all where there are no such words.
    pub(super) fn plural_before(&self, clause: &Clause) -> Option<Vec<Id>> {
        self.pronoun(clause).filter(|at| matches!(self.text(*at), "them" | "these" | "those"))?;
        let phrases = phrases_between(self, self.end_of_said().min(clause.verb()), clause.verb());
        let is_thing = |phrase: &&Phrase| phrase.plural() && noun(&phrase.stem()).is_worked_on();
        let nearest = phrases.iter().rfind(is_thing)?;
        let said = Said::of_phrase(self, clause, nearest, &phrases, &self.mentions);
        let named = self.mentions.iter().filter(|mention| mention.to == nearest.head + 1);
        let ids = named.flat_map(|mention| &mention.candidates).map(|candidate| candidate.id.clone());
        Some(said.agreeing(self.map, ids.collect()))
    }

    /// "Mark *the sensing tubes* and pull them off": what stands behind a word of which nothing is read, and is what the
    /// pronoun of the next clause means. With what it is of, as objects of that clause.
    pub(super) fn marked_before(&self, clause: &Clause) -> Vec<Phrase> {
        let Some(it) = self.object_pronoun(clause) else { return Vec::new() };
        let from = self.beginning_of_sentence(clause);
        let is_read = self.clauses.iter().any(|other| (from + 1..clause.verb()).contains(&other.verb()));
        let verb = self.text(from);
        let is_order = MARKING.iter().any(|begin| verb.starts_with(begin));
        if is_read || !is_order {
            return Vec::new();
        }
        let mut phrases = phrases_between(self, from + 1, clause.verb());
        let several = !self.is_pronoun(it);
        let is_meant =
            phrases.first().is_some_and(|first| first.lead == Lead::Direct && first.plural() == several);
        if !is_meant {
            phrases.clear();
        }
        phrases
    }

    /// Whether the verb of a clause acts on something that nobody knows.
    pub(super) fn has_unknown_object(&self, clause: &Clause) -> bool {
        let own = |phrase: &&Phrase| phrase.from > clause.verb();
        phrases(self, clause).iter().find(own).is_some_and(|first| self.is_unknown_object(first))
    }

    fn is_unknown_object(&self, phrase: &Phrase) -> bool {
        let is_named = self.mentions.iter().any(|mention| mention.to == phrase.head + 1);
        let is_thing =
            !matches!(noun(&phrase.stem()), Noun::Nothing | Noun::Seal | Noun::Side | Noun::Setting);
        phrase.lead == Lead::Direct && is_thing && !is_named
    }

    /// "*The tube* of the switch crosses in front of *the vessel*, so ease it off": whether a mention stands behind a
    /// preposition in a sentence that begins with something else and of which nothing is read before it.
    pub(super) fn only_says_where(&self, mention: &Mention) -> bool {
        let begins = |i: &usize| self.tokens.get(*i).is_some_and(|token| token.before == Break::Sentence);
        let from = (0..=mention.from).rev().find(begins).unwrap_or(0);
        let names_subject = matches!(self.text(from), "a" | "an" | "both" | "its" | "the" | "this" | "your");
        let is_read = self.clauses.iter().any(|clause| (from..mention.from).contains(&clause.verb()));
        names_subject && mention.from > from + 1 && !is_read && self.preposition(mention).is_some()
    }

    /// "*Supporting the vessel*, take out the screws of its bracket and draw it out": what "it" may mean as well as the
    /// part that the screws hold.
    pub(super) fn rivals(&self, clause: &Clause, verb: &Verb, meant: &[Id]) -> Vec<Id> {
        let [one] = meant else { return Vec::new() };
        let is_about = self.last.iter().any(|last| last.id == *one);
        let at = self.object_pronoun(clause).filter(|at| matches!(self.text(*at), "it" | "her"));
        if is_about || at.is_none() || self.last.is_empty() {
            return Vec::new();
        }
        let from = self.beginning_of_sentence(clause);
        let rival = |mention: &Mention| {
            let [only] = mention.candidates.as_slice() else { return None };
            let is_part = only.kind == ThingKind::Component && only.id != *one;
            let is_object =
                mention.from >= from && mention.to <= clause.verb() && self.preposition(mention).is_none();
            (is_part && is_object && self.here.is_possible(verb, &only.id)).then(|| only.id.clone())
        };
        let mut rivals: Vec<Id> = self.mentions.iter().filter_map(rival).collect();
        rivals.dedup();
        rivals
    }

    /// The first token of the sentence in which the verb of a clause stands.
    pub(super) fn beginning_of_sentence(&self, clause: &Clause) -> usize {
        let begins = |i: &usize| self.tokens.get(*i).is_some_and(|token| token.before == Break::Sentence);
        (0..=clause.verb()).rev().find(begins).unwrap_or(0)
    }
}
