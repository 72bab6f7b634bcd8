//! "The cover" where the map has one, and an order before of which nothing was read speaks of another: whether the one that
//! is known is meant, is asked.

use super::super::clause::Clause;
use super::super::mention::{singular, words_of};
use super::super::{Choice, Doubt, LineReading};
use super::bench::Bench;
use super::phrase::{Lead, Phrase};
use super::phrase_words::CONDITIONS;
use super::told_apart::{how_called, may_name};
use crate::lexicon::{Break, tokens};
use crate::model::{Action, ApplianceMap, Id, Span, Step, ThingKind, Verb};

/// A thing of the map that may not be the one that is meant.
pub(super) struct Rivalled {
    /// The words that name it.
    span: Span,
    thing: Id,
    /// What is asked.
    question: String,
}

impl Bench<'_> {
    /// Notes what a clause acts on by a bare noun, if an order of which nothing was read has named another of that noun since
    /// the one that is known was last worked on.
    pub(super) fn notice_rivals(&mut self, clause: &Clause) {
        if !clause.means.iter().any(Verb::changes_the_appliance) {
            return;
        }
        let is_it = |phrase: &&Phrase| phrase.lead == Lead::Direct && self.is_bare(phrase);
        let acted_on: Vec<Phrase> = self.phrases.iter().filter(is_it).cloned().collect();
        for phrase in &acted_on {
            if let Some(rivalled) = self.done_elsewhere(clause, phrase) {
                self.rivalled.push(rivalled);
                continue;
            }
            let Some(thing) = self.known_by_more_words(phrase) else { continue };
            let Some(other) = self.other_unread(phrase, &thing) else { continue };
            let (name, full) = (phrase.name(), self.map.name_of(&thing));
            let is_place = other.contains(" the ");
            let other = if is_place { format!("{name} {other}") } else { format!("{other} {name}") };
            let question =
                format!("Is the {name} the {full}? Nothing is read of the {other} in a step before");
            self.rivalled.push(Rivalled { span: self.span_of(phrase), thing, question });
        }
    }

    /// "Change the tube *here as well*": the one that is known has been changed already, so another may be meant.
    fn done_elsewhere(&self, clause: &Clause, phrase: &Phrase) -> Option<Rivalled> {
        let end = self.line.end_of_sentence(clause);
        let may_say = |i: usize| matches!(self.line.text(i), "here" | "other" | "there" | "too" | "well");
        if !(phrase.head + 1..end).any(may_say) {
            return None;
        }
        let kinds = [ThingKind::Component, ThingKind::Connection, ThingKind::Isolator];
        let known = self.known(phrase, &kinds);
        let [thing] = known.as_slice() else { return None };
        let breaks = |i: &usize| {
            let is_broken = self.line.tokens.get(*i).is_some_and(|token| token.before != Break::None);
            let is_condition = CONDITIONS.contains(&self.line.text(*i));
            let is_as_well = (self.line.text(*i), self.line.text(i + 1)) == ("as", "well");
            is_broken || matches!(self.line.text(*i), "and" | "then") || (is_condition && !is_as_well)
        };
        let part = (phrase.head + 1..end).find(breaks).unwrap_or(end);
        let is_possible = clause.means.iter().any(|verb| self.line.here.is_possible(verb, thing));
        // "Here" and "there" end a part, "as there is pressure" does not; what was put back is undone there once more.
        let says = |i: usize| match (self.line.text(i), self.line.text(i + 1)) {
            ("here" | "there", next) => i + 1 == part && !is_possible || matches!(next, "as" | "too"),
            ("too", _) => i + 1 == part,
            ("as", "well") => i + 2 == part,
            _ => false,
        };
        let place = (phrase.head + 1..part).find(|i| says(*i));
        let is_same = |action: &Action| clause.means.contains(&action.verb) && action.on.contains(thing);
        let is_done = self.given.before.iter().any(|step| step.actions.iter().any(is_same));
        let other = (phrase.head + 3..part).find(|i| self.is_off_the_other(*i));
        let said = match (place.filter(|_| is_done), other) {
            (_, Some(_)) => "the other one",
            (Some(place), None) if self.line.text(place) == "as" => "as well",
            (Some(place), None) => self.line.text(place),
            (None, None) => return None,
        };
        let (name, full) = (phrase.name(), self.map.name_of(thing));
        let question = if name == full {
            format!("Is it the same {name}? \"{said}\" may mean another")
        } else {
            format!("Is the {name} the {full}? \"{said}\" may mean another")
        };
        Some(Rivalled { span: self.span_of(phrase), thing: thing.clone(), question })
    }

    /// "Pull the burner out *of the other one*."
    fn is_off_the_other(&self, at: usize) -> bool {
        let [lead, article, other, one] = [at - 2, at - 1, at, at + 1].map(|i| self.line.text(i));
        (article, other, one) == ("the", "other", "one")
            && matches!(lead, "at" | "from" | "in" | "of" | "off" | "on")
    }

    /// The one thing that a bare noun may name, if its own name says more and the line has not said that before.
    fn known_by_more_words(&self, phrase: &Phrase) -> Option<Id> {
        let kinds = [ThingKind::Component, ThingKind::Connection, ThingKind::Isolator];
        let known = self.known(phrase, &kinds);
        let [only] = known.as_slice() else { return None };
        let says_more = words_of(self.map.name_of(only)).len() > phrase.words.len();
        let of_it = |id: &Id| {
            id == only || self.map.connection(id).is_some_and(|connection| connection.joins.contains(only))
        };
        let is_said_before = || {
            let mut before = self.mentions.iter().filter(|mention| mention.to <= phrase.start);
            before.any(|mention| mention.candidates.iter().any(|candidate| of_it(&candidate.id)))
        };
        let is_of_step_before = || self.line.here.changed_before().any(of_it);
        (says_more && !is_said_before() && !is_of_step_before()).then(|| only.clone())
    }

    /// How a step of which nothing was read calls another of a noun.
    fn other_unread(&self, phrase: &Phrase, thing: &Id) -> Option<String> {
        let (head, stem) = (phrase.head_word(), phrase.stem());
        let own = words_of(self.map.name_of(thing));
        let works_on_it = |step: &Step| step.actions.iter().any(|action| action.on.contains(thing));
        // "Do *the same* with the sensor of the lower pocket."
        let repeats = |step: &Step| {
            let mut words = tokens(&step.words).into_iter();
            words.any(|word| matches!(&*word.text, "ditto" | "likewise" | "same"))
        };
        let is_unread = |step: &Step| {
            step.actions.is_empty()
                && step.declined.is_empty()
                && step.messages.is_empty()
                && may_name(&step.words, &head)
                && (repeats(step)
                    || self
                        .line
                        .lexicon
                        .phrases(&step.words)
                        .iter()
                        .any(|said| !said.unsaid && said.means.iter().any(Verb::changes_the_appliance)))
        };
        let since = self.given.before.iter().rev().take_while(|step| !works_on_it(step));
        let unread = since.filter(|step| is_unread(step));
        let differs = |called: &String| {
            let words = tokens(called);
            let mut telling =
                words.iter().filter(|word| !matches!(&*word.text, "at" | "in" | "of" | "on" | "the"));
            telling.any(|word| !own.contains(&singular(&word.text)))
        };
        unread.flat_map(|step| how_called(&step.words, &stem)).find(differs)
    }
}

