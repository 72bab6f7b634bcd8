//! What is opened or closed may be a valve that shuts something off or a cock that lets something out: "close *the valve*"
//! where a bypass valve and a drain valve stand open.

use super::clause::Clause;
use super::reader::{Proposal, Reader};
use crate::model::{Id, ThingKind, Verb};

/// What is done to an isolator and what to a connection by the same word.
const ALIKE: &[(Verb, Verb)] = &[(Verb::Isolate, Verb::Make), (Verb::Restore, Verb::Undo)];

/// What is done to a joint that is slack and what to one that is open by the same word.
const BY_STATE: &[(Verb, Verb)] = &[(Verb::Tighten, Verb::Make)];

impl Reader<'_> {
    /// The best reading of a clause; where a part of a name says an isolator as well as a connection, and both can be worked
    /// here, which of them is asked for.
    pub(super) fn of_both_sorts(&self, clause: &Clause, mut best: Proposal) -> Proposal {
        let of = |pairs: &'static [(Verb, Verb)]| {
            let verb = &best.action.verb;
            let others = pairs.iter().filter_map(move |(one, other)| match verb {
                _ if verb == one => Some(other),
                _ if verb == other => Some(one),
                _ => None,
            });
            others.filter(|other| clause.means.contains(other)).collect::<Vec<_>>()
        };
        let (alike, by_state) = (of(ALIKE), of(BY_STATE));
        let by_state = alike.is_empty() && !by_state.is_empty();
        let other = if by_state { of(BY_STATE) } else { alike }.into_iter().next();
        let is_whole = || {
            let said = |at: usize| best.said_by.contains(&at);
            self.mentions_in(clause).any(|mention| mention.whole && said(mention.from))
        };
        let is_single = |one: &Proposal| one.possible && one.choices.is_empty() && one.action.on.len() == 1;
        let Some(other) = other else { return best };
        if !is_single(&best) || is_whole() {
            return best;
        }
        // What is slack can be made as well as tightened.
        let fits = |one: &Proposal| is_single(one) || (by_state && one.possible);
        let rival = self.thing_verb(clause, other).filter(fits);
        let rival = rival.filter(|rival| rival.said_by == best.said_by);
        let ids = rival.into_iter().flat_map(|rival| rival.action.on.into_iter().chain(rival.choices));
        let others: Vec<Id> = ids.filter(|id| !best.action.on.contains(id)).collect();
        if !others.is_empty() {
            let last = best.said_by.iter().max().copied().unwrap_or(clause.verb());
            best.doubtful = Some((last, last + 1));
            best.choices = best.action.on.drain(..).chain(others).collect();
            if by_state {
                best.action.verb = Verb::Tighten;
            }
        }
        best
    }

    /// The verb that a word means for this thing: a valve is shut off, a drain cock is closed.
    pub(super) fn verb_for(&self, verb: &Verb, id: &Id) -> Verb {
        let is_connection = self.map.connection(id).is_some();
        // "Refit it": a pipe is joined again, a cover is put on, a fuse is put in.
        match (verb, self.map.thing_kind(id)) {
            (Verb::Fit, Some(ThingKind::Connection)) => return Verb::Make,
            (Verb::Fit, Some(ThingKind::Isolator)) => return Verb::Restore,
            (Verb::Make, Some(ThingKind::Component)) => return Verb::Fit,
            // "Tighten the clip": one that has been taken off is put on.
            (Verb::Tighten, Some(ThingKind::Connection)) if self.is_open(id) => return Verb::Make,
            _ => {}
        }
        let alike =
            ALIKE.iter().find(|(of_isolator, of_connection)| verb == of_isolator || verb == of_connection);
        alike.map_or_else(
            || verb.clone(),
            |(of_isolator, of_connection)| if is_connection { of_connection } else { of_isolator }.clone(),
        )
    }

    fn is_open(&self, id: &Id) -> bool {
        self.here.connections.get(id).is_some_and(|here| here.open > 0 && here.slack == 0)
    }
}
