//! Why an action is done to this thing, where its words could name others too: for whoever looks at what was read.

use super::clause::Clause;
use super::here::Here;
use super::reader::Reader;
use super::refer::{fitting, nearest};
use crate::lexicon::Lexicon;
use crate::model::{Action, ApplianceMap, Id, Stage};
use crate::notation::entry;

/// Why a thing was taken and not another that the words can name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reason {
    /// It is the only one of so many to which it can be done there.
    OnlyPossible {
        /// How many the words can name.
        of: usize,
    },
    /// Of so many to which it can be done there it is the one that was touched last.
    TouchedLast {
        /// To how many it can be done.
        of: usize,
    },
}

/// Why an action of a line is done to its only thing; none where its words can name no other, or where somebody has
/// said which is meant.
pub fn reason(words: &str, map: &ApplianceMap, here: Here, stage: &Stage, action: &Action) -> Option<Reason> {
    let lexicon = Lexicon::for_language("en")?;
    Reader::new(words, map, here, stage, lexicon).reason(action)
}

impl Reader<'_> {
    fn reason(mut self, action: &Action) -> Option<Reason> {
        let [only] = action.on.as_slice() else { return None };
        let is_said =
            |span: crate::model::Span| action.says.iter().any(|said| said.0 <= span.0 && span.1 <= said.1);
        let is_its = |clause: &&Clause| is_said(self.span(clause.verb(), clause.verb() + 1));
        let clause = self.clauses.iter().find(is_its)?.clone();
        for earlier in self.clauses.clone().iter().filter(|earlier| earlier.verb() < clause.verb()) {
            for proposal in self.proposals(earlier) {
                self.take(proposal);
            }
        }
        let mention = self.mentions_in(&clause).find(|mention| {
            is_said(self.span(mention.from, mention.to))
                && mention.candidates.iter().any(|candidate| candidate.id == *only)
        })?;
        let kinds = entry(&action.verb)?.things.kinds;
        let ids = self.by_what_is_wanted(&clause, &action.verb, kinds, mention, |wanted| {
            fitting(&mention.candidates, wanted)
        });
        let possible: Vec<Id> =
            ids.iter().filter(|id| self.here.is_possible(&action.verb, id)).cloned().collect();
        match possible.as_slice() {
            [one] if one == only && ids.len() > 1 => Some(Reason::OnlyPossible { of: ids.len() }),
            [_, _, ..] if nearest(&self.here, &possible).as_ref() == Some(only) => {
                Some(Reason::TouchedLast { of: possible.len() })
            }
            _ => None,
        }
    }
}
