//! Which rule owns which unmet demand.

use crate::simulate::{Demand, Hazard, Plant, Reason, SectionCell, Side, Thing, Unmet};

/// The code of the rule that speaks of an unmet demand.
pub fn code_of(unmet: &Unmet, plant: &Plant) -> &'static str {
    match &unmet.reason {
        Reason::StillFed { section, .. } => match hazard(plant, *section) {
            Hazard::Isolation => "isolation/still-fed",
            Hazard::Gas => "gas/still-fed",
            Hazard::Pressure => "pressure/still-fed",
        },
        Reason::NotLocked { section, .. } => match hazard(plant, *section) {
            Hazard::Isolation | Hazard::Gas => "isolation/not-locked",
            Hazard::Pressure => "pressure/not-locked",
        },
        Reason::NotReleased { .. } => "pressure/not-released",
        Reason::NotProved { section } => match hazard(plant, *section) {
            Hazard::Isolation => "isolation/not-proved",
            Hazard::Gas => "gas/not-proved",
            Hazard::Pressure => "pressure/not-proved",
        },
        Reason::ProofLapsed { section, .. } => match hazard(plant, *section) {
            Hazard::Isolation => "isolation/proof-lapsed",
            Hazard::Gas => "gas/proof-lapsed",
            Hazard::Pressure => "pressure/proof-lapsed",
        },
        Reason::WrongContents { .. } => "pressure/wrong-contents",
        Reason::SealNotRenewed { .. } => "seal/not-renewed",
        Reason::LeftOpen { .. } => "putback/left-open",
        Reason::LeftSlack { .. } => "putback/left-slack",
        Reason::LeftOff { .. } => "putback/left-off",
        Reason::TemporaryLeft { .. } => "putback/temp-left",
        Reason::NotNormal { .. } => "putback/supply-off",
        Reason::NotTested { .. } | Reason::FunctionNotShown => "retest/missing",
        Reason::TestLate { demand, .. } => code_in_one_family(*demand),
        Reason::Demand { demand, thing, .. } => {
            let hazard = thing.map_or(Hazard::Isolation, |thing| hazard_of_thing(plant, thing));
            code_of_demand(*demand, hazard)
        }
    }
}

/// Codes of demands that belong to one family whatever the circuit, or to the family of its circuit.
fn code_of_demand(demand: Demand, hazard: Hazard) -> &'static str {
    match (demand, hazard) {
        (Demand::ProofIncomplete, Hazard::Isolation) => "isolation/proof-incomplete",
        (Demand::ProofIncomplete, Hazard::Gas) => "gas/proof-incomplete",
        (Demand::ProofIncomplete, Hazard::Pressure) => "pressure/proof-incomplete",
        (Demand::OpenEnd, Hazard::Gas) => "gas/open-end",
        (Demand::OpenEnd, _) => "pressure/open-end",
        (Demand::RestoredOpen, Hazard::Gas) => "gas/restored-open",
        (Demand::RestoredOpen, Hazard::Isolation) => "isolation/restored-open",
        (Demand::RestoredOpen, _) => "pressure/restored-open",
        _ => code_in_one_family(demand),
    }
}

