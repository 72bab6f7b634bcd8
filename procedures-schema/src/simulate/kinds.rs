//! The circuit kinds: one row each, from which every demand is read.
//!
//! Adding a kind is adding a row and its fixtures; the simulator does not change. Each value carries where
//! it comes from. "Common practice, no source" marks trade practice without a published source; "from
//! memory" marks figures that nobody has yet compared with the text of the standard. A document may set
//! tighter limits; local codes and the maker's instructions come first.

use super::state::Energies;
use crate::model::{CircuitKind, TestKind};
use crate::units::Unit;

/// Which family of rules speaks about a circuit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Hazard {
    /// Electricity, movement, air and flue.
    Isolation,
    /// Fuel gas.
    Gas,
    /// Everything under pressure.
    Pressure,
}

/// One reading of a proof, with its default acceptance.
#[derive(Clone, Debug, PartialEq)]
pub struct ProofReading {
    /// What is read.
    pub what: &'static str,
    /// Smallest and largest accepted figure with their unit; none for an observation.
    pub limits: Option<(&'static str, &'static str, Unit)>,
    /// What must be seen, for an observation.
    pub seen: &'static str,
    /// Where the limit comes from.
    pub source: &'static str,
}

/// One demand for a test after a joint was made: any of these satisfies it.
pub type TestDemand = &'static [TestKind];

/// What a kind of circuit asks for.
#[derive(Debug)]
pub struct KindRow {
    /// The kind.
    pub kind: CircuitKind,
    /// The family of rules.
    pub hazard: Hazard,
    /// Whether its closed isolators must be locked before anything is touched.
    pub locks: bool,
    /// What a section stores in service.
    pub stores: Energies,
    /// Whether the circuit keeps its own pressure, so that a section is fed by its neighbours.
    pub closed_system: bool,
    /// The readings that prove it, in order.
    pub proof: &'static [ProofReading],
    /// Tests after a joint was made.
    pub after_joint: &'static [TestDemand],
    /// Tests after a joint behind an automatic valve was made.
    pub after_joint_behind_automatic: &'static [TestDemand],
    /// Tests after a connector was made.
    pub after_connector: &'static [TestDemand],
    /// Tests after a drain, vent, test or fill port was closed.
    pub after_port: &'static [TestDemand],
    /// Tests after a section was released, filled or purged.
    pub after_filling: &'static [TestDemand],
    /// Whether the hands are in danger from it as soon as what covers it is off.
    pub guarded: bool,
}

const NOTHING: Energies = Energies { pressure: false, heat: false, charge: false, motion: false };

const VOLTS: Option<(&str, &str, Unit)> = Some(("0", "5", Unit::Volt));
const DEAD: &str = "each pair at most 5 V: design value, common practice, no source; order of proving \
    after HSE GS38 and HSG85 (secondary)";

static MAINS: KindRow = KindRow {
    kind: CircuitKind::MainsElectricity,
    hazard: Hazard::Isolation,
    locks: true,
    stores: NOTHING,
    closed_system: false,
    proof: &[
        ProofReading { what: "tester on a known source", limits: None, seen: "shows live", source: DEAD },
        ProofReading { what: "L to N", limits: VOLTS, seen: "", source: DEAD },
        ProofReading { what: "L to E", limits: VOLTS, seen: "", source: DEAD },
        ProofReading { what: "N to E", limits: VOLTS, seen: "", source: DEAD },
        ProofReading {
            what: "tester on the known source again",
            limits: None,
            seen: "shows live",
            source: DEAD,
        },
    ],
    after_joint: &[&[TestKind::EarthContinuity], &[TestKind::Polarity], &[TestKind::Function]],
    after_joint_behind_automatic: &[],
    after_connector: &[&[TestKind::Function]],
    after_port: &[],
    after_filling: &[],
    guarded: true,
};

const GAS_ZERO: &str = "no perceptible movement, 0.2 mbar on an electronic gauge: IGEM/UP/1B, let-by test \
    (secondary, weak)";

static GAS: KindRow = KindRow {
    kind: CircuitKind::FuelGas,
    hazard: Hazard::Gas,
    locks: false,
    stores: NOTHING,
    closed_system: false,
    proof: &[
        ProofReading {
            what: "gauge at the test point, vented",
            limits: Some(("0", "0.2", Unit::Millibar)),
            seen: "",
            source: GAS_ZERO,
        },
        ProofReading {
            what: "rise in 60 s",
            limits: Some(("0", "0.2", Unit::Millibar)),
            seen: "",
            source: GAS_ZERO,
        },
    ],
    after_joint: &[&[TestKind::Tightness], &[TestKind::LeakFluid]],
    after_joint_behind_automatic: &[&[TestKind::LeakFluid, TestKind::Combustion]],
    after_connector: &[],
    after_port: &[&[TestKind::LeakFluid]],
    after_filling: &[],
    guarded: false,
};

static HEATING: KindRow = KindRow {
    kind: CircuitKind::HeatingWater,
    hazard: Hazard::Pressure,
    locks: false,
    stores: Energies { pressure: true, heat: true, charge: false, motion: false },
    closed_system: true,
    proof: &[
        ProofReading {
            what: "gauge",
            limits: Some(("0.0", "0.1", Unit::Bar)),
            seen: "",
            source: "design value, common practice, no source",
        },
        ProofReading {
            what: "flow at the open vent or drain",
            limits: None,
            seen: "none for 60 s",
            source: "design value, common practice, no source",
        },
        ProofReading {
            what: "water temperature",
            limits: Some(("0", "43", Unit::Celsius)),
            seen: "",
            source: "design value from scald tables after Moritz and Henriques 1947 (secondary)",
        },
    ],
    after_joint: &[&[TestKind::LeakCold], &[TestKind::LeakHot]],
    after_joint_behind_automatic: &[],
    after_connector: &[],
    after_port: &[&[TestKind::LeakCold, TestKind::LeakHot]],
    after_filling: &[&[TestKind::FillPressure]],
    guarded: false,
};

static ROWS: [&KindRow; 3] = [&MAINS, &GAS, &HEATING];

/// The row of a kind; none for kinds that are kept and not judged yet.
pub fn kind_row(kind: &CircuitKind) -> Option<&'static KindRow> {
    ROWS.into_iter().find(|row| row.kind == *kind)
}
