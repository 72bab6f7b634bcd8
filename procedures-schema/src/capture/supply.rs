//! What is switched off or on where no isolator is named: "turn off the gas", "switch off the boiler", "switch
//! off the light".

use super::clause::Clause;
use super::coin::{Lead, Noun, Phrase, is_appliance, is_code, noun, phrases};
use super::mention::Candidate;
use super::reader::{Proposal, Reader};
use super::refer::nearest;
use crate::model::{Action, Circuit, CircuitKind, Handle, Id, Isolator, ThingKind, Verb};

/// What words say that comes in from outside, and the kinds of circuit that carry it, the likelier first.
const SUPPLIES: &[(&[&str], &[CircuitKind])] = &[
    (&["gas"], &[CircuitKind::FuelGas]),
    (&["water"], &[CircuitKind::DomesticWater, CircuitKind::NetworkPrimary]),
    (&["electricity", "mains", "power"], &[CircuitKind::MainsElectricity]),
    (&["oil"], &[CircuitKind::Oil]),
    (&["steam"], &[CircuitKind::Steam]),
    (&["air"], &[CircuitKind::CompressedAir]),
];

/// What is an appliance by itself, although another may have it as a part.
const MACHINES: &[&str] = &[
    "burner",
    "chiller",
    "compressor",
    "conditioner",
    "controller",
    "cooker",
    "dishwasher",
    "dryer",
    "freezer",
    "fridge",
    "heater",
    "oven",
    "softener",
    "stove",
    "washer",
];

/// What is switched that is neither the appliance nor a part of it.
const OTHERS: &[&str] = &["bulb", "lamp", "phone", "radio", "siren"];

/// Whether a word names a whole machine.
pub(super) fn is_machine(head: &str) -> bool {
    MACHINES.contains(&head)
}

