//! A hose that is led somewhere: "push a hose on to the drain cock, lead it into a bucket and open the drain cock"
//! lets the circuit out, and says where it goes.

use super::clause::Clause;
use super::reader::{Proposal, Reader};
use crate::model::{Action, Connection, Energy, Means, Port, ThingKind, Verb};

impl Reader<'_> {
    /// Whether a clause leads something somewhere; by itself that lets nothing out.
    pub(super) fn leads(&self, clause: &Clause) -> bool {
        is_lead(self.text(clause.verb())) && clause.means.contains(&Verb::Release)
    }

    /// The release that opening a drain is, if the line has led a hose away before, or a hose is on it.
    pub(super) fn let_out_by_hose(&self, clause: &Clause) -> Option<Proposal> {
        if !clause.means.contains(&Verb::Undo) || !self.text(clause.verb()).starts_with("open") {
            return None;
        }
        let led = self.clauses.iter().find(|other| other.verb() < clause.verb() && self.leads(other));
        let drain = self.drain_opened(clause)?;
        if led.is_none() && !self.has_hose(&drain.id) {
            return None;
        }
        let section = drain.section.clone()?;
        let mut circuits = self.map.circuits.iter();
        let circuit = circuits.find(|circuit| circuit.sections.iter().any(|known| known.id == section))?;
        let on = if circuit.sections.len() == 1 { circuit.id.clone() } else { section };
        let action = Action {
            what: Some(Energy::Pressure),
            by: Some(Means::Drain),
            through: Some(drain.id.clone()),
            vent: self.vent_opened(clause, drain.section.as_ref()),
            to: led.and_then(|led| {
                let outside = || self.has(led, &["outside"]).then(|| "outside".into());
                self.after(led, &["into", "to"]).or_else(outside)
            }),
            ..Action::new(Verb::Release, vec![on])
        };
        let said_by = led.iter().flat_map(|led| &led.phrase).chain(&clause.phrase).copied().collect();
        Some(Proposal { action, choices: Vec::new(), doubtful: None, possible: true, said_by })
    }

    /// The vent of the same section that a clause opens beside its drain: "open the drain cock *and the air vent*".
    fn vent_opened(&self, clause: &Clause, section: Option<&crate::model::Id>) -> Option<crate::model::Id> {
        let joints = self.mentions_in(clause).filter_map(|mention| self.connection(mention));
        let vent = joints
            .into_iter()
            .find(|joint| joint.port == Some(Port::Vent) && joint.section.as_ref() == section);
        vent.map(|vent| vent.id.clone())
    }

    /// The drain that a clause opens: named, or "it" behind the hose that was put on it.
    fn drain_opened(&self, clause: &Clause) -> Option<&Connection> {
        let is_drain = |joint: &&Connection| joint.port == Some(Port::Drain);
        let direct = self
            .mentions_in(clause)
            .find(|mention| mention.from > clause.verb() && self.preposition(mention).is_none());
        if let Some(mention) = direct {
            let vents_first = self.connection(mention).is_some_and(|joint| joint.port == Some(Port::Vent));
            let all = self.mentions_in(clause).filter(|mention| mention.from > clause.verb());
            if vents_first {
                // "Open the air vent and the drain cock."
                return all.filter_map(|mention| self.connection(mention)).find(is_drain);
            }
            return self.connection(mention).filter(is_drain);
        }
        self.object_pronoun(clause)?;
        let last = self.last_or_under(ThingKind::Connection);
        let [only] = last.as_slice() else { return None };
        self.map.connection(&only.id).filter(is_drain)
    }
}

/// Whether a word leads: "lead it into a bucket".
pub(super) fn is_lead(word: &str) -> bool {
    matches!(word, "lead" | "leading" | "led" | "run")
}
