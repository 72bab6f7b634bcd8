//! Instruments: what the limits of readings need. What an appliance shows by its own gauge needs none.

use super::widest::{finest, widen};
use super::{Done, Needed};
use crate::model::{Action, CircuitKind, Id, KitList, Port, Procedure, Reading, TestKind, Verb};
use crate::simulate::default_readings;
use crate::units::{Quantity, Range};

/// What reads a quantity. Common practice, no source.
const READERS: &[(Quantity, &str)] = &[
    (Quantity::Voltage, "two-pole voltage tester"),
    (Quantity::Resistance, "resistance meter"),
    (Quantity::Current, "ammeter"),
    (Quantity::Temperature, "thermometer"),
    (Quantity::Pressure, "manometer"),
    (Quantity::Mass, "scales"),
    (Quantity::Length, "rule or gauge"),
];

pub(super) fn instruments(procedure: &Procedure, done: &[Done<'_>]) -> Vec<Needed> {
    let mut all: Vec<Needed> = Vec::new();
    for one in done.iter().filter(|one| is_read(&one.action.verb)) {
        for reading in default_readings(procedure, one.action) {
            let Some(limits) = reading.limits.as_ref().filter(|_| reading.instrument.is_none()) else {
                continue;
            };
            if let Some(name) = reader(procedure, one.action, &reading, limits) {
                add(&mut all, name, limits, one.number);
            }
        }
    }
    all
}

fn is_read(verb: &Verb) -> bool {
    matches!(verb, Verb::Prove | Verb::Test | Verb::Read | Verb::Charge | Verb::Release | Verb::Purge)
}

fn reader(procedure: &Procedure, action: &Action, reading: &Reading, limits: &Range) -> Option<&'static str> {
    let kind = kind_of(procedure, action);
    match limits.unit.quantity() {
        _ if action.test == Some(TestKind::Combustion) => Some("flue gas analyser"),
        Quantity::Resistance if action.test == Some(TestKind::Insulation) => Some("insulation tester"),
        Quantity::Pressure if kind == Some(&CircuitKind::Refrigerant) => Some("service gauges"),
        // Water, air and oil mostly have a gauge of the appliance; where the reading is taken at a nipple, one is put on.
        Quantity::Pressure if kind != Some(&CircuitKind::FuelGas) && !is_at_nipple(procedure, action) => None,
        // Steam, flow and return pipes are read by what is fitted unless a thermometer is what the words name.
        Quantity::Mass if action.verb != Verb::Charge => None,
        Quantity::Fraction if kind == Some(&CircuitKind::AirAndFlue) => Some("flue gas analyser"),
        quantity if reading.seen.is_empty() => {
            READERS.iter().find(|(known, _)| *known == quantity).map(|(_, name)| *name)
        }
        _ => None,
    }
}

/// The kind of the circuit that an action is about.
fn kind_of<'p>(procedure: &'p Procedure, action: &Action) -> Option<&'p CircuitKind> {
    let section = |id: &Id| procedure.map.connection(id).and_then(|connection| connection.section.clone());
    action
        .on
        .iter()
        .chain(&action.at)
        .find_map(|id| {
            let sought = section(id).unwrap_or_else(|| id.clone());
            let is_it = |section: &crate::model::Section| section.id == sought;
            let circuits = &procedure.map.circuits;
            circuits.iter().find(|circuit| circuit.id == sought || circuit.sections.iter().any(is_it))
        })
        .map(|circuit| &circuit.kind)
}

fn is_at_nipple(procedure: &Procedure, action: &Action) -> bool {
    let port = action.at.as_ref().and_then(|at| procedure.map.connection(at)).and_then(|c| c.port.as_ref());
    matches!(port, Some(Port::Test | Port::Service | Port::Sample))
}

fn add(all: &mut Vec<Needed>, name: &str, limits: &Range, number: usize) {
    let fits = |known: &&mut Needed| {
        let quantity = known.range.as_ref().map(|range| range.unit.quantity());
        known.name == name && quantity == Some(limits.unit.quantity())
    };
    let finer = finest(limits);
    if let Some(known) = all.iter_mut().find(fits) {
        known.range = Some(widen(known.range.take(), limits));
        let is_finer = match (&known.resolution, &finer) {
            (Some(a), Some(b)) => a.unit == b.unit && b.value.value() < a.value.value(),
            (None, Some(_)) => true,
            _ => false,
        };
        if is_finer {
            known.resolution = finer;
        }
        known.at(number);
        return;
    }
    let mut needed = Needed::new(KitList::Instruments, name);
    needed.range = Some(widen(None, limits));
    needed.resolution = finer;
    needed.at(number);
    all.push(needed);
}