impl Reader<'_> {
    /// "Remove the notice and switch on": the only switch, plug or fuse that is off.
    pub(super) fn add_switched_off(&self, clause: &Clause, proposal: &mut Proposal) {
        let stem = self.text(clause.verb());
        let switches = ["power", "switch", "turn"].iter().any(|begin| stem.starts_with(begin));
        let powers = stem.starts_with("power");
        let on = clause.phrase.iter().any(|i| self.text(*i) == "on" || (powers && self.text(*i) == "up"));
        if !switches || !on || !self.is_of_appliance(clause) {
            return;
        }
        // Valves are turned on as well; nobody switches them.
        let turns = stem.starts_with("turn");
        let may_be_so_called = |isolator: &&Isolator| {
            if turns && isolator.handle == Handle::Valve {
                return true;
            }
            let mut sections = self.map.sections();
            let circuit = sections.find(|(_, section)| section.id == isolator.between.1);
            circuit.is_some_and(|(circuit, _)| super::section::is_electrical(&circuit.kind))
        };
        let off = self.map.isolators.iter().filter(may_be_so_called).map(|isolator| isolator.id.clone());
        let off: Vec<Id> = off.filter(|id| self.here.is_possible(&Verb::Restore, id)).collect();
        match off.len() {
            0 => {}
            1 => proposal.action.on = off,
            // "Switch *the heaters* on", each at its own switch.
            _ if self.object(clause).is_some_and(|it| it.plural() && is_machine(&it.head_word())) => {
                proposal.action.on = off;
            }
            // "Switch back on": which of them, the words do not say.
            _ => {
                let last = clause.phrase.last().map_or(clause.verb(), |last| *last);
                proposal.doubtful = Some((clause.verb(), last + 1));
                proposal.choices = off;
            }
        }
    }

    /// "Unplug the boiler", "plug the boiler in": the only plug by which the appliance is fed.
    fn add_plug_of_appliance(&self, clause: &Clause, proposal: &mut Proposal) {
        let stem = self.text(clause.verb());
        let plugs = stem.starts_with("unplug") || stem.starts_with("plug");
        let Some(object) = self.object(clause).filter(|object| plugs && is_appliance(&object.stem())) else {
            return;
        };
        let verb = proposal.action.verb.clone();
        let plugs = self.map.isolators.iter().filter(|isolator| isolator.handle == Handle::Plug);
        let possible: Vec<Id> =
            plugs.map(|plug| plug.id.clone()).filter(|id| self.here.is_possible(&verb, id)).collect();
        if possible.len() == 1 {
            proposal.action.on = possible;
            proposal.said_by.extend(object.from..=object.head);
        }
    }

    /// "Turn off the gas": the isolators by hand through which a circuit is fed, if the verb acts on a circuit.
    pub(super) fn add_supply(&self, clause: &Clause, proposal: &mut Proposal) {
        self.add_plug_of_appliance(clause, proposal);
        // "Plug the power lead back in" closes no switch.
        let is_open = proposal.action.on.is_empty() && !self.text(clause.verb()).starts_with("plug");
        let Some((circuits, tokens)) = self.supply_meant(clause).filter(|_| is_open) else { return };
        let verb = proposal.action.verb.clone();
        let possible = self.feeding(&circuits, &verb);
        match possible.as_slice() {
            [] => return,
            [only] => {
                proposal.action.on.push(only.clone());
                self.add_further_supplies(clause, proposal);
            }
            _ => {
                proposal.doubtful = tokens.first().zip(tokens.last()).map(|(from, last)| (*from, last + 1));
                proposal.choices = possible;
            }
        }
        proposal.said_by.extend(tokens);
    }

    /// The circuits that a verb acts on, and the tokens that name them.
    fn supply_meant(&self, clause: &Clause) -> Option<(Vec<&Circuit>, Vec<usize>)> {
        let is_source =
            |candidate: &Candidate| matches!(candidate.kind, ThingKind::Circuit | ThingKind::Section);
        let direct = self.mentions_in(clause).find(|mention| {
            mention.from > clause.verb()
                && self.preposition(mention).is_none()
                && mention.candidates.iter().all(is_source)
        });
        if let Some(mention) = direct {
            let is_named = |circuit: &&Circuit| {
                let mut named = mention.candidates.iter();
                named.any(|c| c.id == circuit.id || circuit.sections.iter().any(|s| s.id == c.id))
            };
            let named = self.map.circuits.iter().filter(is_named).collect();
            return Some((named, self.tokens_of(mention)));
        }
        let object = self.object(clause)?;
        Some((self.carrying(&object)?, vec![object.head]))
    }

    /// The circuits that carry what a phrase says comes in from outside.
    fn carrying(&self, phrase: &Phrase) -> Option<Vec<&Circuit>> {
        let [word] = phrase.words.as_slice() else { return None };
        let (_, kinds) = SUPPLIES.iter().find(|(words, _)| words.contains(&word.as_str()))?;
        let of_kind = |kind: &CircuitKind| -> Vec<&Circuit> {
            self.map.circuits.iter().filter(|circuit| circuit.kind == *kind).collect()
        };
        kinds.iter().map(of_kind).find(|found| !found.is_empty())
    }

    /// "Turn on the gas *and the water*": what else is named beside the first, each with the one isolator that the verb
    /// can work.
    fn add_further_supplies(&self, clause: &Clause, proposal: &mut Proposal) {
        let all = phrases(self, clause);
        let further =
            all.iter().filter(|phrase| phrase.from > clause.verb() && phrase.lead == Lead::Direct).skip(1);
        for phrase in further {
            let circuits = self.carrying(phrase).unwrap_or_default();
            if let [only] = self.feeding(&circuits, &proposal.action.verb).as_slice()
                && !proposal.action.on.contains(only)
            {
                proposal.action.on.push(only.clone());
                proposal.said_by.push(phrase.head);
            }
        }
    }

    /// The isolators through which circuits are fed and that a verb can work here.
    fn feeding(&self, circuits: &[&Circuit], verb: &Verb) -> Vec<Id> {
        let of = |circuit: &Circuit, id: &Id| circuit.sections.iter().any(|section| section.id == *id);
        let feeds = |isolator: &&Isolator| {
            let (one, other) = &isolator.between;
            circuits.iter().any(|circuit| of(circuit, one) != of(circuit, other))
        };
        let feeding = self.map.isolators.iter().filter(feeds).map(|isolator| isolator.id.clone());
        feeding.filter(|id| self.here.is_possible(verb, id)).collect()
    }

    /// The noun phrase that a verb acts on.
    fn object(&self, clause: &Clause) -> Option<Phrase> {
        let all = phrases(self, clause);
        let mut behind = all.iter().filter(|phrase| phrase.from > clause.verb());
        behind.find(|phrase| phrase.lead == Lead::Direct).cloned()
    }

    /// Whether a verb acts on something.
    pub(super) fn acts_on_a_thing(&self, clause: &Clause) -> bool {
        self.object(clause).is_some() || self.pronoun(clause).is_some()
    }

    /// "Switch off *the mains*": what feeds the appliance, and not the appliance.
    pub(super) fn is_of_supply(&self, clause: &Clause) -> bool {
        const SUPPLIES: &[&str] =
            &["current", "electric", "electricity", "electrics", "feed", "mains", "power", "supply"];
        let switches = ["switch", "turn"].iter().any(|begin| self.text(clause.verb()).starts_with(begin));
        let object = self.object(clause).filter(|_| switches);
        object.is_some_and(|object| {
            let words = object.words.iter();
            words.len() <= 2 && object.words.last().is_some_and(|head| SUPPLIES.contains(&head.as_str()))
        })
    }

    /// Whether what is switched off or on is the appliance: it is named, or nothing else is.
    pub(super) fn is_of_appliance(&self, clause: &Clause) -> bool {
        let Some(object) = self.object(clause) else { return true };
        let stem = object.stem();
        let is_machine = stem.last().is_some_and(|head| is_machine(head));
        let calls = matches!(self.text(clause.verb()), "ask" | "asking" | "call" | "calling");
        if calls && clause.means.contains(&Verb::Start) {
            return true;
        }
        // "Start heating."
        let is_mode = matches!(stem.as_slice(), [only] if only == "heating" || only == "cooling");
        if is_appliance(&stem) || is_machine || is_mode {
            return true;
        }
        // "Switch *F2* on."
        if object.words.len() == 1 && is_code(&object.head_word()) {
            return false;
        }
        let is_part = self.mentions_in(clause).any(|mention| {
            let is_object = (mention.from..mention.to).contains(&object.head);
            is_object && !mention.candidates.is_empty()
        });
        let is_other = stem.last().is_some_and(|head| OTHERS.contains(&head.as_str()));
        let outside = matches!(
            noun(&stem),
            Noun::Nothing
                | Noun::Isolator(_)
                | Noun::Port(_)
                | Noun::Temporary
                | Noun::Connector(_)
                | Noun::Fixing
        );
        !is_part && !is_other && !outside
    }

    /// "Fit the padlock and the notice": what locks, beside what is placed.
    pub(super) fn lock_beside(&self, clause: &Clause, best: Option<&Proposal>) -> Option<Proposal> {
        let places = best.is_some_and(|best| best.action.verb == Verb::Place);
        let locks = places && clause.means.contains(&Verb::Lock);
        locks.then(|| self.thing_verb(clause, &Verb::Lock)).flatten().filter(|lock| lock.possible)
    }

    /// "*Lock off* the gas cock": whoever locks off what is open has shut it before.
    pub(super) fn isolated_first(&self, clause: &Clause, best: Option<&Proposal>) -> Option<Proposal> {
        let lock = best.filter(|best| best.action.verb == Verb::Lock && best.choices.is_empty())?;
        let says_off = clause.phrase.iter().any(|i| matches!(self.text(*i), "off" | "out"));
        let is_open = |id: &&Id| self.here.isolators.get(*id).is_some_and(|here| here.open && here.by_hand);
        let open: Vec<Id> = lock.action.on.iter().filter(is_open).cloned().collect();
        (says_off && !open.is_empty()).then(|| Proposal {
            action: Action::new(Verb::Isolate, open),
            choices: Vec::new(),
            doubtful: None,
            possible: true,
            said_by: lock.said_by.clone(),
        })
    }

    /// "Fit the padlock": on the isolators that were shut last and are not locked yet.
    pub(super) fn add_shut_last(&self, clause: &Clause, proposal: &mut Proposal) {
        let names_lock = (clause.from..clause.to)
            .any(|i| matches!(self.text(i), "lock" | "locks" | "locking" | "padlock" | "padlocks" | "key"));
        let names_lock = names_lock || matches!(self.text(clause.verb()), "locked" | "padlocked");
        // "Fit your padlock and keep the key": the key is that of the padlock.
        let keeps = self.text(clause.verb()).starts_with("ke") || self.has(clause, &["pocket"]);
        let is_locked = self.reading().actions.iter().any(|action| action.verb == Verb::Lock);
        if !names_lock || (keeps && is_locked) {
            return;
        }
        let possible = |id: &Id| self.here.is_possible(&Verb::Lock, id);
        let said = self.last_of(&[ThingKind::Isolator]).into_iter().map(|candidate| candidate.id);
        let said: Vec<Id> = said.filter(possible).collect();
        let shut: Vec<Id> =
            self.map.isolators.iter().map(|isolator| isolator.id.clone()).filter(possible).collect();
        proposal.action.on =
            if said.is_empty() { nearest(&self.here, &shut).into_iter().collect() } else { said };
    }
}
