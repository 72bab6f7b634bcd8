//! What a rule may look at, and the names it uses for it.

use crate::model::{Action, Id, Procedure, Step};
use crate::simulate::{IsolatorCell, Place, SectionCell, Thing, Trace};

/// A document with its trace.
pub(super) struct Context<'c> {
    pub(super) procedure: &'c Procedure,
    pub(super) trace: &'c Trace,
}

impl<'c> Context<'c> {
    /// The step executed at a place.
    pub(super) fn step_at(&self, place: Place) -> Option<&'c Step> {
        let position = self.trace.run().steps().get(place.execution()?)?;
        self.procedure.steps.get(*position).map(AsRef::as_ref)
    }

    /// The id of the step executed at a place.
    pub(super) fn step_id_at(&self, place: Place) -> Option<Id> {
        self.step_at(place).map(|step| step.id.clone())
    }

    /// The action carried out at a place.
    pub(super) fn action_at(&self, place: Place) -> Option<&'c Action> {
        self.step_at(place)?.actions.get(place.action()?)
    }

    /// "step 4", or "the start" or "the end".
    pub(super) fn step_name(&self, place: Place) -> String {
        match place.execution().and_then(|execution| self.trace.run().steps().get(execution)) {
            Some(position) => format!("step {}", position + 1),
            None if place == Place::END => "the end".to_owned(),
            None => "the start".to_owned(),
        }
    }

    /// The name of a thing, with its article.
    pub(super) fn the(&self, thing: Thing) -> String {
        self.trace.plant().id_of(thing).map_or_else(|| "a thing".to_owned(), |id| self.the_id(id))
    }

    /// The name of what an id stands for, with its article.
    pub(super) fn the_id(&self, id: &Id) -> String {
        let name = self.procedure.map.name_of(id);
        if name.starts_with("the ") { name.to_owned() } else { format!("the {name}") }
    }

    /// The name of a section: that of its circuit if the circuit has only this one.
    pub(super) fn the_section(&self, section: SectionCell) -> String {
        let circuit = self.trace.plant().circuit_of(section);
        match circuit {
            Some(circuit) if circuit.sections.len() == 1 => self.the_id(&circuit.id),
            _ => self.the(Thing::Section(section)),
        }
    }

    /// "the flow valve and the return valve".
    pub(super) fn the_isolators(&self, isolators: &[IsolatorCell]) -> String {
        let names: Vec<String> = isolators.iter().map(|i| self.the(Thing::Isolator(*i))).collect();
        super::wording::listed(&names)
    }

    /// The id of a section's circuit.
    pub(super) fn circuit_id(&self, section: SectionCell) -> Option<Id> {
        self.trace.plant().circuit_of(section).map(|circuit| circuit.id.clone())
    }
}
