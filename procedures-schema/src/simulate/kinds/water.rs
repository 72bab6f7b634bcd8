//! Rows of water and stored heat.

use super::{
    Contents, Energies, Hazard, KindRow, NOTHING, PRACTICE, PRESSURE_AND_HEAT, ProofReading, SCALD,
    TestDemand,
};
use super::{any, reading, row, seen};
use crate::model::{CircuitKind, TestKind};
use crate::units::Unit;

const COLD: TestDemand = &[any(TestKind::LeakCold)];
const HOT: TestDemand = &[any(TestKind::LeakHot)];
const COLD_OR_HOT: TestDemand = &[any(TestKind::LeakCold), any(TestKind::LeakHot)];

const HEATING_PROOF: &[ProofReading] = &[
    reading("gauge", ("0.0", "0.1", Unit::Bar), PRACTICE),
    seen("flow at the open vent or drain", "none for 60 s", PRACTICE),
    reading("water temperature", ("0", "43", Unit::Celsius), SCALD),
];
const HEATING_AFTER_FILLING: &[TestDemand] = &[&[any(TestKind::FillPressure)]];

pub(super) static HEATING: KindRow = {
    let mut heating = row(CircuitKind::HeatingWater, Hazard::Pressure);
    heating.stores = PRESSURE_AND_HEAT;
    heating.life_minutes = Some(30);
    heating.fills_vented = true;
    heating.start_from = &[Contents::Medium];
    heating.proof = HEATING_PROOF;
    heating.after_joint = &[COLD, HOT];
    heating.after_joint_of_empty = RELIEVED;
    heating.after_port = &[COLD_OR_HOT];
    heating.after_filling = HEATING_AFTER_FILLING;
    heating
};

const DOMESTIC_PROOF: &[ProofReading] = &[
    reading("gauge or hot tap", ("0.0", "0.1", Unit::Bar), PRACTICE),
    seen("hot tap", "runs dry, no flow for 60 s", PRACTICE),
    reading("water temperature", ("0", "43", Unit::Celsius), SCALD),
];

/// A discharge pipe carries water only while its relief device is lifted.
const RELIEVED: &[TestDemand] = &[&[any(TestKind::ReliefLever)]];

pub(super) static DOMESTIC: KindRow = {
    let mut domestic = row(CircuitKind::DomesticWater, Hazard::Pressure);
    domestic.stores = PRESSURE_AND_HEAT;
    domestic.life_minutes = Some(30);
    domestic.fills_vented = true;
    domestic.start_from = &[Contents::Medium];
    domestic.proof = DOMESTIC_PROOF;
    domestic.after_joint = &[COLD];
    domestic.after_joint_of_empty = RELIEVED;
    domestic.after_port = &[COLD_OR_HOT];
    domestic
};

const CONDENSATE_AFTER_JOINT: &[TestDemand] = &[&[any(TestKind::TrapFilled)]];

pub(super) static CONDENSATE: KindRow = {
    let mut condensate = row(CircuitKind::Condensate, Hazard::Pressure);
    condensate.only_off = true;
    condensate.start_from = &[Contents::Medium];
    condensate.after_joint = CONDENSATE_AFTER_JOINT;
    condensate
};

const STORED_HEAT_PROOF: &[ProofReading] = &[reading(
    "surface temperature",
    ("0", "48", Unit::Celsius),
    "EN ISO 13732-1, burn threshold for 10 min on bare metal (from memory)",
)];

pub(super) static STORED_HEAT: KindRow = {
    let mut heat = row(CircuitKind::StoredHeat, Hazard::Pressure);
    heat.stores = Energies { heat: true, ..NOTHING };
    heat.life_minutes = Some(30);
    heat.ages_open = true;
    heat.proof = STORED_HEAT_PROOF;
    heat
};

const NETWORK: &str = "design value, common practice, no source; the operator's rules come first";

const NETWORK_PRIMARY_PROOF: &[ProofReading] = &[
    reading("gauge", ("0.0", "0.1", Unit::Bar), NETWORK),
    seen("flow", "none for 5 min", NETWORK),
    reading("water temperature", ("0", "43", Unit::Celsius), SCALD),
];

pub(super) static NETWORK_PRIMARY: KindRow = {
    let mut network = row(CircuitKind::NetworkPrimary, Hazard::Pressure);
    network.locks = true;
    network.stores = PRESSURE_AND_HEAT;
    network.life_minutes = Some(30);
    network.heat_with_supply = true;
    network.tightened_off = true;
    network.proof = NETWORK_PRIMARY_PROOF;
    network.after_joint = &[COLD, HOT];
    network.after_port = &[COLD_OR_HOT];
    network
};
