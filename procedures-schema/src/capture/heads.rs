//! What a verb acts on is the head of what stands behind it: "peel off the electrode *gasket*" takes no electrode out,
//! "pull the two *clips* that hold the bypass" no bypass, and "put a new *O-ring* on the rod of the valve" fits no valve.

use super::clause::Clause;
use super::coin::{self, Lead, Noun, Phrase, noun};
use super::mention::Mention;
use super::reader::{Proposal, Reader};
use crate::model::{Id, Renewal, ThingKind, Verb};

/// Verbs that act on the things that are named right behind them.
const ACTING: &[Verb] = &[
    Verb::Remove,
    Verb::Fit,
    Verb::MoveAside,
    Verb::Undo,
    Verb::Slacken,
    Verb::Make,
    Verb::Tighten,
    Verb::Clean,
    Verb::Inspect,
    Verb::TakeAway,
];

impl Reader<'_> {
    /// Whether a mention only says of which sort another thing is: "the *electrode* gasket", "the *union* faces".
    pub(super) fn is_of_a_name(&self, clause: &Clause, phrases: &[Phrase], mention: &Mention) -> bool {
        let looks = clause.means.contains(&Verb::Inspect);
        let around = phrases.iter().find(|phrase| phrase.from <= mention.from && mention.to <= phrase.head);
        around.is_some_and(|phrase| match noun(&phrase.stem()) {
            // "Wipe the paste out of the sensor *pocket*."
            Noun::Nothing => phrase.head_word() == "pocket",
            Noun::Unknown => false,
            Noun::Seal if looks => false,
            // The faces of a joint belong to it, those of its nuts do not.
            Noun::Side => mention.candidates.iter().all(|known| {
                let name = self.map.name_of(&known.id);
                known.kind == ThingKind::Connection
                    && ["bolt", "nut", "screw"].iter().any(|held| name.trim_end_matches('s').ends_with(held))
            }),
            _ => true,
        })
    }

    /// Whether none of what a clause was read as says what its verb acts on: then it acts on something that nobody knows,
    /// and what is named behind it only says where.
    pub(super) fn misses_its_object(&self, clause: &Clause, proposals: &[Proposal]) -> bool {
        let acts = |proposal: &Proposal| ACTING.contains(&proposal.action.verb);
        if proposals.is_empty() || !proposals.iter().all(acts) {
            return false;
        }
        if self.is_done_to_its_subject(clause) {
            // "The old *actuator* is lifted off the valve."
            let before = |i: &usize| *i < clause.verb();
            return !proposals.iter().flat_map(|proposal| &proposal.said_by).any(before);
        }
        let said = |phrase: &Phrase| {
            // Words of the verb are said anyway: "pull the *tubes* off".
            let is_named = |i: usize, said_by: &[usize]| {
                let n = said_by.iter().filter(|said| **said == i).count();
                n > usize::from(clause.phrase.contains(&i))
            };
            proposals
                .iter()
                .any(|proposal| (phrase.start..=phrase.head).any(|i| is_named(i, &proposal.said_by)))
        };
        let end = self.end_of_sentence(clause);
        let phrases = coin::phrases(self, clause);
        // "It comes off the same *way*": words of the verb that name nothing.
        let is_named = |head: usize| self.mentions.iter().any(|mention| mention.to == head + 1);
        let is_idiom = |phrase: &Phrase| clause.phrase.contains(&phrase.head) && !is_named(phrase.head);
        let behind = |phrase: &&Phrase| phrase.from > clause.verb() && phrase.from < end && !is_idiom(phrase);
        let direct: Vec<&Phrase> =
            phrases.iter().filter(behind).filter(|phrase| phrase.lead == Lead::Direct).collect();
        let Some(first) = direct.first() else { return false };
        let is_pronoun_before = self.object_pronoun(clause).is_some_and(|it| it < first.from);
        // "Check that the *door* is shut."
        let is_said_before = |i: &usize| *i > clause.verb() && *i < first.start && !clause.phrase.contains(i);
        let said_before = proposals.iter().flat_map(|proposal| &proposal.said_by).any(is_said_before);
        // "Slacken the screw in the test nipple" opens the nipple.
        let opens_port = || {
            let is_port = |id: &Id| self.map.connection(id).is_some_and(|known| known.port.is_some());
            first.head_word() == "screw"
                && proposals.iter().flat_map(|proposal| &proposal.action.on).any(is_port)
        };
        if is_pronoun_before || said_before || direct.iter().any(|phrase| said(phrase)) || opens_port() {
            return false;
        }
        let renews = || {
            let is_new = |proposal: &Proposal| proposal.action.seal == Some(Renewal::New);
            proposals.iter().all(is_new)
        };
        match noun(&first.stem()) {
            Noun::Nothing | Noun::Setting => false,
            Noun::Seal => !renews(),
            Noun::Side => !self.is_side_of(first),
            _ => true,
        }
    }

    /// Whether the verb of a clause says what is done to that which stands before it: "can now *be lifted*", "were *undone*".
    fn is_done_to_its_subject(&self, clause: &Clause) -> bool {
        const SAID: &[&str] = &["are", "be", "been", "being", "is", "was", "were"];
        let is_between = |i: &usize| {
            let text = self.text(*i);
            text.ends_with("ly") || matches!(text, "all" | "both" | "not" | "now" | "once" | "only" | "then")
        };
        let before = (0..clause.verb()).rev().find(|i| !is_between(i));
        // "The actuators are unscrewed and *taken* off their rings."
        let goes_on = |and: usize| {
            let is_participle =
                matches!(self.text(clause.verb()), "drawn" | "taken" | "undone" | "withdrawn");
            let from = self.beginning_of_sentence(clause);
            is_participle && self.text(and) == "and" && (from..and).any(|i| SAID.contains(&self.text(i)))
        };
        before.is_some_and(|before| SAID.contains(&self.text(before)) || goes_on(before))
    }

    /// "The inside *of the* chamber", "the faces *on* the flange".
    fn is_side_of(&self, side: &Phrase) -> bool {
        matches!(self.text(side.head + 1), "of" | "on")
    }
}