/// A reading that asks about what is read of things that have a rival, and of what holds them; what else an action is done
/// to stays.
pub(super) fn doubting(reading: &mut LineReading, map: &ApplianceMap, rivalled: &[Rivalled]) {
    for Rivalled { span, thing, question } in rivalled {
        let is_of_it =
            |id: &Id| id == thing || map.connection(id).is_some_and(|holding| holding.joins.contains(thing));
        let name = map.name_of(thing);
        let (mut sure, mut asked) = (Vec::with_capacity(reading.actions.len()), Vec::new());
        for action in std::mem::take(&mut reading.actions) {
            let (of_it, others): (Vec<Id>, Vec<Id>) = action.on.iter().cloned().partition(is_of_it);
            if of_it.is_empty() {
                sure.push(action);
                continue;
            }
            if !others.is_empty() {
                sure.push(Action { on: others, ..action.clone() });
            }
            asked.push(Action { on: of_it, ..action });
        }
        reading.actions = sure;
        let mut asked = asked.into_iter();
        if let Some(action) = asked.next() {
            let choice =
                Choice { thing: thing.clone(), name: name.to_owned(), action, also: asked.collect() };
            reading.doubts.push(Doubt { span: *span, question: question.clone(), choices: vec![choice] });
        }
    }
}