fn code_in_one_family(demand: Demand) -> &'static str {
    match demand {
        Demand::NoHandle => "isolation/no-handle",
        Demand::NotShutDown => "isolation/not-shut-down",
        Demand::LockedOpen => "isolation/locked-open",
        Demand::CannotLock => "isolation/cannot-lock",
        Demand::DrainedLive => "isolation/drained-live",
        Demand::ProofIncomplete => "isolation/proof-incomplete",
        Demand::LooserThanDefault => "reading/looser-than-default",
        Demand::ProvedElsewhere => "isolation/proved-elsewhere",
        Demand::GuardOffLive => "isolation/guard-off-live",
        Demand::WaitTooShort => "isolation/wait-too-short",
        Demand::CanStart => "isolation/can-start",
        Demand::Running => "pressure/running",
        Demand::AlreadyOpen => "isolation/already-open",
        Demand::StartedDead => "isolation/started-dead",
        Demand::RestoredGuardOff => "isolation/restored-guard-off",
        Demand::LeftUnsafe => "isolation/left-unsafe",
        Demand::NowhereToGo => "pressure/nowhere-to-go",
        Demand::NoVent => "pressure/no-vent",
        Demand::Hot => "pressure/hot",
        Demand::WrongContents => "pressure/wrong-contents",
        Demand::EnergisedDry => "pressure/energised-dry",
        Demand::NotFilled => "pressure/not-filled",
        Demand::NotBled => "pressure/not-bled",
        Demand::NoInertFlow => "pressure/no-inert-flow",
        Demand::OpenEnd | Demand::RestoredOpen => "pressure/restored-open",
        Demand::NoBond => "gas/no-bond",
        Demand::IgnitionNearOpen => "gas/ignition-near-open",
        Demand::PurgeDead => "gas/purge-dead",
        Demand::PurgedBeforeTested => "gas/purged-before-tested",
        Demand::NotPurged => "gas/not-purged",
        Demand::FiredBeforeTested => "gas/fired-before-tested",
        Demand::FiredCaseOpen => "gas/fired-case-open",
        Demand::TestOrder => "retest/order",
        Demand::DoesNotLoad => "retest/does-not-load",
        Demand::NotVisible => "retest/not-visible",
        Demand::NotClosed => "retest/not-closed",
        Demand::AboutToBeCovered => "retest/about-to-be-covered",
        Demand::TrapDry => "retest/trap-dry",
        Demand::NoBaseline => "retest/no-baseline",
        Demand::WayBackDiffers => "retest/way-back-differs",
        other => code_of_putting_back(other),
    }
}

fn code_of_putting_back(demand: Demand) -> &'static str {
    match demand {
        Demand::UndoneTwice => "putback/undone-twice",
        Demand::MadeNotOpened => "putback/made-not-opened",
        Demand::Counts => "putback/counts",
        Demand::BlankInside => "putback/blank-inside",
        Demand::LoosePartLeft => "putback/loose-part-left",
        Demand::MadeToNothing => "putback/made-to-nothing",
        Demand::OutOfReach => "putback/out-of-reach",
        Demand::TightenedOpen => "putback/tightened-open",
        Demand::RemovedTwice => "putback/removed-twice",
        Demand::StillHeld => "putback/still-held",
        Demand::FitNotRemoved => "putback/fit-not-removed",
        Demand::CoversUnfinished => "putback/covers-unfinished",
        Demand::CarriedLeft => "putback/carried-left",
        Demand::PlacedTwice => "putback/placed-twice",
        Demand::TakenNotPlaced => "putback/taken-not-placed",
        Demand::RunWithTemporary => "putback/run-with-temp",
        Demand::RunWithLostSetting => "putback/run-with-lost-setting",
        Demand::SettingNotRecorded => "putback/setting-not-recorded",
        Demand::Unmarked => "putback/unmarked",
        Demand::TemporaryGone => "putback/temp-gone",
        Demand::LeftOn => "putback/left-on",
        Demand::SettingNotRestored => "putback/setting-not-restored",
        Demand::GoalNotReached => "putback/not-renewed",
        Demand::SealReusedUninspected => "seal/reused-uninspected",
        Demand::SealReusedUnsound => "seal/reused-unsound",
        Demand::SealRenewedUnopened => "seal/renewed-unopened",
        Demand::NotTightenedAgain => "torque/retorque-missing",
        Demand::WrongState => "reading/wrong-state",
        Demand::NotSettled => "reading/not-settled",
        Demand::NoCriterion => "reading/no-criterion",
        Demand::NoReason => "control/no-reason",
        Demand::NoNotice => "control/no-notice",
        _ => "people/too-heavy",
    }
}

fn hazard(plant: &Plant, section: SectionCell) -> Hazard {
    plant.row_of(section).map_or(Hazard::Isolation, |row| row.hazard)
}

fn hazard_of_thing(plant: &Plant, thing: Thing) -> Hazard {
    let section = match thing {
        Thing::Section(section) => Some(section),
        Thing::Connection(connection) => plant.connection(connection).and_then(|plan| plan.section),
        Thing::Circuit(circuit) => plant.circuit(circuit).and_then(|plan| plan.sections.first().copied()),
        Thing::Isolator(isolator) => {
            let between = plant.isolator(isolator).and_then(|plan| plan.between);
            between.iter().flat_map(|(a, b)| [a, b]).find_map(|side| match side {
                Side::Section(section) => Some(*section),
                Side::Supply => None,
            })
        }
        _ => None,
    };
    section.map_or(Hazard::Isolation, |section| hazard(plant, section))
}
