//! What "it" and "them" stand for: what the last clause was about, the part that its fasteners hold, or the only
//! thing named before.

use super::clause::Clause;
use super::mention::Candidate;
use super::reader::Reader;
use crate::model::{Id, ThingKind, Verb};

impl Reader<'_> {
    /// The things of these kinds that the pronoun of a clause stands for; none if that is not clear.
    pub(super) fn antecedents(&self, clause: &Clause, verb: &Verb, kinds: &[ThingKind]) -> Vec<Id> {
        let last: Vec<Id> = self.last_of(kinds).into_iter().map(|candidate| candidate.id).collect();
        if !last.is_empty() {
            return last;
        }
        // "Put a hose on the drain cock and open it."
        let under = self.last_or_under(ThingKind::Connection);
        if kinds.contains(&ThingKind::Connection) && !under.is_empty() {
            return under.into_iter().map(|candidate| candidate.id).collect();
        }
        if let Some(held) = self.held_by_last(verb, kinds) {
            return vec![held];
        }
        if !self.last.is_empty() {
            return Vec::new();
        }
        // "Wind tape on the thread of the new valve, screw it in."
        let before = self.mentions.iter().filter(|mention| mention.to <= clause.verb());
        let fits = |candidate: &&Candidate| {
            kinds.contains(&candidate.kind) && self.here.is_possible(verb, &candidate.id)
        };
        let mut named: Vec<Id> = Vec::new();
        for candidate in before.flat_map(|mention| &mention.candidates).filter(fits) {
            if !named.contains(&candidate.id) {
                named.push(candidate.id.clone());
            }
        }
        if named.len() == 1 { named } else { Vec::new() }
    }

    /// "Undo the screws of the cover and lift it off": the only part that the last connections hold.
    fn held_by_last(&self, verb: &Verb, kinds: &[ThingKind]) -> Option<Id> {
        if !kinds.contains(&ThingKind::Component) {
            return None;
        }
        let connections = self.last_of(&[ThingKind::Connection]);
        let joined = connections.iter().filter_map(|candidate| self.map.connection(&candidate.id));
        let mut held: Vec<&Id> = joined.flat_map(|connection| &connection.joins).collect();
        held.sort();
        held.dedup();
        held.retain(|id| self.here.is_possible(verb, id));
        match held.as_slice() {
            [only] => Some((*only).clone()),
            _ => None,
        }
    }
}
