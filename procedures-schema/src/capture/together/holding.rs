//! A reading that shows that something is filled and tight: "1.2 bar and no drop in 10 minutes, tissue dry".

use super::Shown;
use super::telling::{Part, Telling};
use crate::model::{Action, Circuit, CircuitKind, Id, Reading, TestKind, ThingKind, Verb};
use crate::simulate::Contents;
use crate::units::{Quantity, Range, Unit};

/// Words for a gauge that goes down.
const DROPS: &[&str] = &["change", "drop", "drops", "fall", "falls", "loss"];
/// Words for joints that let nothing out.
const DRY: &[&str] = &["dry", "tissue"];

/// The tests that a reading of pressure or of dry joints is.
pub(super) fn tested(telling: &Telling<'_>) -> Option<Shown> {
    let actions = match circuit(telling)? {
        gas if gas.kind == CircuitKind::FuelGas => vec![tightness(telling, gas)?],
        water if is_water(&water.kind) => of_water(telling, water),
        _ => Vec::new(),
    };
    (!actions.is_empty()).then_some(Shown { says: "Test", actions })
}

fn is_water(kind: &CircuitKind) -> bool {
    matches!(kind, CircuitKind::HeatingWater | CircuitKind::DomesticWater)
}

/// The circuit that is meant: the one that the words name, or the only one with such a gauge.
fn circuit<'a>(telling: &Telling<'a>) -> Option<&'a Circuit> {
    let unit = telling.figures_of(Quantity::Pressure).next().map(|range| range.unit.clone());
    let fits = |circuit: &&Circuit| match (&circuit.kind, &unit) {
        (CircuitKind::FuelGas, Some(Unit::Bar)) => false,
        (CircuitKind::FuelGas, _) => true,
        (kind, Some(Unit::Millibar)) if is_water(kind) => false,
        (kind, _) => is_water(kind) && circuit.sections.iter().any(|section| is_full(telling, &section.id)),
    };
    let mut named: Vec<&Circuit> = Vec::new();
    for part in &telling.parts {
        for circuit in telling.circuits_named(part).into_iter().filter(fits) {
            if named.iter().all(|known| known.id != circuit.id) {
                named.push(circuit);
            }
        }
        // The gauge is named first; the joints behind it can be of others too.
        if !named.is_empty() {
            break;
        }
    }
    if named.is_empty() {
        named = telling.map().circuits.iter().filter(fits).collect();
        if named.len() > 1 || unit.is_none() {
            named.retain(|circuit| circuit.sections.iter().any(|s| was_filled(telling, &s.id)));
        }
    }
    match named.as_slice() {
        [only] => Some(only),
        _ => None,
    }
}

fn is_full(telling: &Telling<'_>, section: &Id) -> bool {
    telling.section(section).is_some_and(|state| {
        state.stored.pressure && matches!(state.contents, Contents::Medium | Contents::Mixed)
    })
}

fn was_filled(telling: &Telling<'_>, section: &Id) -> bool {
    telling.section(section).is_some_and(|state| state.last_filled.is_some())
}

/// Gas that is on: no drop for so long as a tightness test takes.
fn tightness(telling: &Telling<'_>, gas: &Circuit) -> Option<Action> {
    let is_on = gas.sections.iter().any(|section| telling.is_fed(&section.id));
    let holds = telling.parts.iter().any(|part| holds(telling, part, 120.0));
    (is_on && holds).then(|| {
        let ports = telling.parts.iter().flat_map(|part| &part.mentions);
        let at = ports.filter_map(|mention| match mention.candidates.as_slice() {
            [only] if telling.map().connection(&only.id).is_some_and(|c| c.port.is_some()) => {
                Some(only.id.clone())
            }
            _ => None,
        });
        Action {
            test: Some(TestKind::Tightness),
            at: at.into_iter().next(),
            ..Action::new(Verb::Test, Vec::new())
        }
    })
}

/// Whether a part says that a gauge does not go down for at least so many seconds, which it has to give.
fn holds(telling: &Telling<'_>, part: &Part, seconds: f64) -> bool {
    let is_zero = |range: &Range| range.max.as_ref().is_some_and(|max| max.value() <= 0.0);
    let drops_nothing = part.has(DROPS) && telling.figures_of(Quantity::Pressure).any(is_zero);
    (part.denies(DROPS) || drops_nothing) && part.time.is_some() && part.lasts(seconds)
}

/// Water: its fill pressure, where it was filled in this job, and that nothing comes out.
fn of_water(telling: &Telling<'_>, water: &Circuit) -> Vec<Action> {
    let mut actions = Vec::new();
    let is_above_zero = |range: &&Range| range.min.as_ref().is_some_and(|min| min.value() > 0.0);
    let pressure = telling.figures_of(Quantity::Pressure).find(is_above_zero);
    let in_job = water.sections.iter().any(|section| was_filled(telling, &section.id));
    let names_drop = telling.parts.first().is_some_and(|part| part.has(DROPS) && !part.denies(DROPS));
    if let Some(limits) =
        pressure.filter(|_| water.kind == CircuitKind::HeatingWater && in_job && !names_drop)
    {
        let reading =
            Reading { what: "pressure".to_owned(), limits: Some(limits.clone()), ..Reading::default() };
        actions.push(test(TestKind::FillPressure, Vec::new(), vec![reading]));
    }
    let kind = || if telling.says(&["hot", "warm"]) { TestKind::LeakHot } else { TestKind::LeakCold };
    if in_job && telling.parts.iter().any(|part| holds(telling, part, 600.0)) {
        actions.push(test(kind(), Vec::new(), Vec::new()));
        return actions;
    }
    let joints = dry_joints(telling);
    if in_job && !joints.is_empty() {
        actions.push(test(kind(), joints, Vec::new()));
    }
    actions
}

/// The joints, and parts with joints, that the words call dry.
fn dry_joints(telling: &Telling<'_>) -> Vec<Id> {
    let mut joints: Vec<Id> = Vec::new();
    let first = telling.parts.iter().position(|part| part.has(DRY) && !part.has(&["not"]));
    let from = first.unwrap_or(telling.parts.len());
    for mention in telling.parts.iter().skip(from).flat_map(|part| &part.mentions) {
        for candidate in &mention.candidates {
            let is_it = matches!(candidate.kind, ThingKind::Connection | ThingKind::Component);
            let only = mention.candidates.len() == 1 || mention.plural;
            if is_it && only && !joints.contains(&candidate.id) {
                joints.push(candidate.id.clone());
            }
        }
    }
    joints
}

fn test(kind: TestKind, on: Vec<Id>, readings: Vec<Reading>) -> Action {
    Action { test: Some(kind), readings, ..Action::new(Verb::Test, on) }
}
