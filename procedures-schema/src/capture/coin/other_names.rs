//! Things that people call by two names: "the circulator" may be the pump of the map. Which, somebody has to say;
//! from then on it is a further name of the thing.

use super::super::clause::Clause;
use super::bench::Bench;
use super::phrase::{Lead, Phrase};
use super::{Meaning, Question};
use crate::lexicon::tokens;
use crate::model::{Component, ThingKind};

/// Nouns that may name one thing.
const ALIKE: &[&[&str]] = &[
    &["blower", "fan"],
    &["board", "pcb"],
    &["case", "casing"],
    &["circulator", "pump"],
    &["injector", "jet", "nozzle"],
    &["probe", "sensor", "thermistor"],
    &["siphon", "trap"],
];

impl Bench<'_> {
    /// Whether something that a clause names may be a thing of the map with another name, and nobody has said yet.
    /// Then nothing is made of the clause. An answer that names the thing gives it the further name.
    pub(super) fn may_have_another_name(&mut self, clause: &Clause) -> bool {
        let mut is_open = false;
        for phrase in self.phrases.clone() {
            let choices = self.called_otherwise(clause, &phrase);
            if choices.is_empty() {
                continue;
            }
            let name = phrase.name();
            match self.answer(&phrase).map(|answer| answer.means.clone()) {
                Some(Meaning::Known { thing, .. }) => {
                    if let Some(part) = self.map_mut().components.iter_mut().find(|part| part.id == thing) {
                        part.aliases.push(name);
                        self.renamed.push(thing);
                        self.look_again();
                    }
                }
                Some(_) => {}
                None => {
                    is_open = true;
                    let question = format!("Which one is \"{name}\"?");
                    let choices = choices.into_iter().chain([Meaning::New { name }]).collect();
                    self.asked.push(Question { span: self.span_of(&phrase), question, choices, thing: None });
                }
            }
        }
        is_open
    }

    /// The things that a phrase may call by another name: parts to which the clause can be done here, or that are
    /// told of what the clause is about.
    fn called_otherwise(&self, clause: &Clause, phrase: &Phrase) -> Vec<Meaning> {
        let kinds = [ThingKind::Component, ThingKind::Connection, ThingKind::Isolator];
        let is_own = phrase.lead == Lead::Direct;
        if !(is_own || phrase.is_after(&["of"])) || phrase.plural() || !self.known(phrase, &kinds).is_empty()
        {
            return Vec::new();
        }
        let can_be_done = |part: &Component| {
            !is_own || clause.means.iter().any(|verb| self.line.here.is_possible(verb, &part.id))
        };
        let fits = |part: &&Component| is_called_alike(&phrase.stem(), part) && can_be_done(part);
        let parts = self.map.components.iter().filter(fits);
        let is_new = |part: &&Component| self.made.iter().any(|made| made.thing == part.id);
        let known = parts.filter(|part| !is_new(part));
        known.map(|part| Meaning::Known { thing: part.id.clone(), name: part.name.clone() }).collect()
    }
}

/// Whether the head of a name is another word for that of a part, and the words before it do not tell them apart.
fn is_called_alike(stem: &[String], part: &Component) -> bool {
    let own: Vec<String> = tokens(&part.name).into_iter().map(|token| token.text.into_owned()).collect();
    let Some(((head, before), (own_head, own_before))) = stem.split_last().zip(own.split_last()) else {
        return false;
    };
    let is_pair = |words: &&&[&str]| words.contains(&head.as_str()) && words.contains(&own_head.as_str());
    let fewer = |one: &[String], other: &[String]| one.iter().all(|word| other.contains(word));
    head != own_head
        && ALIKE.iter().find(is_pair).is_some()
        && (fewer(before, own_before) || fewer(own_before, before))
}
