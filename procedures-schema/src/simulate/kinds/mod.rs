//! The circuit kinds: one row each, from which every demand is read.
//!
//! Adding a kind is adding a row and its fixtures; the simulator does not change. Each value carries where
//! it comes from. "Common practice, no source" marks trade practice without a published source; "from
//! memory" marks figures that nobody has yet compared with the text of the standard. A document may set
//! tighter limits; local codes and the maker's instructions come first.

mod electric;
mod gases;
mod water;

use super::state::{Contents, Energies};
use crate::model::{CircuitKind, Mode, Role, TestKind};
use crate::units::{Figure, Range, Unit};

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

impl ProofReading {
    /// The accepted values.
    pub fn range(&self) -> Option<Range> {
        let (min, max, unit) = self.limits.as_ref()?;
        Some(Range::new(Figure::parse(min).ok(), Figure::parse(max).ok(), unit.clone()))
    }
}

/// A test that would satisfy a demand.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Wanted {
    /// Its kind.
    pub kind: TestKind,
    /// The mode in which it is taken, if that matters.
    pub mode: Option<Mode>,
}

/// One demand for a test after something was touched: any of these satisfies it.
pub type TestDemand = &'static [Wanted];

/// A test in any mode.
const fn any(kind: TestKind) -> Wanted {
    Wanted { kind, mode: None }
}

/// A test in one mode.
const fn at(kind: TestKind, mode: Mode) -> Wanted {
    Wanted { kind, mode: Some(mode) }
}

/// What a kind of circuit asks for.
#[expect(clippy::struct_excessive_bools, reason = "columns of a table, read by name")]
#[derive(Debug)]
pub struct KindRow {
    /// The kind.
    pub kind: CircuitKind,
    /// The family of rules.
    pub hazard: Hazard,
    /// Whether its closed isolators must be locked before anything is touched.
    pub locks: bool,
    /// Whether isolating it under load is bad practice: the appliance is shut down first.
    pub shut_down_first: bool,
    /// What a section stores in service.
    pub stores: Energies,
    /// The readings that prove it, in order; none if nothing has to be proved.
    pub proof: &'static [ProofReading],
    /// How many minutes a proof of a closed section holds; none if it does not age.
    pub life_minutes: Option<u32>,
    /// Whether a proof ages even while the section is open.
    pub ages_open: bool,
    /// Whether the hands are in danger from it as soon as what covers it is off.
    pub guarded: bool,
    /// Whether the appliance cannot start without it.
    pub powers: bool,
    /// Whether its charge must have had the time of its label to go before the cover comes off.
    pub waits: bool,
    /// Whether touching it demands only that the appliance is off and cannot start.
    pub only_off: bool,
    /// Contents with which it may be opened; any, if empty.
    pub open_from: &'static [Contents],
    /// Contents with which it may be charged; any, if empty.
    pub charge_from: &'static [Contents],
    /// Contents with which the appliance may start; any, if empty.
    pub start_from: &'static [Contents],
    /// What is inside once a joint was open.
    pub opened_holds: Contents,
    /// Whether vents may be open while it is filled.
    pub fills_vented: bool,
    /// Whether its heat comes back with the supply, not only by running.
    pub heat_with_supply: bool,
    /// Whether its energy goes when the appliance is shut down.
    pub hangs_on_running: bool,
    /// Whether slack joints may be tightened only while it is not fed.
    pub tightened_off: bool,
    /// Tests after a joint was made.
    pub after_joint: &'static [TestDemand],
    /// Tests after a joint behind an automatic valve was made.
    pub after_joint_behind_automatic: &'static [TestDemand],
    /// Tests after a joint was made of a section that is empty in service; those of any joint, if none.
    pub after_joint_of_empty: &'static [TestDemand],
    /// Tests after a connector was made.
    pub after_connector: &'static [TestDemand],
    /// Tests after a fixing that seals it was made.
    pub after_sealed_fixing: &'static [TestDemand],
    /// Tests after a drain, vent, test or fill port was closed.
    pub after_port: &'static [TestDemand],
    /// Tests after a section was released, filled or purged.
    pub after_filling: &'static [TestDemand],
}

const NOTHING: Energies = Energies { pressure: false, heat: false, charge: false, motion: false };
const PRESSURE: Energies = Energies { pressure: true, heat: false, charge: false, motion: false };
const PRESSURE_AND_HEAT: Energies = Energies { pressure: true, heat: true, charge: false, motion: false };

/// A row that demands nothing but to be off.
const fn row(kind: CircuitKind, hazard: Hazard) -> KindRow {
    KindRow {
        kind,
        hazard,
        locks: false,
        shut_down_first: false,
        stores: NOTHING,
        proof: &[],
        life_minutes: None,
        ages_open: false,
        guarded: false,
        powers: false,
        waits: false,
        only_off: false,
        open_from: &[],
        charge_from: &[],
        start_from: &[],
        opened_holds: Contents::Air,
        fills_vented: false,
        heat_with_supply: false,
        hangs_on_running: false,
        tightened_off: false,
        after_joint: &[],
        after_joint_behind_automatic: &[],
        after_joint_of_empty: &[],
        after_connector: &[],
        after_sealed_fixing: &[],
        after_port: &[],
        after_filling: &[],
    }
}

