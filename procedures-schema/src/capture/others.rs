//! What one verb says of things of several sorts: "push on hoses and plugs" fits the hoses and makes the plugs.

use super::clause::Clause;
use super::mention::Mention;
use super::reader::{Proposal, Reader};
use crate::model::{Id, Verb};
use crate::notation::entry;
use crate::simulate::Whereabouts;

impl Reader<'_> {
    /// What a clause says of the things that it acts on and that its first readings leave out.
    pub(super) fn done_to_others(&self, clause: &Clause, first: &[Proposal]) -> Vec<Proposal> {
        const BOTH_WAYS: &[Verb] =
            &[Verb::Undo, Verb::Remove, Verb::Make, Verb::Fit, Verb::Isolate, Verb::Restore];
        let Some(best) = first.last().filter(|best| BOTH_WAYS.contains(&best.action.verb)) else {
            return Vec::new();
        };
        let end = self.end_of_sentence(clause);
        // The token itself may be of the verb: "pull off the hoses and the *plug*".
        let is_said =
            |id: &Id| first.iter().any(|said| said.action.on.contains(id) || said.choices.contains(id));
        let is_left = |mention: &Mention| mention.candidates.iter().all(|candidate| !is_said(&candidate.id));
        let direct = self.mentions_in(clause).filter(|mention| {
            mention.from > clause.verb()
                && mention.from < end
                && is_left(mention)
                && self.is_joined(clause, mention.from)
                && self.preposition(mention).is_none()
        });
        let mut others = self.fitted_with(clause, best, &is_left);
        for mention in direct {
            let verbs =
                BOTH_WAYS.iter().filter(|verb| clause.means.contains(verb) && **verb != best.action.verb);
            let read = verbs.filter_map(|verb| {
                let kinds = entry(verb)?.things.kinds;
                let meant = self.meant_by(clause, verb, kinds, mention).filter(|meant| meant.possible)?;
                Some(self.proposal_of(clause, verb, mention, meant))
            });
            others.extend(read.into_iter().next());
        }
        others
    }

    /// "Slide it in *with the turbine*": a part that is off and goes in with the other.
    fn fitted_with(
        &self,
        clause: &Clause,
        best: &Proposal,
        is_left: &dyn Fn(&Mention) -> bool,
    ) -> Vec<Proposal> {
        let is_off = |id: &Id| self.here.components.get(id) == Some(&Whereabouts::Off);
        let is_part = |mention: &&Mention| {
            mention.from > clause.verb()
                && self.preposition(mention) == Some("with")
                && is_left(mention)
                && mention.candidates.iter().all(|candidate| is_off(&candidate.id))
        };
        let with = self.mentions_in(clause).filter(|_| best.action.verb == Verb::Fit).filter(is_part);
        let read = with.filter_map(|mention| {
            let kinds = entry(&Verb::Fit)?.things.kinds;
            let meant = self.meant_by(clause, &Verb::Fit, kinds, mention).filter(|meant| meant.possible)?;
            Some(self.proposal_of(clause, &Verb::Fit, mention, meant))
        });
        read.collect()
    }

    /// Whether "and" stands before a thing, over its article and amount.
    pub(super) fn is_joined(&self, clause: &Clause, from: usize) -> bool {
        let before = (clause.verb() + 1..from).rev().find(|i| {
            let text = self.text(*i);
            !matches!(text, "a" | "all" | "both" | "its" | "the" | "their")
                && self.lexicon.amount(text).is_none()
        });
        before.is_some_and(|i| self.text(i) == "and")
    }
}
