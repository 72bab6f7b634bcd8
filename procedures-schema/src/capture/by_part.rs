//! What is put back and named by a part of its name: "open the flow valve" where the flow isolation valve is shut.
//!
//! Of a new thing nothing can be put back, so whatever is off, open or shut here and may be meant is looked for by
//! fewer words than when something is taken apart. A word may also say its circuit: "the gas cock" is the service
//! cock of the gas.

use super::agreement::words_around;
use super::clause::Clause;
use super::coin::{self, Noun, Phrase, named_kind, noun, tells_apart};
use super::mention::{Candidate, Mention, is_plural, singular, words_of};
use super::reader::Reader;
use super::twins::is_another_twin;
use crate::lexicon::Amount;
use crate::model::{ApplianceMap, CircuitKind, Connection, Family, Id, ThingKind, Verb};
use crate::simulate::Whereabouts;

/// What shuts off or lets out goes by several names.
const WORKED: &[&str] = &["cock", "isolator", "stopcock", "tap", "valve"];

/// Words before a name that say that another one is meant.
const ANOTHER: &[&str] = &["another", "new", "other", "second", "spare", "third"];

impl Reader<'_> {
    /// The mentions with those of things that a clause puts back and names by a part of their names.
    pub(super) fn with_parts_of_names(&self, map: &ApplianceMap, mut mentions: Vec<Mention>) -> Vec<Mention> {
        for clause in self.clauses.iter().filter(|clause| !back_of(clause).is_empty()) {
            let phrases = coin::phrases(self, clause);
            for phrase in &*phrases {
                // "Push a hose on the drain cock and open the *cock*": the one that was just named.
                let was_named = |mention: &Mention| {
                    let before = mentions.iter().filter(|other| other.whole && other.to <= mention.from);
                    let is_of = |known: &Candidate| mention.candidates.iter().any(|one| one.id == known.id);
                    phrase.from == phrase.head && before.flat_map(|other| &other.candidates).any(is_of)
                };
                let is_named = |mention: &Mention| {
                    mention.to == phrase.head + 1
                        && !self.is_of_another_number(phrase, mention)
                        && mention.from <= phrase.from
                        && ((mention.whole && !only_lies_there(clause, mention))
                            || mention.candidates.iter().any(|known| self.is_off(clause, known))
                            || was_named(mention))
                };
                if mentions.iter().any(is_named) || self.is_another(phrase) {
                    continue;
                }
                let candidates = self.off_by_part(map, clause, phrase, &phrases);
                if candidates.is_empty() {
                    continue;
                }
                let (from, to) = (phrase.from, phrase.head + 1);
                mentions.retain(|mention| mention.to <= from || mention.from >= to);
                let plural = is_plural(self.text(phrase.head));
                mentions.push(Mention { from, to, whole: false, plural, candidates });
            }
        }
        mentions.sort_by_key(|mention| mention.from);
        mentions
    }

    /// "Put *the four screws* in" where "the screws" are two: those that are four are meant, whatever they are called.
    fn is_of_another_number(&self, phrase: &Phrase, mention: &Mention) -> bool {
        let Some(Amount::Exactly(n)) = phrase.amount.filter(|amount| *amount != Amount::Exactly(1)) else {
            return false;
        };
        let is_other =
            |known: &Candidate| self.map.connection(&known.id).is_some_and(|known| known.count != n);
        phrase.part.is_none() && mention.candidates.iter().all(is_other)
    }

    fn is_another(&self, phrase: &Phrase) -> bool {
        (phrase.start..=phrase.head).any(|i| ANOTHER.contains(&self.text(i)))
    }

    /// What is off here and has all the words of a phrase in its name.
    fn off_by_part(
        &self,
        map: &ApplianceMap,
        clause: &Clause,
        phrase: &Phrase,
        phrases: &[Phrase],
    ) -> Vec<Candidate> {
        let around = words_around(self, phrase, phrases);
        let mut found: Vec<Candidate> = Vec::new();
        for (kind, id, name, aliases) in map.things() {
            let candidate = Candidate { id: id.clone(), kind, agrees: true };
            let mut names = std::iter::once(name).chain(aliases.iter().map(String::as_str));
            if self.is_off(clause, &candidate)
                && names.any(|name| says_part_of(map, phrase, name, id))
                && !is_another_twin(map, id, &around)
            {
                found.push(candidate);
            }
        }
        found
    }

    /// Whether a thing is off, open or shut here, so that a verb of the clause can put it back.
    fn is_off(&self, clause: &Clause, candidate: &Candidate) -> bool {
        let id = &candidate.id;
        back_of(clause).into_iter().any(|verb| match (verb, candidate.kind) {
            (Verb::Restore, ThingKind::Isolator) => {
                self.here.isolators.get(id).is_some_and(|here| !here.open && here.by_hand)
            }
            (Verb::Make, ThingKind::Connection) => {
                self.here.connections.get(id).is_some_and(|here| here.open + here.slack > 0)
            }
            (Verb::Tighten, ThingKind::Connection) => {
                self.here.connections.get(id).is_some_and(|here| here.slack > 0)
            }
            (Verb::Fit, ThingKind::Component) => {
                matches!(self.here.components.get(id), Some(Whereabouts::Off | Whereabouts::Aside))
            }
            (Verb::TakeAway, ThingKind::Temporary) => self.here.temporary.get(id) == Some(&true),
            // "Go round *the gas union*" where there is a gas pipe union nut.
            (Verb::Test, ThingKind::Connection) => self
                .map
                .connection(id)
                .is_some_and(|known| known.family == Family::Joint && known.section.is_some()),
            _ => false,
        })
    }
}

