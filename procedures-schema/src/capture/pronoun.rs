//! What "it" and "them" stand for: what the last clause was about, the part that its fasteners hold, or the only
//! thing named before; at the start of a line what the step before changed.

use super::clause::Clause;
use super::mention::{Candidate, Mention, head_of, is_plural, singular};
use super::objects::names_item;
use super::reader::{Proposal, Reader};
use crate::lexicon::{Amount, Break};
use crate::model::{Connection, Handle, Id, ThingKind, Verb};
use crate::notation::entry;

/// At most so many things are asked about.
const MOST_ASKED: usize = 5;

/// What may follow "both" where it stands for two things.
const AFTER_BOTH: &[&str] =
    &["and", "at", "back", "for", "from", "in", "off", "on", "out", "then", "to", "up", "with"];

/// What a pronoun at the start of a line stands for.
pub(super) enum Before {
    /// These things.
    Clear(Vec<Id>),
    /// One of these; which, the words do not say.
    OneOf(Vec<Id>),
    /// Nothing that is known.
    Nothing,
}

impl Reader<'_> {
    /// Adds what "it" or "them" stands for behind the verb of a clause; of several that it may be, one is asked for.
    pub(super) fn add_pronoun(
        &self,
        clause: &Clause,
        verb: &Verb,
        kinds: &[ThingKind],
        proposal: &mut Proposal,
    ) -> Option<()> {
        let names = *verb == Verb::Place && names_item(self.text(clause.verb()));
        let is_of_last = || *verb == Verb::Make && self.renews(clause) && self.names_what_last_is_of(clause);
        let pronoun = self.object_pronoun(clause).filter(|_| !names && !is_of_last())?;
        let mut meant = self.antecedents(clause, verb, kinds);
        // "Rinse the mesh and *screw it back in*": what was unscrewed.
        let turns = self.text(clause.verb()).starts_with("screw");
        meant.retain(|id| !turns || self.map.connection(id).is_some() || self.may_have_a_thread(id));
        let meant = self.what_is_out_instead(clause, verb, meant);
        let rivals = self.rivals(clause, verb, &meant);
        // "Take out the fan and the pump and clean *it*": one of them, and nobody says which.
        if rivals.is_empty() && (meant.len() < 2 || !self.is_pronoun(pronoun)) {
            proposal.action.on = meant;
        } else {
            proposal.choices = meant.into_iter().chain(rivals).collect();
        }
        if proposal.action.on.is_empty() && proposal.choices.is_empty() && self.begins_line(clause) {
            match self.of_step_before(pronoun, verb, kinds) {
                Before::Clear(on) => match self.rival_of_another_kind(clause, pronoun, verb, &on)? {
                    Some(rival) => proposal.choices = on.into_iter().chain([rival]).collect(),
                    None => proposal.action.on = on,
                },
                Before::OneOf(choices) => proposal.choices = choices,
                Before::Nothing => proposal.action.on = self.the_two_that_can(pronoun, verb),
            }
            let may_be = |id: &Id| self.may_be_unlocked(clause, verb, id);
            proposal.action.on.retain(may_be);
            proposal.choices.retain(may_be);
            if proposal.choices.len() == 1 {
                proposal.action.on = std::mem::take(&mut proposal.choices);
            }
        }
        if matches!(verb, Verb::Clean | Verb::Inspect) {
            proposal.action.on.iter_mut().for_each(|id| self.take_part_that_it_holds(clause, id));
        }
        if self.counts_otherwise(pronoun, &proposal.action.on) {
            return None;
        }
        proposal.doubtful = (!proposal.choices.is_empty()).then_some((pronoun, pronoun + 1));
        let may_be = proposal.action.on.iter().chain(&proposal.choices);
        proposal.possible = may_be.into_iter().any(|id| self.here.is_possible(verb, id));
        proposal.said_by.push(pronoun);
        Some(())
    }

    /// "Open *both*": where that many valves and no more can be, nothing else is meant.
    fn the_two_that_can(&self, pronoun: usize, verb: &Verb) -> Vec<Id> {
        // What the step before did to two others is nearer.
        let count = |id: &Id| self.map.connection(id).map_or(1, |known| known.count);
        let is_nearer = self.here.changed_before().map(count).sum::<u32>() > 1;
        if self.text(pronoun) != "both" || *verb != Verb::Restore || is_nearer {
            return Vec::new();
        }
        let all = self.map.isolators.iter().filter(|isolator| isolator.handle == Handle::Valve);
        let all = all.map(|isolator| isolator.id.clone());
        let can: Vec<Id> = all.filter(|id| self.here.is_possible(verb, id)).collect();
        if can.len() == 2 { can } else { Vec::new() }
    }

    /// "Fit a new battery to the meter and refit *it*": what is in already is not put back, if the line names one thing that is
    /// out.
    fn what_is_out_instead(&self, clause: &Clause, verb: &Verb, meant: Vec<Id>) -> Vec<Id> {
        let is_out = |id: &Id| self.here.is_possible(&Verb::Fit, id);
        if *verb != Verb::Fit || meant.is_empty() || meant.iter().any(is_out) {
            return meant;
        }
        let before = self.mentions.iter().filter(|mention| mention.to <= clause.verb());
        let named = before.filter_map(|mention| match mention.candidates.as_slice() {
            [only] if only.kind == ThingKind::Component => Some(&only.id),
            _ => None,
        });
        let mut out: Vec<&Id> = named.filter(|id| is_out(id)).collect();
        out.dedup();
        match out.as_slice() {
            [only] => vec![(*only).clone()],
            _ => meant,
        }
    }

    /// "Unplug the fan and replace *it*": nobody has named the plug, so the fan is meant.
    fn names_what_last_is_of(&self, clause: &Clause) -> bool {
        let is_named = |joint: &Candidate| {
            let head = head_of(self.map.name_of(&joint.id)).to_owned();
            (0..clause.verb()).any(|i| singular(self.text(i)) == singular(&head))
        };
        let last = self.last_of(&[ThingKind::Connection]);
        !last.is_empty() && !last.iter().any(is_named)
    }

    /// "Unscrew both electrodes and clean *them*", "unclip the sensors and check *them*": no thread or clip that nobody has named is
    /// cleaned or looked at, but the part that it holds.
    fn take_part_that_it_holds(&self, clause: &Clause, id: &mut Id) {
        let is_named = |head: &str| (0..clause.verb()).any(|i| singular(self.text(i)) == head);
        let is_unsaid = |known: &&Connection| {
            let head = head_of(&known.name);
            matches!(head, "clip" | "thread") && !is_named(head)
        };
        let holding = self.map.connection(id).filter(is_unsaid);
        if let Some([part]) = holding.map(|holding| holding.joins.as_slice()) {
            *id = part.clone();
        }
    }

    /// "Clean *these two*" behind three.
    fn counts_otherwise(&self, pronoun: usize, on: &[Id]) -> bool {
        let joined = self.tokens.get(pronoun + 1).is_some_and(|next| next.before == Break::None);
        let said = self.lexicon.amount(self.text(pronoun + 1)).filter(|_| joined);
        let Some(Amount::Exactly(n)) = said.filter(|_| !self.is_pronoun(pronoun)) else { return false };
        let count = |id: &Id| self.map.connection(id).map_or(1, |known| known.count);
        let is_thread = matches!(self.text(pronoun + 2), "turn" | "turns" | "times");
        !on.is_empty() && !is_thread && on.iter().map(count).sum::<u32>() != n
    }

    /// "Remove the cover and disconnect the pipe. Refit *it*": what the step before did to a thing of another kind, if another
    /// verb of the word can be done to it. Nothing at all, where the one is only what holds the other.
    #[expect(clippy::option_option, reason = "nothing is meant, or no other, or that one")]
    fn rival_of_another_kind(
        &self,
        clause: &Clause,
        pronoun: usize,
        verb: &Verb,
        on: &[Id],
    ) -> Option<Option<Id>> {
        let ([one], true) = (on, self.is_pronoun(pronoun)) else { return Some(None) };
        let others = clause.means.iter().filter(|other| *other != verb);
        let rival = others.filter_map(entry).find_map(|line| {
            match self.of_step_before(pronoun, &line.verb, line.things.kinds) {
                Before::Clear(other) => other.into_iter().next().filter(|other| other != one),
                _ => None,
            }
        });
        let holds = |joint: &Id, part: &Id| {
            self.map.connection(joint).is_some_and(|known| known.joins.contains(part))
        };
        match rival {
            Some(part) if holds(one, &part) => None,
            Some(joint) if holds(&joint, one) => Some(None),
            rival => Some(rival),
        }
    }

    /// What "it" or "them" in a clause stands for.
    pub(super) fn pronoun(&self, clause: &Clause) -> Option<usize> {
        (clause.from..clause.to)
            .find(|i| matches!(self.text(*i), "them" | "these") || self.is_both(*i) || self.is_pronoun(*i))
    }

    /// Whether "both" stands for two things, and does not count what follows: "both heaters".
    fn is_both(&self, i: usize) -> bool {
        let next = self.tokens.get(i + 1).filter(|next| next.before == Break::None);
        self.text(i) == "both" && next.is_none_or(|next| AFTER_BOTH.contains(&next.text.as_ref()))
    }

    /// Whether a token is "it", or "her" as engineers say of what they work on: "lift *her* out", not "her screws".
    pub(super) fn is_pronoun(&self, i: usize) -> bool {
        const BEHIND: &[&str] = &[
            "and", "aside", "at", "away", "back", "by", "clear", "down", "for", "from", "in", "into", "off",
            "on", "out", "over", "straight", "to", "towards", "up", "with",
        ];
        let ends = || {
            let next = self.tokens.get(i + 1).filter(|next| next.before == Break::None);
            next.is_none_or(|next| BEHIND.contains(&&*next.text))
        };
        self.text(i) == "it" || (self.text(i) == "her" && ends())
    }

    /// The pronoun on which the verb of a clause acts: "clean *it*", not "in case *it* leaks", "clean *both* faces".
    pub(super) fn object_pronoun(&self, clause: &Clause) -> Option<usize> {
        let at = self.pronoun(clause).filter(|at| *at > clause.verb())?;
        let near = (clause.verb() + 1..at).all(|i| clause.phrase.contains(&i));
        let broken = (clause.verb() + 1..=at)
            .any(|i| self.tokens.get(i).is_some_and(|token| token.before != Break::None));
        // "Grease the new O-ring and put *it* on": the seal is meant, which nothing else is known of.
        let from = self.end_of_said();
        let seal = (from..clause.verb()).rev().find(|i| self.is_seal_word(*i) && !self.is_in_brackets(*i));
        // "Put a new O-ring on the insert and screw *it* in": what is named behind the seal is nearer.
        let is_behind = |seal: &usize| {
            let mut named = self.mentions.iter().filter(|m| m.from > *seal && m.to <= clause.verb());
            named.any(|mention| mention.candidates.iter().any(|c| c.kind != ThingKind::Seal))
        };
        // "With new washers and tighten *them*": no seal is tightened.
        let of_seal = seal.is_some_and(|seal| !is_behind(&seal))
            && !clause.means.contains(&Verb::Tighten)
            && !self.text(clause.verb()).starts_with("run");
        (near && !broken && !of_seal).then_some(at)
    }

    /// Whether a thing may be screwed in by itself: not what only lies in another.
    fn may_have_a_thread(&self, id: &Id) -> bool {
        const LYING: &[&str] =
            &["basket", "belt", "board", "filter", "gauze", "insulation", "magnet", "mesh", "panel", "plate"];
        let head = head_of(self.map.name_of(id));
        !LYING.contains(&singular(head).as_str())
    }

    /// Whether nothing stands before the verb of a clause to which a pronoun could go back.
    pub(super) fn begins_line(&self, clause: &Clause) -> bool {
        let first = self.clauses.first().is_some_and(|first| first.verb() == clause.verb());
        first && self.last.is_empty() && self.mentions.iter().all(|mention| mention.from > clause.verb())
    }

    /// What the step before changed, as far as this verb can be done to it: one thing for "it", two for "both",
    /// all of them for "them". Of several that "it" could be, one is asked for.
    pub(super) fn of_step_before(&self, pronoun: usize, verb: &Verb, kinds: &[ThingKind]) -> Before {
        // Each is one, though its name ends like a plural.
        const ONE: &[&str] = &["bellows", "chassis", "electronics", "lens"];
        let kind = |id: &Id| self.map.thing_kind(id);
        let fits = |id: &&Id| kind(id).is_some_and(|kind| kinds.contains(&kind));
        let mut of_kind: Vec<Id> = self.here.changed_before().filter(fits).cloned().collect();
        // "Wipe the compartments out. Rinse *it*."
        let is_several = |id: &Id| {
            let head = head_of(self.map.name_of(id));
            is_plural(head) && !ONE.contains(&head)
        };
        of_kind.retain(|id| !self.is_pronoun(pronoun) || !is_several(id));
        if of_kind.is_empty() && kinds.contains(&ThingKind::Component) {
            let joined = self.here.changed_before().filter_map(|id| self.map.connection(id));
            of_kind.extend(joined.flat_map(|connection| connection.joins.iter().cloned()));
            of_kind.sort();
            of_kind.dedup();
        }
        of_kind.retain(|id| self.here.is_possible(verb, id));
        let count = |id: &Id| self.map.connection(id).map_or(1, |connection| connection.count);
        let n: u32 = of_kind.iter().map(count).sum();
        let agrees = match (self.text(pronoun), of_kind.as_slice()) {
            ("it" | "her", [_]) => true,
            ("both", _) => n == 2,
            ("them" | "these", _) => {
                n > 1 && of_kind.iter().all(|id| kind(id) == of_kind.first().and_then(kind))
            }
            _ => false,
        };
        match of_kind.len() {
            1.. if agrees => Before::Clear(of_kind),
            2..=MOST_ASKED if matches!(self.text(pronoun), "it" | "her") => Before::OneOf(of_kind),
            _ => Before::Nothing,
        }
    }

    /// The things of these kinds that the pronoun of a clause stands for; none if that is not clear. "It" is no pair of
    /// screws.
    pub(super) fn antecedents(&self, clause: &Clause, verb: &Verb, kinds: &[ThingKind]) -> Vec<Id> {
        let mut meant = self.of_any_number(clause, verb, kinds);
        if self.pronoun(clause).is_some_and(|at| self.is_pronoun(at)) {
            // "Renew the bearings of the fan and put *it* back", but "hold each plate up and look *it* over".
            let is_each = (0..clause.verb()).any(|i| matches!(self.text(i), "each" | "every"));
            let is_one = |id: &Id| {
                !is_plural(head_of(self.map.name_of(id))) || (is_each && self.map.connection(id).is_none())
            };
            meant.retain(is_one);
        }
        meant
    }

    /// What the words right before a clause say that its pronoun stands for, none where they name nothing that is known;
    /// nothing at all where they leave it to what the line was about.
    fn of_nearest_words(&self, clause: &Clause, verb: &Verb, kinds: &[ThingKind]) -> Option<Vec<Id>> {
        let is_of_parts = kinds.contains(&ThingKind::Component) && !kinds.contains(&ThingKind::Connection);
        if is_of_parts && self.is_moved_itself(&self.last_of(&[ThingKind::Connection])) {
            return Some(Vec::new());
        }
        if let Some(meant) = self.of_condition(clause, verb, kinds) {
            return Some(if meant.len() == 1 { meant } else { Vec::new() });
        }
        if self.is_nearer_unknown(clause) {
            return Some(Vec::new());
        }
        let can_be = |id: &Id| self.here.is_possible(verb, id);
        // "Mark the plug of the fan and pull *it* off."
        if let Some(marked) = self.marked_before(clause).first() {
            let named = self.mentions.iter().filter(|mention| mention.to == marked.head + 1);
            let of_kind =
                named.flat_map(|mention| &mention.candidates).filter(|known| kinds.contains(&known.kind));
            return Some(of_kind.map(|known| known.id.clone()).filter(can_be).collect());
        }
        let mut meant = self.plural_before(clause)?;
        meant.retain(|id| self.map.thing_kind(id).is_some_and(|kind| kinds.contains(&kind)) && can_be(id));
        Some(meant)
    }

    /// The same, one or several.
    fn of_any_number(&self, clause: &Clause, verb: &Verb, kinds: &[ThingKind]) -> Vec<Id> {
        if let Some(nearest) = self.of_nearest_words(clause, verb, kinds) {
            return nearest;
        }
        let last: Vec<Id> = self.last_of(kinds).into_iter().map(|candidate| candidate.id).collect();
        // "Remove the valve, clean its strainer and refit *it*": what is in its place is not refitted.
        let is_in_place = *verb == Verb::Fit && !last.iter().any(|id| self.here.is_possible(verb, id));
        if is_in_place && let Some(only) = self.only_removed_by_line() {
            return vec![only];
        }
        let is_single = |last: &[Id]| match last {
            [only] => self.is_one_where_several_are_meant(clause, only),
            _ => false,
        };
        // "Refit it and open *them*": what is one thing is not meant.
        if is_single(&last) {
            return Vec::new();
        }
        if !last.is_empty() {
            return last;
        }
        // "Put a hose on the drain cock and open it."
        let under = self.last_or_under(ThingKind::Connection);
        if kinds.contains(&ThingKind::Connection) && !under.is_empty() {
            return under.into_iter().map(|candidate| candidate.id).collect();
        }
        let is_meant = |held: &Id| !self.is_one_where_several_are_meant(clause, held);
        if let Some(held) = self.held_by_last(verb, kinds).filter(is_meant) {
            return vec![held];
        }
        // "Wind tape on the thread of the new valve, screw it in"; "when water comes at the vent screw tighten it".
        let from = match self.last.is_empty() {
            true => 0,
            // "Pull the bung out, fill the trap and push it up": nobody pushes up a bung that is out.
            false if !self.last_can_be_meant(clause) => self.end_of_said().min(clause.from),
            false => clause.from,
        };
        let before =
            self.mentions.iter().filter(|mention| mention.from >= from && mention.to <= clause.verb());
        let before = before.filter(|mention| !self.only_says_where(mention));
        let fits = |candidate: &&Candidate| {
            kinds.contains(&candidate.kind) && self.here.is_possible(verb, &candidate.id)
        };
        let mut named: Vec<Id> = Vec::new();
        for candidate in before.flat_map(|mention| &mention.candidates).filter(fits) {
            if !named.contains(&candidate.id) {
                named.push(candidate.id.clone());
            }
        }
        // "Olives on all the nuts, bring *them* up": all that one word in the plural names.
        let plural = self.pronoun(clause).is_some_and(|at| matches!(self.text(at), "them" | "these"));
        let mut before =
            self.mentions.iter().filter(|mention| mention.from >= from && mention.to <= clause.verb());
        let mut is_of_one = || {
            let all = |mention: &Mention| {
                named.iter().all(|id| mention.candidates.iter().any(|candidate| candidate.id == *id))
            };
            before.any(|mention| all(mention) && is_plural(self.text(mention.to - 1)))
        };
        if named.len() == 1 || (plural && is_of_one()) { named } else { Vec::new() }
    }

    /// The only part that this line has taken out and not put back.
    fn only_removed_by_line(&self) -> Option<Id> {
        let removed = self.reading().actions.iter().filter(|action| action.verb == Verb::Remove);
        let mut out =
            removed.flat_map(|action| &action.on).filter(|id| self.here.is_possible(&Verb::Fit, id));
        out.next().filter(|_| out.next().is_none()).cloned()
    }

    /// Whether some verb of a clause can be said of what the last clause was about.
    fn last_can_be_meant(&self, clause: &Clause) -> bool {
        let takes =
            |verb: &Verb, kind: &ThingKind| entry(verb).is_some_and(|line| line.things.kinds.contains(kind));
        self.last.iter().any(|last| clause.means.iter().any(|verb| takes(verb, &last.kind)))
    }

    /// "Clip the motor back on and plug *it* in": the only part that the last connections are of.
    pub(super) fn held_by_last_of_line(&self) -> Vec<Candidate> {
        match self.held_by_last_connections().as_slice() {
            [only] => vec![Candidate { id: only.clone(), kind: ThingKind::Component, agrees: true }],
            _ => Vec::new(),
        }
    }

    /// "Disconnect the sensing tube and swing *it* clear", "undo the nozzle pipe and pull *it* out": the tube or pipe, and not
    /// what it comes from.
    fn is_moved_itself(&self, last: &[Candidate]) -> bool {
        let [only] = last else { return false };
        let is_long = |name: &str| {
            matches!(
                head_of(name),
                "cable" | "capillary" | "flex" | "harness" | "hose" | "lead" | "pipe" | "tube" | "wire"
            )
        };
        self.map.connection(&only.id).is_some_and(|known| known.count == 1 && is_long(&known.name))
    }

    /// "Undo the screws of the cover and lift it off": the only part that the last connections hold.
    fn held_by_last(&self, verb: &Verb, kinds: &[ThingKind]) -> Option<Id> {
        if !kinds.contains(&ThingKind::Component) {
            return None;
        }
        let mut held = self.held_by_last_connections();
        held.retain(|id| self.here.is_possible(verb, id));
        match held.as_slice() {
            [only] => Some(only.clone()),
            _ => None,
        }
    }

    /// The parts that the last connections are of; none where they move by themselves.
    fn held_by_last_connections(&self) -> Vec<Id> {
        let connections = self.last_of(&[ThingKind::Connection]);
        if self.is_moved_itself(&connections) {
            return Vec::new();
        }
        let joined = connections.iter().filter_map(|candidate| self.map.connection(&candidate.id));
        let mut held: Vec<Id> = joined.flat_map(|connection| connection.joins.iter().cloned()).collect();
        held.sort();
        held.dedup();
        held
    }

    /// "Pull their plugs out and tie *them* back": no single part that the plugs are of.
    fn is_one_where_several_are_meant(&self, clause: &Clause, id: &Id) -> bool {
        let several =
            self.pronoun(clause).is_some_and(|at| matches!(self.text(at), "them" | "these" | "those"));
        several && self.map.connection(id).is_none() && !is_plural(head_of(self.map.name_of(id)))
    }
}
