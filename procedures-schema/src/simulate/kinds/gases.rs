//! Rows of fuel gas, air and flue, refrigerant, compressed air, steam and oil.

use super::{
    Contents, Hazard, KindRow, PRACTICE, PRESSURE, PRESSURE_AND_HEAT, ProofReading, TestDemand, any, at,
};
use super::{reading, row, seen};
use crate::model::{CircuitKind, Mode, TestKind};
use crate::units::Unit;

const GAS_ZERO: &str = "no perceptible movement, 0.2 mbar on an electronic gauge: IGEM/UP/1B, let-by test \
    (secondary, weak)";

const COMBUSTION_MAX: TestDemand = &[at(TestKind::Combustion, Mode::Max)];
const COMBUSTION_MIN: TestDemand = &[at(TestKind::Combustion, Mode::Min)];
const FLUE: TestDemand = &[any(TestKind::FlueIntegrity)];

const FUEL_GAS_PROOF: &[ProofReading] = &[
    reading("gauge at the test point, vented", ("0", "0.2", Unit::Millibar), GAS_ZERO),
    reading("rise in 60 s", ("0", "0.2", Unit::Millibar), GAS_ZERO),
];
const FUEL_GAS_AFTER_JOINT: &[TestDemand] = &[&[any(TestKind::Tightness)], &[any(TestKind::LeakFluid)]];
const FUEL_GAS_AFTER_JOINT_BEHIND_AUTOMATIC: &[TestDemand] =
    &[&[any(TestKind::LeakFluid), at(TestKind::Combustion, Mode::Max)]];
const FUEL_GAS_AFTER_PORT: &[TestDemand] = &[&[any(TestKind::LeakFluid)]];

pub(super) static FUEL_GAS: KindRow = {
    let mut gas = row(CircuitKind::FuelGas, Hazard::Gas);
    gas.shut_down_first = true;
    gas.life_minutes = Some(30);
    gas.ages_open = true;
    gas.opened_holds = Contents::Mixed;
    gas.start_from = &[Contents::Medium];
    gas.tightened_off = true;
    gas.proof = FUEL_GAS_PROOF;
    gas.after_joint = FUEL_GAS_AFTER_JOINT;
    // Firing loads it; on a premix burner foam would be drawn in, so the combustion figures show it.
    gas.after_joint_behind_automatic = FUEL_GAS_AFTER_JOINT_BEHIND_AUTOMATIC;
    gas.after_port = FUEL_GAS_AFTER_PORT;
    gas
};

pub(super) static AIR_AND_FLUE: KindRow = {
    let mut air = row(CircuitKind::AirAndFlue, Hazard::Isolation);
    air.only_off = true;
    air.hangs_on_running = true;
    air.after_joint = &[COMBUSTION_MAX, COMBUSTION_MIN, FLUE];
    air.after_sealed_fixing = &[COMBUSTION_MAX, COMBUSTION_MIN, FLUE];
    air
};

const REFRIGERANT_PROOF: &[ProofReading] = &[reading(
    "gauge on every port",
    ("0", "0", Unit::Bar),
    "common practice, no source; never loosened under pressure to let out",
)];
const REFRIGERANT_AFTER_JOINT: &[TestDemand] =
    &[&[any(TestKind::PressureHold)], &[any(TestKind::VacuumHold)], &[any(TestKind::LeakFluid)]];
const REFRIGERANT_AFTER_PORT: &[TestDemand] = &[&[any(TestKind::LeakFluid)]];

pub(super) static REFRIGERANT: KindRow = {
    let mut refrigerant = row(CircuitKind::Refrigerant, Hazard::Pressure);
    refrigerant.stores = PRESSURE;
    refrigerant.life_minutes = Some(30);
    refrigerant.open_from = &[Contents::Inert, Contents::Air, Contents::Residual];
    refrigerant.charge_from = &[Contents::Vacuum, Contents::Inert, Contents::Air];
    refrigerant.start_from = &[Contents::Medium];
    refrigerant.hangs_on_running = true;
    refrigerant.tightened_off = true;
    refrigerant.proof = REFRIGERANT_PROOF;
    refrigerant.after_joint = REFRIGERANT_AFTER_JOINT;
    refrigerant.after_port = REFRIGERANT_AFTER_PORT;
    refrigerant
};

const COMPRESSED_AIR_PROOF: &[ProofReading] = &[
    reading("gauge", ("0", "0", Unit::Bar), "ISO 4414 and ISO 14118 (from memory)"),
    seen("start attempt", "nothing moves", "ISO 14118 (from memory)"),
];
const COMPRESSED_AIR_AFTER_JOINT: &[TestDemand] = &[&[any(TestKind::LeakFluid)]];
const COMPRESSED_AIR_AFTER_PORT: &[TestDemand] = &[&[any(TestKind::LeakFluid)]];

pub(super) static COMPRESSED_AIR: KindRow = {
    let mut air = row(CircuitKind::CompressedAir, Hazard::Pressure);
    air.locks = true;
    air.stores = PRESSURE;
    air.life_minutes = Some(30);
    air.proof = COMPRESSED_AIR_PROOF;
    air.after_joint = COMPRESSED_AIR_AFTER_JOINT;
    air.after_port = COMPRESSED_AIR_AFTER_PORT;
    air
};

const STEAM_PROOF: &[ProofReading] = &[
    reading("gauge", ("0", "0", Unit::Bar), PRACTICE),
    seen("bleed", "open and clear", PRACTICE),
    reading("surface temperature", ("0", "60", Unit::Celsius), PRACTICE),
];
const STEAM_AFTER_JOINT: &[TestDemand] = &[&[any(TestKind::LeakHot)]];
const STEAM_AFTER_PORT: &[TestDemand] = &[&[any(TestKind::LeakHot)]];

pub(super) static STEAM: KindRow = {
    let mut steam = row(CircuitKind::Steam, Hazard::Pressure);
    steam.locks = true;
    steam.stores = PRESSURE_AND_HEAT;
    steam.life_minutes = Some(10);
    steam.heat_with_supply = true;
    steam.tightened_off = true;
    steam.proof = STEAM_PROOF;
    steam.after_joint = STEAM_AFTER_JOINT;
    steam.after_port = STEAM_AFTER_PORT;
    steam
};

const OIL_PROOF: &[ProofReading] = &[
    reading("gauge", ("0", "0", Unit::Bar), PRACTICE),
    seen("flow at the opened bleed", "none for 60 s", PRACTICE),
];
const OIL_AFTER_JOINT: &[TestDemand] = &[&[any(TestKind::LeakCold)]];
const OIL_AFTER_PORT: &[TestDemand] = &[&[any(TestKind::LeakCold)]];

pub(super) static OIL: KindRow = {
    let mut oil = row(CircuitKind::Oil, Hazard::Pressure);
    oil.stores = PRESSURE;
    oil.life_minutes = Some(30);
    oil.start_from = &[Contents::Medium];
    oil.proof = OIL_PROOF;
    oil.after_joint = OIL_AFTER_JOINT;
    oil.after_port = OIL_AFTER_PORT;
    oil
};
