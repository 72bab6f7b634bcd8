//! The kinds of tests: what each needs, what it loads, whether it is done by sight, when it is due.
//!
//! A test covers only what it loads, worked out from the isolators open at that moment. Adding a kind is
//! adding a row.

use super::kinds::{ProofReading, reading, seen as observed};
use crate::model::{CircuitKind, TestKind};
use crate::units::Unit;

/// What a test needs of the sections that it covers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Loading {
    /// Sections that no supply reaches.
    Dead,
    /// Sections that a supply reaches; automatic valves let through while the appliance runs.
    Fed,
    /// As `Fed` with automatic valves shut and the appliance off.
    FedBehindShutAutomatic,
    /// Filled sections under pressure.
    UnderPressure,
    /// Filled sections under pressure that have been hot since they were filled.
    UnderPressureHot,
    /// Sections filled, whether under pressure or not.
    Filled,
    /// Sections holding inert gas under pressure.
    Inert,
    /// Sections under vacuum.
    Vacuum,
    /// Sections behind a relief device of a full section under pressure.
    BehindRelief,
    /// Whatever the running appliance works.
    Running,
}

/// What a test stamps.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stamps {
    /// Joints, connectors and ports.
    Connections,
    /// Sections.
    Sections,
    /// Connections, parts and settings.
    All,
}

/// By when a demanded test must have passed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Due {
    /// Before the supply comes back.
    BeforeRestore,
    /// Before the medium is charged.
    BeforeCharge,
    /// Before the appliance starts.
    BeforeStart,
    /// By the end of the job.
    ByTheEnd,
}

/// One kind of test.
#[expect(clippy::struct_excessive_bools, reason = "columns of a table, read by name")]
#[derive(Debug)]
pub struct TestRow {
    /// The kind.
    pub kind: TestKind,
    /// The circuits that it concerns; none for the whole appliance.
    pub circuits: &'static [CircuitKind],
    /// What it needs.
    pub loading: Loading,
    /// Whether it covers only what can be seen at that moment.
    pub by_sight: bool,
    /// Whether the port at which it is taken is left out.
    pub not_at: bool,
    /// What it stamps.
    pub stamps: Stamps,
    /// By when it is due.
    pub due: Due,
    /// Minutes that the appliance must have run at the highest and at the lowest rate.
    pub settle: (u32, u32),
    /// Whether it shows fuel gas joints only on the burner side, where gas is mixed with air ahead of it: what
    /// leaks there shows in the figures. Elsewhere foam does.
    pub gas_by_mixture: bool,
    /// Whether the loaded sections must be shut but for where it is taken.
    pub shut: bool,
    /// What is read and seen where the document says nothing; none if only the plant's own figures decide.
    pub readings: &'static [ProofReading],
}

const MAINS: &[CircuitKind] = &[CircuitKind::MainsElectricity];
const GAS: &[CircuitKind] = &[CircuitKind::FuelGas];
const LEAKING: &[CircuitKind] = &[CircuitKind::FuelGas, CircuitKind::Refrigerant, CircuitKind::CompressedAir];
const BURNING: &[CircuitKind] = &[CircuitKind::AirAndFlue, CircuitKind::FuelGas];
const FLUE: &[CircuitKind] = &[CircuitKind::AirAndFlue];
const HEATING: &[CircuitKind] = &[CircuitKind::HeatingWater];
const WET: &[CircuitKind] = &[
    CircuitKind::HeatingWater,
    CircuitKind::DomesticWater,
    CircuitKind::NetworkPrimary,
    CircuitKind::Steam,
    CircuitKind::Oil,
];
const CONDENSATE: &[CircuitKind] = &[CircuitKind::Condensate];
const RELIEVED: &[CircuitKind] = &[CircuitKind::DomesticWater, CircuitKind::HeatingWater];
const REFRIGERANT: &[CircuitKind] = &[CircuitKind::Refrigerant];

const fn row(kind: TestKind, circuits: &'static [CircuitKind], loading: Loading, due: Due) -> TestRow {
    TestRow {
        kind,
        circuits,
        loading,
        by_sight: false,
        not_at: false,
        stamps: Stamps::Connections,
        due,
        settle: (0, 0),
        gas_by_mixture: false,
        shut: false,
        readings: &[],
    }
}

const fn reads(mut row: TestRow, readings: &'static [ProofReading]) -> TestRow {
    row.readings = readings;
    row
}

const PRACTICE: &str = "common practice, no source";

