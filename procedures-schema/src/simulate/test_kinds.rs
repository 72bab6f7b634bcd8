//! The kinds of tests: what each needs, what it loads, whether it is done by sight.
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
    /// Whatever the running appliance works.
    Running,
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
    /// Whether it stamps sections instead of joints.
    pub stamps_sections: bool,
}

const MAINS: &[CircuitKind] = &[CircuitKind::MainsElectricity];
const GAS: &[CircuitKind] = &[CircuitKind::FuelGas];
const WET: &[CircuitKind] = &[CircuitKind::HeatingWater];

/// A test of everything that it loads.
const fn row(kind: TestKind, circuits: &'static [CircuitKind], loading: Loading) -> TestRow {
    TestRow { kind, circuits, loading, by_sight: false, not_at: false, stamps_sections: false }
}

/// A test of what can be seen of what it loads.
const fn by_sight(kind: TestKind, circuits: &'static [CircuitKind], loading: Loading) -> TestRow {
    TestRow { kind, circuits, loading, by_sight: true, not_at: false, stamps_sections: false }
}

/// A test by a gauge on a port, which it leaves out.
const fn by_gauge(kind: TestKind, circuits: &'static [CircuitKind], loading: Loading) -> TestRow {
    TestRow { kind, circuits, loading, by_sight: false, not_at: true, stamps_sections: false }
}

/// A test of sections instead of joints.
const fn of_sections(kind: TestKind, circuits: &'static [CircuitKind], loading: Loading) -> TestRow {
    TestRow { kind, circuits, loading, by_sight: false, not_at: false, stamps_sections: true }
}

static ROWS: [TestRow; 10] = [
    row(TestKind::EarthContinuity, MAINS, Loading::Dead),
    row(TestKind::Insulation, MAINS, Loading::Dead),
    row(TestKind::Polarity, MAINS, Loading::Fed),
    by_gauge(TestKind::Tightness, GAS, Loading::FedBehindShutAutomatic),
    by_sight(TestKind::LeakFluid, GAS, Loading::Fed),
    row(TestKind::Combustion, GAS, Loading::Running),
    of_sections(TestKind::FillPressure, WET, Loading::UnderPressure),
    by_sight(TestKind::LeakCold, WET, Loading::UnderPressure),
    by_sight(TestKind::LeakHot, WET, Loading::UnderPressureHot),
    row(TestKind::Function, &[], Loading::Running),
];

/// The row of a kind of test; none for kinds that are kept and not judged yet.
pub fn test_row(kind: &TestKind) -> Option<&'static TestRow> {
    ROWS.iter().find(|row| row.kind == *kind)
}
