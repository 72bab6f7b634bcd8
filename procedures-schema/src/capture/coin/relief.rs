//! What a relief device lets into: a stretch of its circuit that is empty in service, made with the device or with
//! a joint of its discharge pipe.

use super::bench::Bench;
use super::phrase::Phrase;
use crate::model::{Circuit, Handle, Id, Isolator, Position, Section, ThingKind};

const STRETCH: &str = "relief discharge";
const DEVICE: &str = "relief opening";

impl Bench<'_> {
    /// The section of a joint that was found to be on another: behind the relief device, if it is of a discharge
    /// pipe.
    pub(super) fn behind_relief(&mut self, phrase: &Phrase, near: &[String], section: Id) -> Id {
        let mut words = phrase.words.iter().chain(near);
        let discharges = words.any(|word| word == "discharge");
        let of_pipe = phrase.words.iter().chain(near).any(|word| matches!(word.as_str(), "pipe" | "pipes"));
        if !discharges || !of_pipe {
            return section;
        }
        let of = |circuit: &&Circuit| circuit.sections.iter().any(|known| known.id == section);
        let circuit = self.map.circuits.iter().find(of).map(|circuit| circuit.id.clone());
        circuit.and_then(|circuit| self.discharge_of(&circuit)).unwrap_or(section)
    }

    /// The stretch behind the relief device of a water circuit, made if there is none.
    pub(super) fn discharge_of(&mut self, circuit: &Id) -> Option<Id> {
        let known = self.map.circuits.iter().find(|known| known.id == *circuit)?;
        if !super::circuits::is_water(&known.kind) {
            return None;
        }
        if let Some(there) = known.sections.iter().find(|section| section.normally_empty) {
            return Some(there.id.clone());
        }
        let full = known.sections.first()?.id.clone();
        let (id, device) = (self.new_id(STRETCH), self.new_id(DEVICE));
        let mut stretch = Section::new(id.clone(), STRETCH);
        stretch.normally_empty = true;
        self.map_mut().circuits.iter_mut().find(|known| known.id == *circuit)?.sections.push(stretch);
        let mut isolator = Isolator::new(device, DEVICE, (full, id.clone()), Handle::Relief);
        isolator.normal = Position::Closed;
        self.note(&id, ThingKind::Section, STRETCH);
        self.note(&isolator.id, ThingKind::Isolator, DEVICE);
        self.map_mut().isolators.push(isolator);
        Some(id)
    }
}
