//! What is opened or closed may be a valve that shuts something off or a cock that lets something out: "close *the valve*"
//! where a bypass valve and a drain valve stand open.

use super::clause::Clause;
use super::reader::{Proposal, Reader};
use crate::model::{Id, ThingKind, Verb};

/// What is done to an isolator and what to a connection by the same word.
const ALIKE: &[(Verb, Verb)] = &[(Verb::Isolate, Verb::Make), (Verb::Restore, Verb::Undo)];

impl Reader<'_> {
    /// The best reading of a clause; where a part of a name says an isolator as well as a connection, and both can be worked
    /// here, which of them is asked for.
    pub(super) fn of_both_sorts(&self, clause: &Clause, mut best: Proposal) -> Proposal {
        let verb = &best.action.verb;
        let other = ALIKE.iter().find_map(|(one, other)| match verb {
            _ if verb == one => Some(other),
            _ if verb == other => Some(one),
            _ => None,
        });
        let is_whole = || {
            let said = |at: usize| best.said_by.contains(&at);
            self.mentions_in(clause).any(|mention| mention.whole && said(mention.from))
        };
        let is_single = |one: &Proposal| one.possible && one.choices.is_empty() && one.action.on.len() == 1;
        let Some(other) = other.filter(|other| clause.means.contains(other)) else { return best };
        if !is_single(&best) || is_whole() {
            return best;
        }
        let rival = self.thing_verb(clause, other).filter(is_single);
        let rival = rival.filter(|rival| rival.said_by == best.said_by);
        if let Some(rival) = rival.filter(|rival| rival.action.on != best.action.on) {
            let last = best.said_by.iter().max().copied().unwrap_or(clause.verb());
            best.doubtful = Some((last, last + 1));
            best.choices = best.action.on.drain(..).chain(rival.action.on).collect();
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
            _ => {}
        }
        let alike =
            ALIKE.iter().find(|(of_isolator, of_connection)| verb == of_isolator || verb == of_connection);
        alike.map_or_else(
            || verb.clone(),
            |(of_isolator, of_connection)| if is_connection { of_connection } else { of_isolator }.clone(),
        )
    }
}
