//! What is filled in the hand: "fill the trap with water and push it up" fills its circuit once it is back in place.

use super::clause::Clause;
use super::reader::{Proposal, Reader};
use crate::model::{Action, Id, Verb};
use crate::simulate::Whereabouts;

impl Reader<'_> {
    /// The fillings of parts that were loose when the line filled them and are in place at its end.
    pub(super) fn filled_by_hand(&self, clauses: &[Clause]) -> Vec<Proposal> {
        clauses.iter().filter_map(|clause| self.filling(clause)).collect()
    }

    fn filling(&self, clause: &Clause) -> Option<Proposal> {
        let is_fill = clause.means.first() == Some(&Verb::Charge);
        let direct = self
            .mentions_in(clause)
            .find(|mention| mention.from > clause.verb() && self.preposition(mention).is_none());
        let mention = direct.filter(|_| is_fill)?;
        let [part] = mention.candidates.as_slice() else { return None };
        let was_fitted = |action: &Action| action.verb == Verb::Fit && action.on.contains(&part.id);
        let fitted = self.reading().actions.iter().any(was_fitted);
        let is_in = self.here.components.get(&part.id) == Some(&Whereabouts::Fitted);
        let circuit = self.circuit_of_part(&part.id).filter(|_| fitted && is_in)?;
        let said_by = clause.phrase.iter().copied().chain(self.tokens_of(mention)).collect();
        let action = Action::new(Verb::Charge, vec![circuit]);
        Some(Proposal { action, choices: Vec::new(), doubtful: None, possible: true, said_by })
    }

    /// The circuit of a part's joints, if it is only one; else the condensate, if it is a trap.
    fn circuit_of_part(&self, part: &Id) -> Option<Id> {
        let joints = self.map.connections.iter().filter(|joint| joint.joins.contains(part));
        let mut circuits: Vec<&Id> = Vec::new();
        for section in joints.filter_map(|joint| joint.section.as_ref()) {
            let mut known = self.map.sections();
            let circuit = known.find(|(_, known)| known.id == *section).map(|(circuit, _)| &circuit.id);
            circuits.extend(circuit.filter(|id| !circuits.contains(id)));
        }
        match circuits.as_slice() {
            [only] => Some((*only).clone()),
            _ => None,
        }
    }
}