/// A reading with limits; an end that is empty is open.
pub(super) const fn reading(
    what: &'static str,
    limits: (&'static str, &'static str, Unit),
    source: &'static str,
) -> ProofReading {
    ProofReading { what, limits: Some(limits), seen: "", source }
}

/// An observation.
pub(super) const fn seen(what: &'static str, seen: &'static str, source: &'static str) -> ProofReading {
    ProofReading { what, limits: None, seen, source }
}

const PRACTICE: &str = "common practice, no source";
const SCALD: &str = "design value from scald tables after Moritz and Henriques 1947 (secondary)";

static ROWS: [&KindRow; 15] = [
    &electric::MAINS,
    &electric::CONTROL,
    &electric::MOTION,
    &electric::DC_BUS,
    &gases::FUEL_GAS,
    &gases::AIR_AND_FLUE,
    &gases::REFRIGERANT,
    &gases::COMPRESSED_AIR,
    &gases::STEAM,
    &gases::OIL,
    &water::HEATING,
    &water::DOMESTIC,
    &water::CONDENSATE,
    &water::STORED_HEAT,
    &water::NETWORK_PRIMARY,
];

const COMBUSTION: &[TestDemand] =
    &[&[at(TestKind::Combustion, Mode::Max)], &[at(TestKind::Combustion, Mode::Min)]];

const INSULATION: &[TestDemand] = &[&[any(TestKind::Insulation)]];
const RELIEF_LEVER: &[TestDemand] = &[&[any(TestKind::ReliefLever)]];
const FUNCTION: &[TestDemand] = &[&[any(TestKind::Function)]];
const WORKING_PRESSURE: &[TestDemand] = &[&[any(TestKind::WorkingPressure)]];
const GAS_RATE: &[TestDemand] = &[&[any(TestKind::GasRate)]];

/// The tests after a component of this role was touched.
pub(super) fn tests_of_role(role: &Role) -> &'static [TestDemand] {
    match role {
        Role::Burner | Role::Fan | Role::GasValve => COMBUSTION,
        Role::Element => INSULATION,
        Role::Relief => RELIEF_LEVER,
        Role::Other(_) => &[],
    }
}

/// The tests that a setting makes stale, as demands: combustion in both modes, others once.
pub(super) fn tests_of_setting(kind: &TestKind) -> &'static [TestDemand] {
    match kind {
        TestKind::Combustion => COMBUSTION,
        TestKind::Function => FUNCTION,
        TestKind::WorkingPressure => WORKING_PRESSURE,
        TestKind::GasRate => GAS_RATE,
        _ => &[],
    }
}

/// Every kind of test as a demand by itself, for documents that ask for it instead of another.
static ALONE: [TestDemand; 17] = [
    &[any(TestKind::EarthContinuity)],
    &[any(TestKind::Insulation)],
    &[any(TestKind::Polarity)],
    &[any(TestKind::Tightness)],
    &[any(TestKind::LeakFluid)],
    &[any(TestKind::WorkingPressure)],
    &[any(TestKind::GasRate)],
    &[any(TestKind::Combustion)],
    &[any(TestKind::FlueIntegrity)],
    &[any(TestKind::FillPressure)],
    &[any(TestKind::LeakCold)],
    &[any(TestKind::LeakHot)],
    &[any(TestKind::TrapFilled)],
    &[any(TestKind::ReliefLever)],
    &[any(TestKind::PressureHold)],
    &[any(TestKind::VacuumHold)],
    &[any(TestKind::Function)],
];

/// The demand for one kind of test in any mode; none for kinds of newer versions.
pub(super) fn alone(kind: &TestKind) -> Option<TestDemand> {
    ALONE.into_iter().find(|any_of| any_of.iter().any(|wanted| wanted.kind == *kind))
}

/// The row of a kind; none for kinds of newer versions, which are kept and not judged.
pub fn kind_row(kind: &CircuitKind) -> Option<&'static KindRow> {
    ROWS.into_iter().find(|row| row.kind == *kind)
}

#[cfg(test)]
mod tests {
    use super::{alone, kind_row};
    use crate::model::{CircuitKind, TestKind};

    #[test]
    fn every_kind_of_test_can_be_asked_for_by_itself() {
        for kind in TestKind::ALL {
            assert_eq!(alone(kind).map(<[_]>::len), Some(1), "{kind}");
        }
    }

    #[test]
    fn every_known_kind_has_a_row_and_every_limit_a_source() {
        for kind in CircuitKind::ALL {
            let row = kind_row(kind).expect("a row");
            for reading in row.proof {
                assert!(!reading.source.is_empty(), "{kind}: {}", reading.what);
                assert!(reading.limits.is_some() == reading.seen.is_empty(), "{kind}: {}", reading.what);
            }
        }
    }
}
