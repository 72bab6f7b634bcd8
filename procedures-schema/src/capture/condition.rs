//! What a condition speaks of: "when the tap runs without spitting, close *it*", and its figures, which are no limits.

use super::clause::Clause;
use super::mention::Mention;
use super::reader::Reader;
use crate::lexicon::Break;
use crate::model::{Id, ThingKind, Verb};

impl Reader<'_> {
    /// The things of these kinds of which the condition before a verb speaks; none if it speaks of nothing known.
    pub(super) fn of_condition(&self, clause: &Clause, verb: &Verb, kinds: &[ThingKind]) -> Option<Vec<Id>> {
        let from = self.end_of_said().max(self.beginning_of_sentence(clause));
        let mut before = self.mentions.iter().rev().filter(|m| m.from >= from && m.to <= clause.verb());
        let subject = before.find(|mention| self.is_subject_of_condition(mention))?;
        let fits = |id: &&Id| self.here.is_possible(verb, id);
        let of_kind = subject.candidates.iter().filter(|candidate| kinds.contains(&candidate.kind));
        Some(of_kind.map(|candidate| &candidate.id).filter(fits).cloned().collect())
    }

    /// "*When the* tap runs", "*once the* pump stops".
    fn is_subject_of_condition(&self, mention: &Mention) -> bool {
        let article =
            mention.from.checked_sub(1).filter(|i| matches!(self.text(*i), "a" | "an" | "the" | "your"));
        let lead = article.unwrap_or(mention.from).checked_sub(1);
        lead.is_some_and(|lead| matches!(self.text(lead), "as" | "if" | "once" | "when"))
    }

    /// "Check the charge and, *if it is below 3 bar*, pump it up": whether a token stands in a condition, whose figures are
    /// no limits. "Check *if* it is below 3 bar" asks for it.
    pub(super) fn is_in_condition(&self, at: usize) -> bool {
        let begins = |i: usize| self.tokens.get(i).is_none_or(|token| token.before != Break::None);
        let asks = |i: usize| self.clauses.iter().any(|clause| clause.phrase.contains(&i));
        for i in (0..at).rev() {
            if matches!(self.text(i), "if" | "unless") && i.checked_sub(1).is_none_or(|before| !asks(before))
            {
                return true;
            }
            if begins(i + 1) {
                return false;
            }
        }
        false
    }
}
