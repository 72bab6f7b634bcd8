//! What is true at one moment, a table for each sort of thing, by id.

use procedures_schema::model::{ApplianceMap, Circuit, Energy, Id, Mode, Position};
use procedures_schema::simulate::{Contents, Energies, KindRow, Lapse, Place, Whereabouts, kind_row};
use std::collections::{BTreeMap, BTreeSet};

/// The whole appliance at one moment.
#[derive(Clone)]
pub struct World {
    pub second: u32,
    pub mode: Option<Mode>,
    pub mode_since: u32,
    pub worked: Option<Place>,
    pub ended: Option<Mode>,
    pub open_isolators: BTreeSet<Id>,
    pub locked: BTreeSet<Id>,
    pub sections: BTreeMap<Id, Inside>,
    pub connections: BTreeMap<Id, Held>,
    pub components: BTreeMap<Id, Part>,
    pub seals: BTreeMap<Id, SealOf>,
    pub placed: BTreeSet<Id>,
    pub settings: BTreeMap<Id, Dial>,
    /// Kind and mode of a test, thing, when it passed.
    pub passed: BTreeMap<(String, Id), Place>,
}

/// A section.
#[derive(Clone)]
pub struct Inside {
    pub stored: Energies,
    pub contents: Contents,
    pub proved: Option<u32>,
    pub lapsed: Option<Lapse>,
    pub off_since: Option<u32>,
    pub filled: Option<Place>,
}

/// A connection.
#[derive(Clone, Default)]
pub struct Held {
    pub made: u32,
    pub slack: u32,
    pub open: u32,
    pub touched: Option<Place>,
    pub opened: Option<Place>,
    pub disturbed: bool,
    pub most_open: u32,
    pub marked: bool,
    pub again: bool,
}

impl Held {
    pub fn is_made(&self) -> bool {
        self.slack + self.open == 0
    }
}

/// A component.
#[derive(Clone)]
pub struct Part {
    pub place: Whereabouts,
    pub new: bool,
    pub carried: bool,
    pub put_over: bool,
    pub touched: Option<Place>,
    pub cleaned: Option<Place>,
    pub inspected: Option<Place>,
}

/// A seal.
#[derive(Clone, Default)]
pub struct SealOf {
    pub inspected: Option<Place>,
    pub question: Option<Id>,
    pub renewed: Option<Place>,
}

/// A setting.
#[derive(Clone, Default)]
pub struct Dial {
    pub recorded: Option<Place>,
    pub set: Option<Place>,
    pub lost: bool,
    pub changed: bool,
}

impl World {
    /// Before the job: running, everything in its place, full and under pressure.
    pub fn before(map: &ApplianceMap) -> Self {
        let open = map.isolators.iter().filter(|isolator| isolator.normal != Position::Closed);
        let part = Part {
            place: Whereabouts::Fitted,
            new: false,
            carried: true,
            put_over: false,
            touched: None,
            cleaned: None,
            inspected: None,
        };
        Self {
            second: 0,
            mode: Some(Mode::Heat),
            mode_since: 0,
            worked: None,
            ended: None,
            open_isolators: open.map(|isolator| isolator.id.clone()).collect(),
            locked: BTreeSet::new(),
            sections: map.circuits.iter().flat_map(sections_of).collect(),
            connections: map
                .connections
                .iter()
                .map(|c| (c.id.clone(), Held { made: c.count, ..Held::default() }))
                .collect(),
            components: map.components.iter().map(|c| (c.id.clone(), part.clone())).collect(),
            seals: map.seals.iter().map(|seal| (seal.id.clone(), SealOf::default())).collect(),
            placed: map.temporary.iter().filter(|t| t.initially).map(|t| t.id.clone()).collect(),
            settings: map.settings.iter().map(|s| (s.id.clone(), Dial::default())).collect(),
            passed: BTreeMap::new(),
        }
    }

    /// The proof of a section is no longer good; one that never was stays what it is.
    pub fn lapse(&mut self, section: &Id, why: Lapse) {
        if let Some(inside) = self.sections.get_mut(section)
            && inside.proved.take().is_some()
        {
            inside.lapsed = Some(why);
        }
    }
}

fn sections_of(circuit: &Circuit) -> impl Iterator<Item = (Id, Inside)> {
    let stores = kind_row(&circuit.kind).map(|row| row.stores).unwrap_or_default();
    circuit.sections.iter().map(move |section| {
        let empty = section.normally_empty;
        let inside = Inside {
            stored: if empty { Energies::default() } else { stores },
            contents: if empty { Contents::Air } else { Contents::Medium },
            proved: None,
            lapsed: None,
            off_since: None,
            filled: None,
        };
        (section.id.clone(), inside)
    })
}

/// The row of the circuit that a section belongs to.
pub fn row_of(map: &ApplianceMap, section: &Id) -> Option<&'static KindRow> {
    circuit_of(map, section).and_then(|circuit| kind_row(&circuit.kind))
}

/// The circuit that a section belongs to.
pub fn circuit_of<'m>(map: &'m ApplianceMap, section: &Id) -> Option<&'m Circuit> {
    map.circuits.iter().find(|circuit| circuit.sections.iter().any(|s| s.id == *section))
}

/// The sections that an id stands for: itself, or all of a circuit.
pub fn sections_named(map: &ApplianceMap, id: &Id) -> Vec<Id> {
    let of_circuit = map.circuits.iter().find(|circuit| circuit.id == *id);
    match of_circuit {
        Some(circuit) => circuit.sections.iter().map(|s| s.id.clone()).collect(),
        None if circuit_of(map, id).is_some() => vec![id.clone()],
        None => Vec::new(),
    }
}

/// What is stored, less one energy.
pub fn less(stored: Energies, energy: &Energy) -> Energies {
    let mut left = stored;
    match energy {
        Energy::Pressure => left.pressure = false,
        Energy::Heat => left.heat = false,
        Energy::Charge => left.charge = false,
        Energy::Motion => left.motion = false,
        Energy::Other(_) => {}
    }
    left
}
