//! What a verb of sections acts on although it has no section: a trap that is filled on the bench, a bowl that is emptied.

use super::clause::Clause;
use super::coin::{self, Lead};
use super::mention::{Candidate, Mention};
use super::reader::Reader;
use crate::model::{Connection, Id, ThingKind, Verb};

impl Reader<'_> {
    /// Whether a clause acts on something that has no section: "fill the trap", "draw it down off the sump".
    pub(super) fn is_about_another_thing(&self, clause: &Clause, verb: &Verb) -> bool {
        let is_direct =
            |mention: &&Mention| mention.from > clause.verb() && self.preposition(mention).is_none();
        let is_part = |mention: &Mention| mention.candidates.iter().all(|c| c.kind == ThingKind::Component);
        let named = self.mentions_in(clause).find(is_direct).is_some_and(is_part);
        let lifts = clause.means.contains(&Verb::Remove) && self.object_pronoun(clause).is_some();
        // "Bleed *the pump*" lets the air out of what it is in.
        (named && *verb != Verb::Purge) || lifts || self.is_loose(clause)
    }

    /// "Fill the trap", "unscrew the lid of the trap and empty it": what holds something of its own, and what the
    /// line was about if that is no part of a circuit.
    pub(super) fn is_about_a_vessel(&self, clause: &Clause) -> bool {
        const VESSELS: &[&str] = &["bowl", "bucket", "siphon", "trap", "tray", "tundish"];
        let phrases = coin::phrases(self, clause);
        let direct = phrases.iter().find(|phrase| phrase.from > clause.verb() && phrase.lead == Lead::Direct);
        if let Some(direct) = direct {
            return VESSELS.contains(&direct.head_word().as_str());
        }
        let is_apart = |candidate: &Candidate| {
            let of_part =
                |joint: &&Connection| joint.joins.contains(&candidate.id) && joint.section.is_some();
            candidate.kind == ThingKind::Component
                && !self.map.connections.iter().any(|joint| of_part(&joint))
        };
        let before = self.here.changed_before().filter_map(|id| {
            Some(Candidate { id: id.clone(), kind: self.map.thing_kind(id)?, agrees: true })
        });
        let meant: Vec<Candidate> = if self.last.is_empty() { before.collect() } else { self.last.clone() };
        self.object_pronoun(clause).is_some() && !meant.is_empty() && meant.iter().all(is_apart)
    }

    /// Whether what a clause acts on has been taken off: a trap that is filled on the bench fills no circuit.
    pub(super) fn is_loose(&self, clause: &Clause) -> bool {
        let is_off = |id: &Id| self.here.components.get(id) == Some(&crate::simulate::Whereabouts::Off);
        let is_direct =
            |mention: &&Mention| mention.from > clause.verb() && self.preposition(mention).is_none();
        let mention = self.mentions_in(clause).find(is_direct);
        mention.is_some_and(|mention| mention.candidates.iter().all(|candidate| is_off(&candidate.id)))
    }
}
