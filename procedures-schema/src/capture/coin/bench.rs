//! Where new things are made: the line, the growing map, and what is known of the clause in hand.

use super::super::clause::Clause;
use super::super::mention::{Mention, Names, singular, words_of};
use super::super::reader::Reader;
use super::nouns::noun;
use super::phrase::{Lead, Phrase};
use super::unread_before::Rivalled;
use super::{Answer, Given, Made, Making, Meaning, Question};
use crate::model::{ApplianceMap, Id, IdSource, Span, ThingKind};
use std::sync::Arc;

/// The line and what has been made from it so far.
pub(super) struct Bench<'a> {
    pub(super) line: Reader<'a>,
    /// Its own copy only once something is made.
    pub(super) map: Arc<ApplianceMap>,
    pub(super) made: Vec<Made>,
    /// The things that got a further name by an answer.
    pub(super) renamed: Vec<Id>,
    /// The things of which the words leave a value for later.
    pub(super) left: Vec<Id>,
    pub(super) asked: Vec<Question>,
    /// The things of the map of which nobody knows whether they are meant.
    pub(super) rivalled: Vec<Rivalled>,
    /// Where the words name things of the growing map.
    pub(super) mentions: Vec<Mention>,
    /// The noun phrases of the clause in hand.
    pub(super) phrases: Vec<Phrase>,
    /// What the clause behind it takes off: "undo the screws and *take off the panel*".
    pub(super) next_off: Option<Phrase>,
    /// The name of that with its owner, if the clause says one: "the motor *of pump 2*".
    pub(super) next_name: Option<String>,
    /// The noun phrases of that clause.
    pub(super) next_phrases: Vec<Phrase>,
    /// The connection that was named last: "it".
    pub(super) last_connection: Option<Id>,
    /// The last new thing that the mentions take in.
    last_seen: Option<Id>,
    pub(super) given: Given<'a>,
    ids: &'a mut dyn IdSource,
}

/// The line with what it made and what it leaves open; nothing is read yet.
pub(super) struct Worked<'a> {
    pub(super) line: Reader<'a>,
    pub(super) rivalled: Vec<Rivalled>,
    pub(super) making: Making,
}

impl<'a> Bench<'a> {
    pub(super) fn new(
        line: Reader<'a>,
        map: Arc<ApplianceMap>,
        given: Given<'a>,
        ids: &'a mut dyn IdSource,
    ) -> Self {
        Self {
            map,
            mentions: line.mentions.clone(),
            line,
            made: Vec::new(),
            renamed: Vec::new(),
            left: Vec::new(),
            asked: Vec::new(),
            rivalled: Vec::new(),
            phrases: Vec::new(),
            next_off: None,
            next_name: None,
            next_phrases: Vec::new(),
            last_connection: None,
            last_seen: None,
            given,
            ids,
        }
    }

