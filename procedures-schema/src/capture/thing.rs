//! Verbs with things: isolators, connections, components, temporary items, settings.

use super::clause::Clause;
use super::coin::{self, Lead, Noun};
use super::mention::{Candidate, Mention};
use super::pronoun::Before;
use super::reader::{Proposal, Reader};
use super::refer::{Meant, Wanted, meant, nearest};
use crate::lexicon::Amount;
use crate::model::{Action, Id, Renewal, ThingKind, Verb};
use crate::notation::entry;
use crate::simulate::Whereabouts;
use crate::units::Quantity as Kind;

impl Reader<'_> {
    /// The verbs of a clause, the likelier ones first where the things do not decide.
    pub(super) fn in_order_of_preference(&self, clause: &Clause) -> Vec<Verb> {
        let mut verbs = clause.means.clone();
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
        verbs
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
            let Some(meant) = self.meant_by(clause, verb, kinds, mention) else { continue };
            self.add(&mut proposal, mention, meant);
        }
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
                _ => self.add_by_verb(clause, &mut proposal),
            }
        }
        if objects.is_empty() && proposal.action.on.is_empty() && proposal.choices.is_empty() {
            if *verb == Verb::Lock && self.pronoun(clause).is_none() {
                self.add_shut_last(clause, &mut proposal);
                return Some(proposal).filter(|proposal| !proposal.action.on.is_empty());
            }
            let pronoun =
                self.object_pronoun(clause).filter(|_| *verb != Verb::Place || !names_item(stem))?;
            proposal.action.on = self.antecedents(clause, verb, kinds);
            if proposal.action.on.is_empty() && self.begins_line(clause) {
                match self.of_step_before(pronoun, verb, kinds) {
                    Before::Clear(on) => proposal.action.on = on,
                    Before::OneOf(choices) => {
                        proposal.doubtful = Some((pronoun, pronoun + 1));
                        proposal.choices = choices;
                    }
                    Before::Nothing => {}
                }
            }
            let may_be = proposal.action.on.iter().chain(&proposal.choices);
            proposal.possible = may_be.into_iter().any(|id| self.here.is_possible(verb, id));
            proposal.said_by.push(pronoun);
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

    /// The mentions that a verb of these kinds acts on: direct ones, else those after "at", "on", "from".
    fn objects(&self, clause: &Clause, kinds: &[ThingKind]) -> Vec<Mention> {
        let fits = |mention: &&Mention| mention.candidates.iter().any(|c| kinds.contains(&c.kind));
        let is_direct = |mention: &&Mention| self.preposition(mention).is_none();
        let after_verb = |mention: &&Mention| mention.from > clause.verb();
        let of_kind: Vec<&Mention> = self.mentions_in(clause).filter(fits).collect();
        let pick = |test: &dyn Fn(&&Mention) -> bool| -> Vec<Mention> {
            of_kind.iter().copied().filter(|mention| test(mention)).cloned().collect()
        };
        // "Refit the lid and make *sure* no wire is caught": what is only looked after is not refitted.
        let is_beyond = |mention: &&Mention| {
            (clause.verb() + 1..mention.from)
                .any(|i| matches!(self.text(i), "ensure" | "ensuring" | "minding" | "sure"))
        };
        let direct = pick(&|mention| is_direct(mention) && after_verb(mention) && !is_beyond(mention));
        // "Pull *it* up to 30 Nm, the outlet nut to 23": the verb acts on what "it" stands for.
        let mut direct = direct;
        if let Some(it) = self.object_pronoun(clause) {
            direct.retain(|mention| mention.from < it);
        }
        // "Take off the panel; the chamber has a cover of its own": another sentence names no object, unless the
        // first has none.
        let end = self.end_of_sentence(clause);
        if direct.iter().any(|mention| mention.from < end) {
            direct.retain(|mention| mention.from < end);
        }
        if let Some(port) = self.port_of_screw(clause) {
            return vec![port];
        }
        if !direct.is_empty() {
            return direct;
        }
        let covers = self.text(clause.verb()).starts_with("cover");
        let placed = |mention: &&Mention| match self.preposition(mention) {
            Some("at" | "on" | "from" | "of") => true,
            // "Cover it with a bag": the bag is placed, as is the rag of "plug the stub with a rag".
            Some("with") => {
                let is_item = || mention.candidates.iter().all(|c| c.kind == ThingKind::Temporary);
                covers || (names_item(self.text(clause.verb())) && is_item())
            }
            // "Slacken the screw in the test nipple."
            Some("in") => self.connection(mention).is_some_and(|joint| joint.port.is_some()),
            _ => false,
        };
        let indirect = pick(&|mention| placed(mention) && after_verb(mention));
        // "Open the cap of the vent" opens no vent.
        let of_cap = |first: &&Mention| {
            (clause.verb() + 1..first.from).any(|i| matches!(self.text(i), "cap" | "caps"))
        };
        if indirect.first().as_ref().is_some_and(of_cap) {
            return Vec::new();
        }
        let is_source =
            |candidate: &Candidate| matches!(candidate.kind, ThingKind::Section | ThingKind::Circuit);
        let is_named = self.mentions_in(clause).any(|mention| {
            is_direct(&mention) && after_verb(&mention) && !mention.candidates.iter().all(is_source)
        });
        // "Shut the boiler down and isolate *it* at the spur."
        let isolates = self.text(clause.verb()).starts_with("isolat")
            && indirect.first().is_some_and(|mention| self.preposition(mention) == Some("at"));
        if !indirect.is_empty() && (covers || isolates || self.pronoun(clause).is_none()) && !is_named {
            // "Switch off the heater at its switch *and* the controls *at the spur*".
            let is_at = |mention: &Mention| self.preposition(mention) == Some("at");
            let is_isolator =
                |mention: &Mention| mention.candidates.iter().all(|c| c.kind == ThingKind::Isolator);
            let n = indirect.iter().take_while(|mention| is_at(mention) && is_isolator(mention)).count();
            return indirect.into_iter().take(n.max(1)).collect();
        }
        // "The valve must be closed."
        if self.pronoun(clause).is_some() { Vec::new() } else { pick(&|mention| !after_verb(mention)) }
    }

    /// "Slacken the screw in the test nipple": the nipple, whatever else has screws.
    fn port_of_screw(&self, clause: &Clause) -> Option<Mention> {
        let screw = (clause.verb() + 1..clause.to).find(|i| matches!(self.text(*i), "screw" | "screws"))?;
        let near = |mention: &&Mention| mention.from > screw && mention.from < screw + 4;
        let mention = self.mentions_in(clause).find(near)?;
        let leads = matches!(self.preposition(mention), Some("in" | "of")) && self.text(screw + 1) != "and";
        let is_port = self.connection(mention).is_some_and(|joint| joint.port.is_some());
        (leads && is_port).then(|| mention.clone())
    }

    /// What a mention means for this verb, with the words of its clause.
    pub(super) fn meant_by(
        &self,
        clause: &Clause,
        verb: &Verb,
        kinds: &[ThingKind],
        mention: &Mention,
    ) -> Option<Meant> {
        self.by_what_is_wanted(clause, verb, kinds, mention, |wanted| meant(&mention.candidates, wanted))
    }

    /// Asks something of what narrows a mention in a clause.
    pub(super) fn by_what_is_wanted<T>(
        &self,
        clause: &Clause,
        verb: &Verb,
        kinds: &[ThingKind],
        mention: &Mention,
        ask: impl FnOnce(&Wanted<'_>) -> T,
    ) -> T {
        let beside: Vec<Id> = self
            .mentions_in(clause)
            .filter(|other| other.from != mention.from && self.preposition(other).is_some())
            .filter_map(|other| match other.candidates.as_slice() {
                [only] => Some(only.id.clone()),
                _ => None,
            })
            .collect();
        let size = self.size(clause);
        let words = self.other_words(clause);
        let said = self.said_of(clause, mention);
        ask(&Wanted {
            map: self.map,
            here: &self.here,
            verb,
            kinds,
            words: &words,
            beside: &beside,
            size: size.as_deref(),
            said: &said,
        })
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

    /// Adds what a mention means to a proposal.
    fn add(&self, proposal: &mut Proposal, mention: &Mention, meant: Meant) {
        proposal.possible &= meant.possible;
        proposal.said_by.extend(self.tokens_of(mention));
        let amount = self.amount(mention).map(|(amount, _)| amount);
        let meant = Meant { ids: self.as_many_as(amount, meant.ids), ..meant };
        let n_meant = u32::try_from(meant.ids.len()).unwrap_or(u32::MAX);
        let all_of_them = match amount {
            Some(Amount::All) => true,
            Some(Amount::Exactly(n)) => n == n_meant,
            None => mention.plural,
        };
        let one = match meant.ids.as_slice() {
            [only] => Some(only.clone()),
            _ if all_of_them => {
                proposal.action.on.extend(meant.ids);
                return;
            }
            ids => nearest(&self.here, ids),
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
                let torque =
                    self.quantities(clause).find_map(|quantity| quantity.range(Kind::Torque).cloned());
                action.torque = torque;
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
                } else if action.verb == Verb::Make && self.has(clause, &["reuse", "reused", "old", "same"]) {
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
        let that = (clause.verb()..to).find(|i| matches!(self.text(*i), "that" | "whether" | "if"));
        if let Some(that) = that {
            let end = (that + 1..to).find(|i| {
                self.tokens.get(*i).is_some_and(|token| token.before != crate::lexicon::Break::None)
            });
            let text = self.span(that + 1, end.unwrap_or(to)).of(self.words).trim();
            let text = text.strip_suffix(" and").unwrap_or(text);
            return (!text.is_empty()).then(|| text.to_owned());
        }
        self.after(clause, &["for"]).map(|sought| format!("no {sought}"))
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
            .into_iter()
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
        named.filter_map(|named| self.fastener(clause, &verb, named)).collect()
    }

    fn fastener(&self, clause: &Clause, verb: &Verb, named: &Mention) -> Option<Proposal> {
        let meant = self.meant_by(clause, verb, &[ThingKind::Connection], named).filter(|m| m.possible)?;
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

/// Whether a verb names what is placed: "cap it" places a cap and not what is capped.
fn names_item(stem: &str) -> bool {
    ["blank", "bond", "bridg", "bung", "cap", "plug"].iter().any(|begin| stem.starts_with(begin))
}