/// "Refit the hose" where another hose is in place for the job: that one is not refitted.
fn only_lies_there(clause: &Clause, mention: &Mention) -> bool {
    !clause.means.contains(&Verb::TakeAway)
        && !clause.means.contains(&Verb::Place)
        && mention.candidates.iter().all(|known| known.kind == ThingKind::Temporary)
}

/// The verbs of a clause that put something back. What may as well take apart puts back only what is shut off.
fn back_of(clause: &Clause) -> Vec<&Verb> {
    let opens = clause.means.iter().any(|verb| matches!(verb, Verb::Undo | Verb::Remove | Verb::Place));
    let puts_back = |verb: &&Verb| match verb {
        Verb::Restore | Verb::Test => true,
        Verb::Make => !opens || !clause.means.contains(&Verb::Undo),
        Verb::Tighten | Verb::Fit | Verb::TakeAway => !opens,
        _ => false,
    };
    clause.means.iter().filter(puts_back).collect()
}

/// Whether all words of a phrase are in a name, or say the circuit of the thing; at least its head is in the name.
fn says_part_of(map: &ApplianceMap, phrase: &Phrase, name: &str, id: &Id) -> bool {
    let own = words_of(name);
    let stem = phrase.stem();
    // "The drain" is the drain point, "the gas pipe" is joined by its union; "the panel" is none of its screws.
    let names_joint = noun(&stem) == Noun::Joint;
    let is_worked = || {
        // "Torque the outlet to 23": of the joints that are open the one on that side.
        let side = |word: &String| tells_apart(word) && stem.len() == 1;
        let names_joint = names_joint || stem.last().is_some_and(side);
        let is_port =
            |known: &Connection| known.port.is_some() || (names_joint && known.family == Family::Joint);
        map.connection(id).is_some_and(is_port) || map.isolators.iter().any(|isolator| isolator.id == *id)
    };
    let is_head = |head: &String| {
        own.last() == Some(head)
            || (own.contains(head) && is_worked())
            || (WORKED.contains(&head.as_str())
                && own.last().is_some_and(|last| WORKED.contains(&last.as_str())))
    };
    let Some((head, before)) = stem.split_last() else { return false };
    let kind = circuit_around(map, id);
    let says_circuit = |word: &String| {
        let tells_apart = matches!(word.as_str(), "cold" | "hot" | "stop");
        let said = named_kind(std::slice::from_ref(word), true).filter(|_| !tells_apart);
        said.is_some() && said.as_ref() == kind
    };
    // "The vessel hose" is the hose of the vessel.
    let says_owner = |word: &String| {
        let joins = map.connection(id).map(|joint| joint.joins.as_slice()).unwrap_or_default();
        let is_open_end = || names_joint && map.connection(id).is_some() && joins.is_empty();
        let is_part = noun(std::slice::from_ref(word)) == Noun::Part;
        joins.iter().any(|part| map.name_of(part).split(' ').any(|own| own == word))
            || (is_part && is_open_end())
    };
    let says = |word: &String| own.contains(word) || says_circuit(word) || says_owner(word);
    // "Valve B" is no valve A.
    let is_labelled = phrase.label.as_ref().is_none_or(|label| own.contains(&label.to_lowercase()));
    is_labelled && is_head(head) && before.iter().map(|word| singular(word)).all(|word| says(&word))
}

/// The kind of the circuit that a thing shuts or carries.
fn circuit_around<'m>(map: &'m ApplianceMap, id: &Id) -> Option<&'m CircuitKind> {
    let isolator = map.isolators.iter().find(|isolator| isolator.id == *id).map(|known| &known.between.1);
    let section = isolator.or_else(|| map.connection(id)?.section.as_ref())?;
    map.sections().find(|(_, known)| known.id == *section).map(|(circuit, _)| &circuit.kind)
}
