//! Readings that are asked for although only one comes into question: what a rule would be satisfied with, from words that
//! say it weakly, and what is put somewhere that is no place of the appliance.

use super::clause::Clause;
use super::coin::{self, Lead, Noun, Phrase, noun};
use super::mention::{Mention, head_of, singular};
use super::reader::{Proposal, Reader};
use super::supply::is_machine;
use super::test_kind::LEAKS;
use super::{Choice, Doubt};
use crate::model::{Action, Family, Id, TestKind, ThingKind, Verb};
use crate::notation::{line, shown};

/// What else asks for leaks and for nothing else: where they are looked for, and how.
const OF_LEAKS: &[&str] = &[
    "bubble",
    "bubbles",
    "connection",
    "connections",
    "damp",
    "detection",
    "detector",
    "drop",
    "fluid",
    "joint",
    "joints",
    "seep",
    "seeping",
    "soap",
    "soapy",
    "sound",
    "soundness",
    "tightness",
    "union",
    "unions",
];

/// How verbs begin that put something down as often as into its place.
const PUTTING: &[&str] = &[
    "hang", "hung", "laid", "lay", "lift", "lower", "place", "placing", "pop", "push", "put", "set", "slid",
    "slip", "stand", "stick", "stood", "stuck",
];

/// Words that say that something comes into its place.
const INTO_PLACE: &[&str] = &[
    "again", "back", "home", "in", "into", "new", "on", "onto", "over", "place", "position", "together", "up",
];

/// Places of an appliance that its map does not name.
const PLACES: &[&str] =
    &["catch", "hinge", "hole", "hook", "lug", "peg", "pocket", "recess", "runner", "slot", "stud"];

