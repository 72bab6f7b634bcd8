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
    /// In the order of the map.
    things: Vec<(u32, Id, Thing)>,
    /// One more than the position of a thing, at the place that its number asks for or at the next that was
    /// free; nothing else where no thing is.
    // Invariant: a power of two of places, more than twice as many as things.
    places: Vec<u32>,
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
        let mut places = vec![0; (2 * things.len() + 1).next_power_of_two()];
        for (position, (number, ..)) in (1..).zip(&things) {
            let free = places_from(*number, places.len()).find(|at| places.get(*at) == Some(&0));
            if let Some(place) = free.and_then(|at| places.get_mut(at)) {
                *place = position;
            }
        }
        Self { things, places }
    }

    /// The thing with this id.
    pub(super) fn get(&self, id: &Id) -> Option<Thing> {
        let number = number_of(id);
        for at in places_from(number, self.places.len()) {
            let position = usize::try_from(self.places.get(at)?.checked_sub(1)?).ok()?;
            let (known_number, known, thing) = self.things.get(position)?;
            if *known_number == number && known == id {
                return Some(*thing);
            }
        }
        None
    }
}

/// The places that a number asks for, one after the other, among a power of two of them.
fn places_from(number: u32, n_places: usize) -> impl Iterator<Item = usize> {
    let first = usize::try_from(number).unwrap_or(0);
    (0..n_places).map(move |further| (first + further) & n_places.wrapping_sub(1))
}

/// A number for an id.
fn number_of(id: &Id) -> u32 {
    // The golden ratio spreads what is alike; the topmost bits are the best mixed.
    let mix = |number: u64, part: u64| (number ^ part).wrapping_mul(0x9E37_79B9_7F4A_7C15).rotate_left(29);
    let bytes = id.as_str().as_bytes();
    let (eights, rest) = bytes.as_chunks::<8>();
    let number = eights.iter().fold(0, |number, eight| mix(number, u64::from_le_bytes(*eight)));
    let rest = rest.iter().fold(0, |rest, byte| rest << 8 | u64::from(*byte));
    u32::try_from(mix(number, rest ^ 1 << 63) >> 16 & u64::from(u32::MAX)).unwrap_or(0)
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
