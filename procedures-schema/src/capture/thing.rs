//! Verbs with things: isolators, connections, components, temporary items, settings.

use super::clause::Clause;
use super::coin::{self, Lead, Noun};
use super::mention::{Candidate, Mention, is_plural};
use super::owned::Owned;
use super::reader::{Proposal, Reader};
use super::refer::{Meant, nearest};
use super::twins::is_one_of_twins;
use crate::lexicon::Amount;
use crate::model::{Action, Handle, Id, Renewal, ThingKind, Verb};
use crate::notation::entry;
use crate::simulate::Whereabouts;

/// What is looked for and ought not to be there.
const DEFECTS: &[&str] = &[
    "bent",
    "blocked",
    "burnt",
    "burred",
    "chafed",
    "cracked",
    "damage",
    "damaged",
    "feel",
    "grooved",
    "leaking",
    "leaks",
    "marked",
    "moves",
    "perished",
    "pitted",
    "play",
    "rusty",
    "scored",
    "scratched",
    "see",
    "split",
    "stuck",
    "swollen",
    "torn",
    "wear",
    "wet",
    "worn",
];

impl Reader<'_> {
    /// The verbs of a clause, the likelier ones first where the things do not decide.
    pub(super) fn in_order_of_preference(&self, clause: &Clause) -> Vec<Verb> {
        let mut verbs = clause.means.clone();
        if self.text(clause.verb()).starts_with("lock") {
            // What "lock off" shuts comes with the lock.
            verbs.retain(|verb| *verb != Verb::Isolate);
        }
        let off = clause.phrase.iter().any(|i| matches!(self.text(*i), "off" | "out"));
        let again =
            self.text(clause.verb()).starts_with("tight") || self.text(clause.verb()).starts_with("torque");
        let is_late = |verb: &Verb| match verb {
            Verb::Slacken => off,
            Verb::Make => again,
            Verb::Lock | Verb::Place | Verb::Clean | Verb::Inspect | Verb::RecordSetting => {
                clause.means.len() > 1
            }
            _ => false,
        };
        verbs.sort_by_key(is_late);
        if self.joins_what_was_taken_off(clause) && !verbs.contains(&Verb::Fit) {
            verbs.push(Verb::Fit);
        }
        verbs
    }

    /// "Reconnect the discharge pipe" that was swung aside.
    fn joins_what_was_taken_off(&self, clause: &Clause) -> bool {
        let joins = ["connect", "reconnect"].iter().any(|begin| self.text(clause.verb()).starts_with(begin));
        let is_pipe = |mention: &Mention| {
            let head = super::mention::singular(self.text(mention.to - 1));
            matches!(&*head, "duct" | "flue" | "hose" | "pipe")
                && mention.candidates.iter().all(|known| known.kind == ThingKind::Component)
        };
        let direct = |mention: &&Mention| mention.from > clause.verb() && self.preposition(mention).is_none();
        joins && self.mentions_in(clause).find(direct).is_some_and(is_pipe)
    }

    /// Reads a clause as this verb on the things that it names.
    pub(super) fn thing_verb(&self, clause: &Clause, verb: &Verb) -> Option<Proposal> {
        let line = entry(verb).filter(|line| line.things.least > 0)?;
        let kinds = line.things.kinds;
        if kinds.contains(&ThingKind::Section) {
            return None;
        }
        if !self.may_renew_by(clause, verb) || !self.may_turn_by(clause, verb) {
            return None;
        }
        let objects = self.objects(clause, kinds);
        let mut proposal = Proposal {
            action: Action::new(verb.clone(), Vec::new()),
            choices: Vec::new(),
            doubtful: None,
            possible: true,
            said_by: clause.phrase.clone(),
        };
        for mention in &objects {
            let meant = self.meant_here(clause, verb, kinds, mention);
            if let Some(meant) =
                meant.filter(|meant| meant.possible || !self.may_be_another(clause, verb, mention))
            {
                self.add(&mut proposal, mention, meant);
            }
        }
        self.ask_where_one_or_other(&objects, &mut proposal);
        let stem = self.text(clause.verb());
        if objects.is_empty() && (stem.starts_with("isolat") || stem.starts_with("restor")) {
            self.add_around(clause, &mut proposal);
        }
        if objects.is_empty() && proposal.action.on.is_empty() {
            match verb {
                Verb::Isolate | Verb::Restore => {
                    self.add_supply(clause, &mut proposal);
                    if *verb == Verb::Restore && proposal.action.on.is_empty() && proposal.choices.is_empty()
                    {
                        self.add_switched_off(clause, &mut proposal);
                    }
                }
                Verb::Tighten if self.object_pronoun(clause).is_none() => {
                    self.add_by_verb(clause, &mut proposal);
                    if proposal.action.on.is_empty() && proposal.choices.is_empty() {
                        self.add_made_last(clause, &mut proposal);
                    }
                }
                _ => self.add_by_verb(clause, &mut proposal),
            }
        }
        if objects.is_empty() && proposal.action.on.is_empty() && proposal.choices.is_empty() {
            if *verb == Verb::Lock && self.object_pronoun(clause).is_none() {
                self.add_shut_last(clause, &mut proposal);
                return Some(proposal).filter(|proposal| !proposal.action.on.is_empty());
            }
            self.add_pronoun(clause, verb, kinds, &mut proposal)?;
        }
        if proposal.action.on.is_empty() && proposal.choices.is_empty() {
            return None;
        }
        let drops = *verb == Verb::Fit && stem.starts_with("drop");
        if (drops || *verb == Verb::MoveAside) && !proposal.possible {
            // What is off already is only put down.
            return None;
        }
        self.details(clause, &mut proposal);
        Some(proposal)
    }

    /// "Refit the fan cover *or* the pump cover": one of them.
    fn ask_where_one_or_other(&self, objects: &[Mention], proposal: &mut Proposal) {
        let [first, .., last] = objects else { return };
        let says_or = (first.to..last.from).any(|i| self.text(i) == "or");
        if says_or && proposal.choices.is_empty() && proposal.action.on.len() > 1 {
            proposal.choices = std::mem::take(&mut proposal.action.on);
            proposal.doubtful = Some((first.from, last.to));
        }
    }

    /// "Turn *both valves* back on" where only one is called a valve: those that a hand can work now, if they are so
    /// many.
    fn all_that_can(&self, verb: &Verb, n: u32) -> Option<Vec<Id>> {
        let by_hand = |handle: &Handle| *handle == Handle::Valve;
        let valves = self.map.isolators.iter().filter(|isolator| by_hand(&isolator.handle));
        let can: Vec<Id> =
            valves.map(|isolator| isolator.id.clone()).filter(|id| self.here.is_possible(verb, id)).collect();
        (u32::try_from(can.len()) == Ok(n)).then_some(can)
    }

    /// "Both *heating* valves" are none of the gas.
    fn says_another_circuit(&self, mention: &Mention, all: &[Id]) -> bool {
        let words: Vec<String> = (mention.from..mention.to).map(|i| self.text(i).to_owned()).collect();
        let Some(kind) = coin::named_kind(&words, true) else { return false };
        let circuit = |id: &Id| {
            let isolator = self.map.isolators.iter().find(|isolator| isolator.id == *id)?;
            self.map.sections().find(|(_, section)| section.id == isolator.between.1).map(|(of, _)| &of.kind)
        };
        all.iter().any(|id| circuit(id).is_some_and(|own| *own != kind))
    }

    /// "Undo the bolts, half a turn each": what is only turned a little is slackened.
    fn may_turn_by(&self, clause: &Clause, verb: &Verb) -> bool {
        let stem = self.text(clause.verb());
        if stem.starts_with("crack") {
            return match verb {
                Verb::Undo => self.is_opened_wide(clause),
                Verb::Slacken => !self.is_opened_wide(clause),
                _ => true,
            };
        }
        if !["undo", "unscrew"].iter().any(|begin| stem.starts_with(begin)) {
            return true;
        }
        let end = self.end_of_sentence(clause);
        let little = (clause.verb()..end).any(|i| {
            matches!(self.text(i), "turn" | "turns")
                && (i.saturating_sub(3)..i)
                    .any(|j| matches!(self.text(j), "half" | "quarter" | "one" | "a" | "two"))
        });
        match verb {
            Verb::Undo | Verb::TakeAway => !little,
            Verb::Slacken => little,
            _ => true,
        }
    }

    /// "Crack the union and *bin the washer*": whose seal comes out is undone.
    fn is_opened_wide(&self, clause: &Clause) -> bool {
        let mut behind = self.clauses.iter().filter(|other| other.verb() > clause.verb());
        let throws = |other: &Clause| {
            let seal = (other.verb() + 1..other.to).any(|i| self.is_seal_word(i));
            seal && other.means.iter().any(|verb| matches!(verb, Verb::Discard | Verb::Remove))
        };
        behind.next().is_some_and(throws)
    }

    /// "Isolate the pump": the isolators around the section that its joints carry.
    fn add_around(&self, clause: &Clause, proposal: &mut Proposal) {
        let after_verb = |mention: &&Mention| mention.from > clause.verb();
        let Some(mention) = self.mentions_in(clause).find(after_verb) else { return };
        let mut sections = self.sections_of(mention, &Verb::Release);
        if let [only] = sections.as_slice()
            && let Some(circuit) = self.map.circuits.iter().find(|circuit| circuit.id == *only)
        {
            sections = circuit.sections.iter().map(|section| section.id.clone()).collect();
        }
        let verb = proposal.action.verb.clone();
        let around = self.map.isolators.iter().filter(|isolator| {
            let (one, other) = &isolator.between;
            sections.contains(one) != sections.contains(other) && self.here.is_possible(&verb, &isolator.id)
        });
        proposal.action.on = around.map(|isolator| isolator.id.clone()).collect();
        proposal.said_by.extend(self.tokens_of(mention));
    }

    /// The last things of a kind, or those under the last temporary items: "bond the union and cap *it*".
    pub(super) fn last_or_under(&self, kind: ThingKind) -> Vec<Candidate> {
        let last = self.last_of(&[kind]);
        if !last.is_empty() {
            return last;
        }
        let items = self.last_of(&[ThingKind::Temporary]);
        let is_last = |id: &Id| items.iter().any(|candidate| candidate.id == *id);
        let under = self.map.temporary.iter().filter(|item| is_last(&item.id));
        let ids = under.filter_map(|item| item.on.clone().or_else(|| item.bonds.clone()));
        let under: Vec<Candidate> = ids.map(|id| Candidate { id, kind, agrees: true }).collect();
        if under.is_empty() && kind == ThingKind::Component { self.held_by_last_of_line() } else { under }
    }

    /// "The two screws": of several the one that is two, if only one is.
    fn as_many_as(&self, amount: Option<Amount>, mut ids: Vec<Id>) -> Vec<Id> {
        let Some(Amount::Exactly(n)) = amount.filter(|amount| *amount != Amount::Exactly(1)) else {
            return ids;
        };
        let is_as_many = |id: &Id| self.map.connection(id).is_some_and(|known| known.count == n);
        if ids.iter().filter(|id| is_as_many(id)).count() == 1 {
            ids.retain(is_as_many);
        }
        ids
    }

    /// "Do up *the pump union*" where the pump unions are one thing: one of them.
    fn is_one_of_them(&self, mention: &Mention, meant: &Meant) -> Option<Amount> {
        let [only] = meant.ids.as_slice() else { return None };
        let is_one = !is_plural(self.text(mention.to - 1)) && is_plural(self.map.name_of(only));
        let is_many = self.map.connection(only).is_some_and(|connection| connection.count > 1);
        (is_one && is_many).then_some(Amount::Exactly(1))
    }

    /// Adds what a mention means to a proposal.
    fn add(&self, proposal: &mut Proposal, mention: &Mention, mut meant: Meant) {
        let owned = if mention.plural { Owned::Clear } else { self.keep_owned(mention, &mut meant.ids) };
        if self.counts_more_than_known(mention, &meant.ids) {
            return;
        }
        proposal.possible &= meant.possible;
        proposal.said_by.extend(self.tokens_of(mention));
        let said = self.amount(mention);
        let amount = said.map(|(amount, _)| amount).or_else(|| self.is_one_of_them(mention, &meant));
        // "Two *of* the bolts" may be two of four.
        let in_part = said.is_some_and(|(_, at)| self.text(at + 1) == "of");
        let ids = if in_part { meant.ids } else { self.as_many_as(amount, meant.ids) };
        let meant = Meant { ids, ..meant };
        // "Both screws" are not the two pairs of them that are known.
        let count = |id: &Id| self.map.connection(id).map_or(1, |connection| connection.count);
        let n_meant: u32 = meant.ids.iter().map(count).sum();
        let all_of_them = match amount {
            Some(Amount::All) => true,
            Some(Amount::Exactly(n)) => n == n_meant,
            None => mention.plural || meant.each,
        };
        let verb = &proposal.action.verb;
        let works = matches!(verb, Verb::Isolate | Verb::Restore);
        if let Some(Amount::Exactly(n)) = amount.filter(|_| works && n_meant == 1)
            && n > 1
        {
            let all = self.all_that_can(verb, n).filter(|all| !self.says_another_circuit(mention, all));
            proposal.action.on.extend(all.unwrap_or(meant.ids));
            return;
        }
        let one = match meant.ids.as_slice() {
            [only] => Some(only.clone()),
            _ if all_of_them => {
                proposal.action.on.extend(meant.ids);
                return;
            }
            // "Plug in its *two plugs*", of three: the nearest of them is one.
            ids => nearest(&self.here, ids).filter(|id| {
                owned == Owned::Clear && !matches!(amount, Some(Amount::Exactly(n)) if n > count(id))
            }),
        };
        let Some(id) = one else {
            proposal.doubtful = Some((mention.from, mention.to));
            proposal.choices = meant.ids;
            return;
        };
        if let (Some(Amount::Exactly(n)), Some(connection)) = (amount, self.map.connection(&id)) {
            proposal.action.count = Some(n).filter(|n| *n < connection.count);
        }
        proposal.action.on.push(id);
    }

    /// "Clean *both floats*" where one is known: what the other is, nobody knows.
    fn counts_more_than_known(&self, mention: &Mention, ids: &[Id]) -> bool {
        let ([only], Some((Amount::Exactly(n), _))) = (ids, self.amount(mention)) else { return false };
        let is_one = matches!(self.map.thing_kind(only), Some(ThingKind::Component | ThingKind::Temporary));
        n > 1 && is_one && mention.plural && is_one_of_twins(self.map.name_of(only))
    }

    /// Count, seals, torque and the like.
    pub(super) fn details(&self, clause: &Clause, proposal: &mut Proposal) {
        let action = &mut proposal.action;
        let line = entry(&action.verb);
        let takes_count = line.is_some_and(|line| line.slots.iter().any(|slot| slot.key == "n"));
        if !takes_count || action.on.len() > 1 {
            action.count = None;
        }
        let words = self.span(clause.from, clause.to).of(self.words);
        match action.verb {
            Verb::Make | Verb::Tighten => {
                action.torque = self.torque_of(clause, &action.on);
                if self.has(clause, &["cross", "crosswise", "crossways", "diagonally", "diagonal"]) {
                    action.pattern = Some("cross".to_owned());
                }
                let names: Vec<&str> = self.map.seals.iter().map(|seal| seal.name.as_str()).collect();
                let before = self.words_since_making(clause);
                let has_seal = action
                    .on
                    .iter()
                    .any(|id| self.map.connection(id).is_some_and(|joint| !joint.seals.is_empty()));
                let said_before = has_seal && self.lexicon.says_new_of(before, &names);
                if action.verb == Verb::Make && (said_before || self.lexicon.says_new_of(words, &names)) {
                    action.seal = Some(Renewal::New);
                } else if action.verb == Verb::Make
                    && has_seal
                    && self.has(clause, &["reuse", "reused", "old", "same"])
                {
                    action.seal = Some(Renewal::Same);
                }
            }
            Verb::Undo if self.text(clause.verb()).starts_with("cut") => action.with = Some("cut".to_owned()),
            Verb::Fit => {
                let new = self.is_called_new(clause, &action.on) || self.fits_new(clause, &action.on);
                action.part = new.then_some(Renewal::New);
            }
            Verb::Inspect => action.criterion = self.criterion(clause),
            Verb::Set => action.to = self.after(clause, &["to"]),
            _ => {}
        }
    }

    /// What is looked for: "check that the pipe *is clear*", "check the ball *for cracks*".
    fn criterion(&self, clause: &Clause) -> Option<String> {
        // "Look at it and leave it there if it is sound."
        let idle = self.clauses.iter().skip_while(|other| other.from < clause.to);
        let to = idle.take_while(|other| other.means.is_empty()).last().map_or(clause.to, |last| last.to);
        // "Feel it again *now that* it is hot" says when.
        let is_now = |i: usize| i.checked_sub(1).is_some_and(|before| self.text(before) == "now");
        let that = (clause.verb()..to).find(|i| {
            let leads = matches!(self.text(*i), "that" | "whether" | "if") && !is_now(*i);
            leads && !self.is_told(clause, *i)
        });
        if let Some(that) = that {
            // "See whether the seat *is pitted*" says what must not be.
            let asks = matches!(self.text(that), "if" | "whether");
            if asks && (that..to).any(|i| DEFECTS.contains(&self.text(i))) {
                return None;
            }
            let end = (that + 1..to).find(|i| {
                self.tokens.get(*i).is_some_and(|token| token.before != crate::lexicon::Break::None)
            });
            let text = self.span(that + 1, end.unwrap_or(to)).of(self.words).trim();
            let text = text.strip_suffix(" and").unwrap_or(text);
            return (!text.is_empty()).then(|| text.to_owned());
        }
        let sought = self.after(clause, &["for"])?;
        // "Check it *for free movement*" looks for what must be.
        let is_good = sought.split(' ').any(|word| {
            matches!(
                word,
                "clearance" | "correct" | "free" | "freedom" | "good" | "proper" | "right" | "smooth"
            )
        });
        Some(if is_good { sought } else { format!("no {sought}") })
    }

    /// The words after one of these, up to the end of the clause or a comma.
    pub(super) fn after(&self, clause: &Clause, leads: &[&str]) -> Option<String> {
        let lead = (clause.verb()..clause.to).find(|i| leads.contains(&self.text(*i)))?;
        self.text_from(lead + 1, clause.to)
    }

    /// The words from a token up to another, or to a comma or the end of the sentence; articles left out.
    pub(super) fn text_from(&self, from: usize, to: usize) -> Option<String> {
        let from = (from..to).find(|i| !matches!(self.text(*i), "the" | "a" | "an"))?;
        let broken =
            |i: &usize| self.tokens.get(*i).is_none_or(|token| token.before != crate::lexicon::Break::None);
        let stop = |i: &usize| broken(i) || matches!(self.text(*i), "and" | "until" | "then");
        let end = (from + 1..to).find(stop).unwrap_or(to);
        let text = self.span(from, end).of(self.words).trim();
        (!text.is_empty()).then(|| text.to_owned())
    }

    /// "Switch off at the wall isolator": the appliance is shut down by the same words.
    pub(super) fn shut_down_first(&self, clause: &Clause, best: Option<&Proposal>) -> Option<Proposal> {
        let isolated = best.filter(|best| best.action.verb == Verb::Isolate)?;
        let at = self.mentions_in(clause).any(|mention| self.preposition(mention) == Some("at"));
        // "Turn the water off at the stop tap": the appliance is left on.
        let of_supply = coin::phrases(self, clause)
            .iter()
            .any(|phrase| phrase.lead == Lead::Direct && coin::noun(&phrase.stem()) == Noun::Nothing);
        let is_meant = clause.means.contains(&Verb::ShutDown) && self.here.running && at && !of_supply;
        is_meant.then(|| Proposal {
            action: Action::new(Verb::ShutDown, Vec::new()),
            choices: Vec::new(),
            doubtful: None,
            possible: true,
            said_by: isolated.said_by.clone(),
        })
    }

    /// "Take off the guard: four M6 screws": what holds the part is undone by the same words; "refit the guard with
    /// its screws": it is made by the same words.
    pub(super) fn fasteners(&self, clause: &Clause, best: &Proposal) -> Vec<Proposal> {
        let [part] = best.action.on.as_slice() else { return Vec::new() };
        let verb = match best.action.verb {
            Verb::Remove | Verb::MoveAside if self.here.components.get(part) != Some(&Whereabouts::Off) => {
                Verb::Undo
            }
            Verb::Fit if clause.means.contains(&Verb::Make) => Verb::Make,
            _ => return Vec::new(),
        };
        let holds = |candidate: &Candidate| {
            self.map.connection(&candidate.id).is_some_and(|connection| connection.joins.contains(part))
        };
        let named = self
            .mentions_in(clause)
            .filter(|mention| mention.from > clause.verb() && mention.candidates.iter().any(holds));
        named.filter_map(|named| self.fastener(clause, &verb, named, part)).collect()
    }

    fn fastener(&self, clause: &Clause, verb: &Verb, named: &Mention, part: &Id) -> Option<Proposal> {
        let mut meant =
            self.meant_by(clause, verb, &[ThingKind::Connection], named).filter(|m| m.possible)?;
        // "Refit the left cover *with its screws*."
        let holds = |id: &Id| self.map.connection(id).is_some_and(|known| known.joins.contains(part));
        if meant.ids.iter().any(holds) {
            meant.ids.retain(holds);
        }
        Some(self.proposal_of(clause, verb, named, meant))
    }

    /// A verb on what a mention means.
    pub(super) fn proposal_of(
        &self,
        clause: &Clause,
        verb: &Verb,
        named: &Mention,
        meant: Meant,
    ) -> Proposal {
        let mut proposal = Proposal {
            action: Action::new(verb.clone(), Vec::new()),
            choices: Vec::new(),
            doubtful: None,
            possible: true,
            said_by: clause.phrase.clone(),
        };
        self.add(&mut proposal, named, meant);
        self.details(clause, &mut proposal);
        proposal
    }
}