impl Reader<'_> {
    /// Whether a reading of a clause is to be asked for.
    fn is_unsure(&self, clause: &Clause, proposal: &Proposal) -> bool {
        match proposal.action.verb {
            Verb::Release => self.lets_out_what_is_unsaid(clause, proposal),
            Verb::Test => self.tests_by_a_hint(clause, proposal),
            Verb::Start => {
                self.lights_by_itself(clause)
                    || self.runs_what_is_unknown(clause)
                    || self.switches_a_part(clause)
            }
            Verb::ShutDown => self.switches_a_part(clause),
            Verb::Fit => {
                self.puts_anywhere(clause, proposal)
                    || self.comes_back_at_once(clause, proposal)
                    || self.works_a_damper(clause, proposal)
            }
            Verb::MoveAside => self.works_a_damper(clause, proposal),
            Verb::Place => self.connects_a_cap(clause, proposal),
            Verb::Make => self.comes_back_at_once(clause, proposal) || self.connects_a_cap(clause, proposal),
            _ => false,
        }
    }

    /// "…, *drained*": neither what comes out is said, nor where.
    fn lets_out_what_is_unsaid(&self, clause: &Clause, proposal: &Proposal) -> bool {
        let is_named = |mention: &Mention| {
            mention.candidates.iter().any(|known| {
                matches!(known.kind, ThingKind::Circuit | ThingKind::Section)
                    || self.map.connection(&known.id).is_some_and(|port| port.port.is_some())
            })
        };
        let is_medium = |phrase: &Phrase| {
            let mut words = phrase.words.iter();
            words.any(|word| {
                coin::named_kind(std::slice::from_ref(word), false).is_some()
                    || matches!(&**word, "air" | "charge" | "pressure" | "steam" | "system" | "water")
            }) || coin::is_appliance(&phrase.stem())
        };
        let says = |word: &str| (clause.from..clause.to).any(|i| self.text(i) == word);
        proposal.action.through.is_none()
            && !self.mentions_in(clause).any(is_named)
            && !coin::phrases(self, clause).iter().any(is_medium)
            && !["air", "gas", "pressure", "water", "cool", "capacitors", "oil"].iter().any(|word| says(word))
    }

    /// "Check it while *warm*": a leak test of which no word speaks of leaks or of joints.
    fn tests_by_a_hint(&self, clause: &Clause, proposal: &Proposal) -> bool {
        let says = |words: &[&str]| {
            (clause.from..clause.to).any(|i| words.contains(&self.text(i)) && !self.is_told(clause, i))
        };
        match proposal.action.test {
            Some(TestKind::LeakCold | TestKind::LeakHot) => {
                !says(LEAKS)
                    && !says(OF_LEAKS)
                    && proposal.action.on.is_empty()
                    && proposal.action.at.is_none()
            }
            _ => false,
        }
    }

    /// "The fan starts and the burner *lights*": nobody lights it.
    fn lights_by_itself(&self, clause: &Clause) -> bool {
        let lights = matches!(self.text(clause.verb()), "alight" | "light" | "lights" | "lit");
        lights && clause.from < clause.verb() && !self.acts_on_a_thing(clause)
    }

    /// "Switch off *the fan*": whether that shuts the appliance down, nobody knows. A pump may be all there is.
    fn switches_a_part(&self, clause: &Clause) -> bool {
        let phrases = coin::phrases(self, clause);
        let is_object = |phrase: &&Phrase| phrase.from > clause.verb() && phrase.lead == Lead::Direct;
        let object = phrases.iter().find(is_object);
        object.is_some_and(|object| {
            let stem = object.stem();
            let is_whole = coin::is_appliance(&stem) || is_machine(&object.head_word());
            // "Switch off pump A and pump B", "stop the duty pump and start the standby pump": neither is all there is.
            let is_other =
                |phrase: &Phrase| phrase.head_word() == object.head_word() && phrase.name() != object.name();
            let mut of_line = self.clauses.iter().flat_map(|other| coin::phrases(self, other).to_vec());
            let is_one_of_several = object.label.is_some() || of_line.any(|phrase| is_other(&phrase));
            let may_be_all = (object.head_word() == "pump" || is_whole) && !is_one_of_several;
            noun(&stem) == Noun::Part && !may_be_all
        })
    }

    /// "*Run the spout* for two minutes": whether that is the appliance, nobody knows.
    fn runs_what_is_unknown(&self, clause: &Clause) -> bool {
        let runs = matches!(self.text(clause.verb()), "ran" | "run" | "runs" | "running");
        let phrases = coin::phrases(self, clause);
        let object = phrases.iter().find(|phrase| phrase.from > clause.verb() && phrase.lead == Lead::Direct);
        runs && object.is_some_and(|object| {
            noun(&object.stem()) == Noun::Unknown
                && !coin::is_appliance(&object.stem())
                && coin::named_kind(&object.stem(), true).is_none()
        })
    }

    /// "Close *the damper*": whether it swings like a door or shuts off the air, nobody knows.
    fn works_a_damper(&self, clause: &Clause, proposal: &Proposal) -> bool {
        let stem = self.text(clause.verb());
        if !["clos", "open", "shut"].iter().any(|begin| stem.starts_with(begin)) {
            return false;
        }
        let is_damper = |id: &Id| singular(head_of(self.map.name_of(id))) == "damper";
        !proposal.action.on.is_empty() && proposal.action.on.iter().all(is_damper)
    }

    /// "Take the cap off the line and *reconnect it*": a cap, or the line that it closes.
    fn connects_a_cap(&self, clause: &Clause, proposal: &Proposal) -> bool {
        let stem = self.text(clause.verb());
        let connects = stem.starts_with("connect") || stem.starts_with("reconnect");
        let is_cap =
            |id: &Id| matches!(head_of(self.map.name_of(id)), "blank" | "bung" | "cap" | "caps" | "cover");
        connects
            && self.object_pronoun(clause).is_some()
            && !proposal.action.on.is_empty()
            && proposal.action.on.iter().all(is_cap)
    }

    /// "Take out the screws and *put them* with the cover": whoever has just taken something apart puts it back at once only
    /// if the words say so. What is opened to let something out is closed again all the time.
    fn comes_back_at_once(&self, clause: &Clause, proposal: &Proposal) -> bool {
        let action = &proposal.action;
        let apart = |said: &Action| matches!(said.verb, Verb::Remove | Verb::Undo);
        let said_apart =
            |id: &Id| self.reading.actions.iter().any(|said| apart(said) && said.on.contains(id));
        let is_fixing = |id: &Id| {
            self.map.connection(id).is_none_or(|known| known.family == Family::Fixing && known.port.is_none())
        };
        let says_so = || {
            (clause.from..self.end_of_sentence(clause))
                .any(|i| matches!(self.text(i), "again" | "back" | "down" | "new" | "tight" | "up"))
                || self.text(clause.verb()).starts_with("re")
        };
        !action.on.is_empty()
            && action.torque.is_none()
            && action.on.iter().all(|id| is_fixing(id) && said_apart(id))
            && action.part.is_none()
            && !says_so()
    }

    /// "*Set* the head on the crate": whether it goes into its place, the words do not say.
    fn puts_anywhere(&self, clause: &Clause, proposal: &Proposal) -> bool {
        let stem = self.text(clause.verb());
        if !PUTTING.iter().any(|begin| stem.starts_with(begin)) {
            return false;
        }
        let end = self.end_of_sentence(clause);
        let phrases = coin::phrases(self, clause);
        let is_place = |phrase: &Phrase| {
            let known = self.mentions.iter().any(|mention| mention.to == phrase.head + 1);
            let head = phrase.head_word();
            known
                || PLACES.contains(&head.as_str())
                || matches!(&*head, "place" | "position")
                || matches!(
                    noun(&phrase.stem()),
                    Noun::Part | Noun::Side | Noun::Fixing | Noun::Joint | Noun::Isolator(_) | Noun::Port(_)
                )
        };
        let mut behind = phrases.iter().filter(|phrase| phrase.from > clause.verb() && phrase.from < end);
        let said =
            (clause.verb() + 1..end).any(|i| matches!(self.text(i), "again" | "back" | "home" | "together"));
        let is_new = proposal.action.part.is_some();
        !said
            && !is_new
            && match behind
                .find(|phrase| matches!(phrase.lead, Lead::After(_)) && !phrase.is_after(&["with"]))
            {
                Some(place) => !is_place(place),
                None => !(clause.verb() + 1..end).any(|i| INTO_PLACE.contains(&self.text(i))),
            }
    }

    /// Takes a reading of a clause, or asks for it. What follows in the line is read as if it were meant.
    pub(super) fn take_or_ask(&mut self, clause: &Clause, proposal: Proposal) {
        let (is_unsure, n_before) = (self.is_unsure(clause, &proposal), self.reading.actions.len());
        self.take(proposal);
        if let Some(action) = self.reading.actions.get(n_before).filter(|_| is_unsure).cloned() {
            self.reading.actions.truncate(n_before);
            let doubt = self.whether(clause, action);
            self.reading.doubts.push(doubt);
        }
    }

    /// The question whether an action is meant.
    fn whether(&self, clause: &Clause, action: Action) -> Doubt {
        let name = line(&shown(&action, self.map));
        let thing = action.on.first().cloned().unwrap_or_else(|| Id::new("none"));
        let last = clause.phrase.last().copied().unwrap_or(clause.verb());
        let span = self.span(clause.verb(), last + 1);
        let question = format!("Is this what \"{}\" says?", span.of(self.words));
        Doubt { span, question, choices: vec![Choice { thing, name, action, also: Vec::new() }] }
    }
}
