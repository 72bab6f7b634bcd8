//! The kinds of tests: what each needs, what it loads, whether it is done by sight, when it is due.
//!
//! A test covers only what it loads, worked out from the isolators open at that moment. Adding a kind is
//! adding a row.

use crate::model::{CircuitKind, TestKind};

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
    /// Whether the loaded sections must be shut but for where it is taken.
    pub shut: bool,
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
const DOMESTIC: &[CircuitKind] = &[CircuitKind::DomesticWater];
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
        shut: false,
    }
}

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

/// Ten minutes at the highest and three at the lowest rate: common practice, no source.
const fn settled(mut row: TestRow) -> TestRow {
    row.settle = (10, 3);
    row
}

use Due::{BeforeCharge, BeforeRestore, BeforeStart, ByTheEnd};

static ROWS: [TestRow; 17] = [
    stamping(row(TestKind::EarthContinuity, MAINS, Loading::Dead, BeforeRestore), Stamps::All),
    stamping(row(TestKind::Insulation, MAINS, Loading::Dead, BeforeRestore), Stamps::All),
    row(TestKind::Polarity, MAINS, Loading::Fed, ByTheEnd),
    shut(by_gauge(row(TestKind::Tightness, GAS, Loading::FedBehindShutAutomatic, BeforeStart))),
    seen(row(TestKind::LeakFluid, LEAKING, Loading::Fed, ByTheEnd)),
    stamping(row(TestKind::WorkingPressure, GAS, Loading::Running, ByTheEnd), Stamps::All),
    stamping(row(TestKind::GasRate, GAS, Loading::Running, ByTheEnd), Stamps::All),
    stamping(settled(row(TestKind::Combustion, BURNING, Loading::Running, ByTheEnd)), Stamps::All),
    row(TestKind::FlueIntegrity, FLUE, Loading::Running, ByTheEnd),
    shut(stamping(row(TestKind::FillPressure, HEATING, Loading::UnderPressure, ByTheEnd), Stamps::Sections)),
    shut(seen(row(TestKind::LeakCold, WET, Loading::UnderPressure, BeforeStart))),
    shut(seen(row(TestKind::LeakHot, WET, Loading::UnderPressureHot, ByTheEnd))),
    seen(row(TestKind::TrapFilled, CONDENSATE, Loading::Filled, BeforeStart)),
    stamping(seen(row(TestKind::ReliefLever, DOMESTIC, Loading::BehindRelief, ByTheEnd)), Stamps::All),
    row(TestKind::PressureHold, REFRIGERANT, Loading::Inert, BeforeCharge),
    row(TestKind::VacuumHold, REFRIGERANT, Loading::Vacuum, BeforeCharge),
    stamping(row(TestKind::Function, &[], Loading::Running, ByTheEnd), Stamps::All),
];

/// The row of a kind of test; none for kinds of newer versions, which are kept and not judged.
pub fn test_row(kind: &TestKind) -> Option<&'static TestRow> {
    ROWS.iter().find(|row| row.kind == *kind)
}