    /// Makes everything that the line names for the first time.
    pub(super) fn work(mut self) -> Worked<'a> {
        let clauses = self.line.clauses.clone();
        for (i, clause) in clauses.iter().enumerate() {
            self.make_for(clause, clauses.get(i + 1));
        }
        self.leave_for_later();
        let Self { line, map, made, renamed, left, asked, rivalled, .. } = self;
        Worked { line, rivalled, making: Making { map, made, renamed, left, asked, ..Making::default() } }
    }

    /// A new identity that the map does not hold.
    pub(super) fn new_id(&mut self, name: &str) -> Id {
        const TRIES: u32 = 8;
        let hint: String = name.chars().map(|c| if c.is_alphanumeric() { c } else { '-' }).collect();
        let mut id = self.ids.next_id(&hint);
        let mut n = 0;
        while self.is_taken(&id) {
            n += 1;
            // A source that always gives the same is helped out with a number.
            id = if n < TRIES { self.ids.next_id(&hint) } else { Id::new(&format!("{id}-{n}")) };
        }
        id
    }

    fn is_taken(&self, id: &Id) -> bool {
        self.map.things().any(|(_, known, ..)| known == id)
    }

    /// The map, to be changed.
    pub(super) fn map_mut(&mut self) -> &mut ApplianceMap {
        Arc::make_mut(&mut self.map)
    }

    /// What there is now, to go back to if the thing in hand cannot be made.
    pub(super) fn mark(&self) -> (Arc<ApplianceMap>, usize) {
        (self.map.clone(), self.made.len())
    }

    /// Takes away what was made since a mark.
    pub(super) fn back_to(&mut self, (map, n_made): (Arc<ApplianceMap>, usize)) {
        self.map = map;
        self.made.truncate(n_made);
    }

    /// Notes a new thing that no words of the line name.
    pub(super) fn note(&mut self, id: &Id, kind: ThingKind, name: &str) {
        self.made.push(Made { thing: id.clone(), kind, name: name.to_owned(), span: None });
    }

    /// Notes a new thing that a phrase names.
    pub(super) fn note_in_words(&mut self, id: &Id, kind: ThingKind, name: &str, phrase: &Phrase) {
        let span = Some(self.span_of(phrase));
        self.made.push(Made { thing: id.clone(), kind, name: name.to_owned(), span });
    }

    /// The words of a phrase.
    pub(super) fn span_of(&self, phrase: &Phrase) -> Span {
        self.line.span(phrase.from, phrase.head + 1)
    }

    /// Asks about what a phrase names.
    pub(super) fn ask(&mut self, phrase: &Phrase, question: String) {
        let span = self.span_of(phrase);
        self.asked.push(Question { span, question, choices: Vec::new(), thing: None });
    }

    /// The answer that was given about a phrase.
    pub(super) fn answer(&self, phrase: &Phrase) -> Option<&'a Answer> {
        let span = self.span_of(phrase);
        self.given.answers.iter().find(|answer| answer.span == span)
    }

    /// The circuit that an answer about a phrase gives.
    pub(super) fn circuit_given(&self, phrase: &Phrase) -> Option<crate::model::CircuitKind> {
        let span = self.span_of(phrase);
        let of_phrase = self.given.answers.iter().filter(|answer| answer.span == span);
        let mut kinds = of_phrase.filter_map(|answer| match &answer.means {
            Meaning::Circuit(kind) => Some(kind.clone()),
            Meaning::Known { .. } | Meaning::New { .. } => None,
        });
        kinds.next()
    }

    /// Finds the mentions again after something was made.
    pub(super) fn look_again(&mut self) {
        let last = self.made.last().map(|made| &made.thing).or(self.renamed.last()).cloned();
        if last == self.last_seen {
            return;
        }
        self.last_seen = last;
        let line = &self.line;
        let is_verb = |i: usize| line.clauses.iter().any(|clause| clause.verb() == i);
        let found = Names::of(&self.map, &line.tokens).find(&line.tokens, is_verb);
        self.mentions = line.with_parts_of_names(&self.map, found);
    }

    /// The first phrase behind another that one of these words leads to: "of the pump", up to the next object.
    pub(super) fn behind(&self, phrase: &Phrase, leads: &[&str]) -> Option<Phrase> {
        // "The upper plug and the lower plug *of the board*" are both of it.
        // "The flow cock, the return cock and *the cock of the loop*": only the last is.
        let is_bare =
            |other: &Phrase| other.words.len() == 1 && other.label.is_none() && phrase.words.len() > 1;
        let is_listed = |other: &Phrase| {
            other.lead == phrase.lead && other.head_word() == phrase.head_word() && !is_bare(other)
        };
        let after = self.phrases.iter().skip_while(|other| other.from <= phrase.from);
        let after = after.skip_while(|other| is_listed(other));
        // "A lock on isolator 1 *and on isolator 2*": neither is on the other.
        let is_alike = |other: &Phrase| {
            let before = |back: usize| other.start.checked_sub(back).map_or("", |i| self.line.text(i));
            before(2) == "and" && noun(&other.stem()) == noun(&phrase.stem())
        };
        let mut own = after.take_while(|other| matches!(other.lead, Lead::After(_)) && !is_alike(other));
        own.find(|other| other.is_after(leads)).cloned()
    }

    /// The known things of these kinds that a phrase names, word for word or by the end of their names.
    pub(super) fn known(&self, phrase: &Phrase, kinds: &[ThingKind]) -> Vec<Id> {
        let named = self.mentions.iter().filter(|m| m.to == phrase.head + 1 && m.from <= phrase.from);
        let of_kind = named.flat_map(|mention| &mention.candidates).filter(|c| kinds.contains(&c.kind));
        let mut known: Vec<Id> = of_kind.map(|candidate| candidate.id.clone()).collect();
        if phrase.head + 1 - phrase.from < phrase.words.len() {
            // Of what is named by more words than stand here, the last word alone names nothing else.
            let says = |id: &Id, word: &str| words_of(self.map.name_of(id)).contains(&singular(word));
            known.retain(|id| phrase.words.iter().all(|word| says(id, word)));
        }
        if known.is_empty() { self.known_by_circuit(phrase, kinds) } else { known }
    }

    /// "The heating pump valves" are the pump valves, if those shut the heating.
    fn known_by_circuit(&self, phrase: &Phrase, kinds: &[ThingKind]) -> Vec<Id> {
        let within = |m: &&Mention| m.whole && m.to == phrase.head + 1 && m.from > phrase.from;
        let Some(mention) = self.mentions.iter().find(within) else { return Vec::new() };
        let n_more = mention.from - phrase.from;
        let more: Vec<String> = phrase.words.iter().take(n_more).cloned().collect();
        let Some(kind) = super::circuits::named_kind(&more, true) else { return Vec::new() };
        let of_kind = mention.candidates.iter().filter(|c| kinds.contains(&c.kind));
        of_kind.filter(|c| self.kind_around(&c.id) == Some(&kind)).map(|c| c.id.clone()).collect()
    }

    /// The kind of the circuit that an isolator shuts or a connection carries.
    fn kind_around(&self, id: &Id) -> Option<&crate::model::CircuitKind> {
        let isolator = self.map.isolators.iter().find(|isolator| isolator.id == *id);
        let section = match isolator {
            Some(isolator) => &isolator.between.1,
            None => self.map.connection(id)?.section.as_ref()?,
        };
        self.map.sections().find(|(_, known)| known.id == *section).map(|(circuit, _)| &circuit.kind)
    }

    /// The connection that a phrase names, if it names only one.
    pub(super) fn connection_in(&self, phrase: &Phrase) -> Option<Id> {
        match self.known(phrase, &[ThingKind::Connection]).as_slice() {
            [only] => Some(only.clone()),
            _ => None,
        }
    }

    /// Whether the words of a clause name a circuit in words other than those of a phrase.
    pub(super) fn words_of(&self, clause: &Clause, besides: &Phrase) -> Vec<String> {
        let own = besides.from..=besides.head;
        (clause.verb()..clause.to)
            .filter(|i| !own.contains(i))
            .map(|i| self.line.text(i).to_owned())
            .collect()
    }
}
