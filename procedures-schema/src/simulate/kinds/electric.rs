//! Rows of electricity and movement.

use super::{Energies, Hazard, KindRow, NOTHING, ProofReading, TestDemand, any, reading, row, seen};
use crate::model::{CircuitKind, TestKind};
use crate::units::Unit;

const DEAD: &str = "each pair at most 5 V: design value, common practice, no source; order of proving \
    after HSE GS38 and HSG85 (secondary)";
const FUNCTION: TestDemand = &[any(TestKind::Function)];

const MAINS_PROOF: &[ProofReading] = &[
    seen("tester on a known source", "shows live", DEAD),
    reading("L to N", ("0", "5", Unit::Volt), DEAD),
    reading("L to E", ("0", "5", Unit::Volt), DEAD),
    reading("N to E", ("0", "5", Unit::Volt), DEAD),
    seen("tester on the known source again", "shows live", DEAD),
];
const MAINS_AFTER_JOINT: &[TestDemand] =
    &[&[any(TestKind::EarthContinuity)], &[any(TestKind::Polarity)], FUNCTION];

pub(super) static MAINS: KindRow = {
    let mut mains = row(CircuitKind::MainsElectricity, Hazard::Isolation);
    mains.locks = true;
    mains.shut_down_first = true;
    mains.guarded = true;
    mains.powers = true;
    mains.proof = MAINS_PROOF;
    mains.after_joint = MAINS_AFTER_JOINT;
    mains.after_connector = &[FUNCTION];
    mains
};

/// Up to 50 V, fed by mains: dead when that is dead. Above, or fed from elsewhere, it is drawn with an
/// isolator of its own as mains.
pub(super) static CONTROL: KindRow = {
    let mut control = row(CircuitKind::ControlElectricity, Hazard::Isolation);
    control.after_joint = &[FUNCTION];
    control.after_connector = &[FUNCTION];
    control
};

const STILL: &str = "seen still, start attempt: HSG253 and ISO 14118 (from memory)";

const MOTION_PROOF: &[ProofReading] =
    &[seen("movement", "still", STILL), seen("start attempt", "nothing moves", STILL)];

pub(super) static MOTION: KindRow = {
    let mut motion = row(CircuitKind::StoredMotion, Hazard::Isolation);
    motion.stores = Energies { motion: true, ..NOTHING };
    motion.guarded = true;
    motion.hangs_on_running = true;
    motion.proof = MOTION_PROOF;
    motion.after_joint = &[FUNCTION];
    motion
};

const DC_BUS_PROOF: &[ProofReading] = &[reading(
    "d.c. across each capacitor",
    ("0", "50", Unit::Volt),
    "design value; IEC 60204-1 clause 6.2.4 allows 60 V (secondary); the life of 10 min is common \
     practice, no source",
)];

pub(super) static DC_BUS: KindRow = {
    let mut bus = row(CircuitKind::DcBus, Hazard::Isolation);
    bus.stores = Energies { charge: true, ..NOTHING };
    bus.guarded = true;
    bus.waits = true;
    bus.life_minutes = Some(10);
    bus.ages_open = true;
    bus.proof = DC_BUS_PROOF;
    bus.after_joint = &[FUNCTION];
    bus.after_connector = &[FUNCTION];
    bus
};
