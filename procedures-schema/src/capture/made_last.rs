//! "Refit the pump with its bolts *and torque to 25 Nm*": what a sentence has made up last is tightened, though no word names it
//! again.

use super::clause::Clause;
use super::coin;
use super::reader::{Proposal, Reader};
use crate::model::Verb;
use crate::units::Quantity;

/// What may stand between the verb and its figure.
const BETWEEN: &[&str] = &["all", "at", "down", "evenly", "home", "to", "up"];

impl Reader<'_> {
    /// Adds what the action before has made up, where a clause names nothing but a torque.
    pub(super) fn add_made_last(&self, clause: &Clause, proposal: &mut Proposal) {
        let torque = self.quantities(clause).find(|quantity| quantity.range(Quantity::Torque).is_some());
        let Some(torque) = torque.filter(|_| proposal.action.verb == Verb::Tighten) else { return };
        let is_led = (clause.verb() + 1..torque.from).all(|i| BETWEEN.contains(&self.text(i)));
        let is_next = clause.verb().checked_sub(1).is_some_and(|i| matches!(self.text(i), "and" | "then"));
        let made = self.reading().actions.last().filter(|last| last.verb == Verb::Make);
        if let Some(made) = made.filter(|_| is_led && is_next && coin::phrases(self, clause).is_empty()) {
            proposal.action.on.clone_from(&made.on);
        }
    }
}
