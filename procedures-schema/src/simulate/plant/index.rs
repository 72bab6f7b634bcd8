//! The things of a map by their ids.
//!
//! Every action looks up what it names. So ids are told apart by a number made of their letters, and only
//! those that share one are compared.

use super::{
    CircuitCell, ComponentCell, ConnectionCell, IsolatorCell, SealCell, SectionCell, SettingCell,
    TemporaryCell, Thing,
};
use crate::model::{ApplianceMap, Id};

/// Things by id.
#[derive(Clone, Debug, Default)]
pub(super) struct ThingIndex {
    // Invariant: sorted by the number; among equal ones, in the order of the map.
    things: Vec<(u32, Id, Thing)>,
}

impl ThingIndex {
    /// Every id of a map. Where two things share one, the first keeps it.
    pub(super) fn of(map: &ApplianceMap) -> Self {
        let mut things = Vec::with_capacity(map.things().count());
        let mut add = |id: &Id, thing: Thing| things.push((number_of(id), id.clone(), thing));
        let mut n_sections = 0;
        for (i, circuit) in map.circuits.iter().enumerate() {
            add(&circuit.id, Thing::Circuit(CircuitCell::new(i)));
            for section in &circuit.sections {
                add(&section.id, Thing::Section(SectionCell::new(n_sections)));
                n_sections += 1;
            }
        }
        for (i, x) in map.isolators.iter().enumerate() {
            add(&x.id, Thing::Isolator(IsolatorCell::new(i)));
        }
        for (i, x) in map.components.iter().enumerate() {
            add(&x.id, Thing::Component(ComponentCell::new(i)));
        }
        for (i, x) in map.connections.iter().enumerate() {
            add(&x.id, Thing::Connection(ConnectionCell::new(i)));
        }
        for (i, x) in map.seals.iter().enumerate() {
            add(&x.id, Thing::Seal(SealCell::new(i)));
        }
        for (i, x) in map.temporary.iter().enumerate() {
            add(&x.id, Thing::Temporary(TemporaryCell::new(i)));
        }
        for (i, x) in map.settings.iter().enumerate() {
            add(&x.id, Thing::Setting(SettingCell::new(i)));
        }
        things.sort_by_key(|(number, ..)| *number);
        Self { things }
    }

    /// The thing with this id.
    pub(super) fn get(&self, id: &Id) -> Option<Thing> {
        let number = number_of(id);
        let from = self.things.partition_point(|(known, ..)| *known < number);
        let alike = self.things.get(from..)?.iter().take_while(|(known, ..)| *known == number);
        alike.into_iter().find(|(_, known, _)| known == id).map(|(.., thing)| *thing)
    }
}

/// A number for an id.
fn number_of(id: &Id) -> u32 {
    // The golden ratio spreads what is alike.
    id.as_str().bytes().fold(0, |number: u32, byte| (number ^ u32::from(byte)).wrapping_mul(0x9E37_79B1))
}

#[cfg(test)]
mod tests {
    use super::{Id, Thing, ThingIndex};
    use crate::model::{ApplianceMap, Component};

    #[test]
    fn the_first_of_two_things_with_one_id_keeps_it() {
        let part = |id: &str, name: &str| Component::new(id.into(), name);
        let components = vec![part("pump", "pump"), part("lid", "lid"), part("pump", "other")];
        let index = ThingIndex::of(&ApplianceMap { components, ..ApplianceMap::default() });
        let at = |id: &str| match index.get(&Id::new(id)) {
            Some(Thing::Component(cell)) => Some(cell.index()),
            _ => None,
        };
        assert_eq!((at("pump"), at("lid"), at("pumps"), at("")), (Some(0), Some(1), None, None));
    }
}