const CONTINUITY: &[ProofReading] = &[reading(
    "protective conductor",
    ("0", "0.2", Unit::Ohm),
    "0.1 Ω plus 0.1 Ω of test lead: IET Code of Practice for In-service Inspection and Testing (from memory)",
)];
const INSULATION: &[ProofReading] = &[reading(
    "live conductors joined, to earth",
    ("1", "", Unit::Megohm),
    "class I, without a heating element: IET Code of Practice (secondary, weak)",
)];
const POLARITY: &[ProofReading] = &[
    reading("L to N", ("216.2", "253", Unit::Volt), "230 V +10/-6 %: ESQC Regulations 2002 (from memory)"),
    reading("N to E", ("0", "5", Unit::Volt), PRACTICE),
];
const TIGHT: &[ProofReading] = &[
    reading("drop in 2 min", ("0", "0.2", Unit::Millibar), "pipework alone: IGEM/UP/1B (secondary)"),
    observed("smell", "none", "IGEM/UP/1B (secondary)"),
];
const BUBBLES: &[ProofReading] = &[observed("bubbles in 30 s", "none", PRACTICE)];
const AIR_CLEAN: &[ProofReading] = &[
    reading("O2 in the air intake", ("20.6", "", Unit::PerCent), PRACTICE),
    reading("CO2 in the air intake", ("0", "0.2", Unit::PerCent), PRACTICE),
];
const DRY_COLD: &[ProofReading] = &[
    reading("drop in 10 min", ("0", "0.05", Unit::Bar), PRACTICE),
    observed("dry tissue at each joint", "dry", PRACTICE),
];
const DRY: &[ProofReading] = &[observed("dry tissue at each joint", "dry", PRACTICE)];
const TRAP: &[ProofReading] = &[observed("trap", "full, dry outside", "BS 6798 (from memory)")];
const RESEATS: &[ProofReading] = &[observed("relief valve", "reseats, dry within 1 min", PRACTICE)];
const WORKS: &[ProofReading] = &[observed("what was worked on", "works", PRACTICE)];

const fn seen(mut row: TestRow) -> TestRow {
    row.by_sight = true;
    row
}

const fn stamping(mut row: TestRow, stamps: Stamps) -> TestRow {
    row.stamps = stamps;
    row
}

const fn shut(mut row: TestRow) -> TestRow {
    row.shut = true;
    row
}

const fn by_gauge(mut row: TestRow) -> TestRow {
    row.not_at = true;
    row
}

/// Joints of a premix burner show in the figures: common practice, no source.
const fn by_mixture(mut row: TestRow) -> TestRow {
    row.gas_by_mixture = true;
    row
}

/// Ten minutes at the highest and three at the lowest rate: common practice, no source.
const fn settled(mut row: TestRow) -> TestRow {
    row.settle = (10, 3);
    row
}

use Due::{BeforeCharge, BeforeRestore, BeforeStart, ByTheEnd};

static ROWS: [TestRow; 17] = [
    stamping(
        reads(row(TestKind::EarthContinuity, MAINS, Loading::Dead, BeforeRestore), CONTINUITY),
        Stamps::All,
    ),
    stamping(reads(row(TestKind::Insulation, MAINS, Loading::Dead, BeforeRestore), INSULATION), Stamps::All),
    reads(row(TestKind::Polarity, MAINS, Loading::Fed, ByTheEnd), POLARITY),
    shut(by_gauge(reads(row(TestKind::Tightness, GAS, Loading::FedBehindShutAutomatic, BeforeStart), TIGHT))),
    seen(reads(row(TestKind::LeakFluid, LEAKING, Loading::Fed, ByTheEnd), BUBBLES)),
    stamping(row(TestKind::WorkingPressure, GAS, Loading::Running, ByTheEnd), Stamps::All),
    stamping(row(TestKind::GasRate, GAS, Loading::Running, ByTheEnd), Stamps::All),
    stamping(
        by_mixture(settled(row(TestKind::Combustion, BURNING, Loading::Running, ByTheEnd))),
        Stamps::All,
    ),
    reads(row(TestKind::FlueIntegrity, FLUE, Loading::Running, ByTheEnd), AIR_CLEAN),
    shut(stamping(row(TestKind::FillPressure, HEATING, Loading::UnderPressure, ByTheEnd), Stamps::Sections)),
    shut(seen(reads(row(TestKind::LeakCold, WET, Loading::UnderPressure, BeforeStart), DRY_COLD))),
    shut(seen(reads(row(TestKind::LeakHot, WET, Loading::UnderPressureHot, ByTheEnd), DRY))),
    seen(reads(row(TestKind::TrapFilled, CONDENSATE, Loading::Filled, BeforeStart), TRAP)),
    stamping(
        seen(reads(row(TestKind::ReliefLever, RELIEVED, Loading::BehindRelief, ByTheEnd), RESEATS)),
        Stamps::All,
    ),
    row(TestKind::PressureHold, REFRIGERANT, Loading::Inert, BeforeCharge),
    row(TestKind::VacuumHold, REFRIGERANT, Loading::Vacuum, BeforeCharge),
    stamping(reads(row(TestKind::Function, &[], Loading::Running, ByTheEnd), WORKS), Stamps::All),
];

/// The row of a kind of test; none for kinds of newer versions, which are kept and not judged.
pub fn test_row(kind: &TestKind) -> Option<&'static TestRow> {
    ROWS.iter().find(|row| row.kind == *kind)
}
