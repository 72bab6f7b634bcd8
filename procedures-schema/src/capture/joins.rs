//! What an action that a line says belongs to, where the line has said it or a part of it before.

use super::reader::Reader;
use crate::model::{Action, Id, Verb};

impl Reader<'_> {
    /// Takes a proof into the one before it: "prove it at zero: gauge 0 bar, no flow" is one proof.
    pub(super) fn joins_last_proof(&mut self, action: &Action) -> bool {
        let circuit = |on: &[Id]| {
            let [only] = on else { return None };
            let is_it = |id: &Id| id == only;
            let mut circuits = self.map.circuits.iter();
            circuits.find(|c| is_it(&c.id) || c.sections.iter().any(|s| is_it(&s.id))).map(|c| c.id.clone())
        };
        let of_circuit = circuit(&action.on);
        let Some(last) = self.reading.actions.last().filter(|last| last.verb == Verb::Prove) else {
            return false;
        };
        let one_place = last.at.is_none() || action.at.is_none() || last.at == action.at;
        if action.verb != Verb::Prove || of_circuit.is_none() || circuit(&last.on) != of_circuit || !one_place
        {
            return false;
        }
        let asked: Vec<&str> = action
            .on
            .first()
            .and_then(|id| self.kind_of(id))
            .and_then(crate::simulate::kind_row)
            .map(|row| row.proof.iter().map(|reading| reading.what).collect())
            .unwrap_or_default();
        let Some(last) = self.reading.actions.last_mut() else { return false };
        last.on.clone_from(&action.on);
        last.at = last.at.take().or_else(|| action.at.clone());
        let new = action.readings.iter().filter(|new| last.readings.iter().all(|old| old.what != new.what));
        let new: Vec<_> = new.cloned().collect();
        last.readings.extend(new);
        // What was said late belongs where the kind has it: the tester is proved before the pairs.
        if last.readings.iter().all(|reading| asked.contains(&reading.what.as_str())) {
            last.readings.sort_by_key(|reading| asked.iter().position(|what| *what == reading.what));
        }
        last.says.extend(action.says.iter().copied());
        last.says.sort_unstable_by_key(|span| span.0);
        true
    }

    /// Takes the torque of "put the bolts in and tighten them to 6 Nm" into the making.
    pub(super) fn joins_making(&mut self, action: &Action) -> bool {
        let is_it =
            |made: &&mut Action| made.verb == Verb::Make && made.on == action.on && made.torque.is_none();
        // "Reconnect the nuts and nip them up to 30 Nm" makes them once.
        let again = action.verb == Verb::Make && action.torque.is_some();
        if action.verb != Verb::Tighten && !again {
            return false;
        }
        let Some(made) = self.reading.actions.iter_mut().rev().find(is_it) else { return false };
        made.torque.clone_from(&action.torque);
        made.pattern = made.pattern.take().or_else(|| action.pattern.clone());
        made.says.extend(action.says.iter().copied());
        made.says.sort_unstable_by_key(|span| span.0);
        true
    }

    /// "Pull the fan forward, lift it out": what this line has said of the same things is not said twice.
    pub(super) fn is_said_already(&self, action: &Action, possible: bool) -> bool {
        let is_it = |said: &Action| said.verb == action.verb && said.on == action.on;
        if action.verb == Verb::Start && action.mode.is_none() {
            return self.reading.actions.last().is_some_and(|last| last.verb == Verb::Start);
        }
        let again = !possible || matches!(action.verb, Verb::Release | Verb::Lock | Verb::Purge);
        again && !action.on.is_empty() && self.reading.actions.iter().any(is_it)
    }
}
