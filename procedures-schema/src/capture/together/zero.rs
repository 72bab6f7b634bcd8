//! A reading of zero that proves a section: "0 bar on the gauge, no more water out of the hose for 5 minutes".

use super::Shown;
use super::cooling;
use super::telling::{Part, Telling, is_within, row};
use crate::model::{Action, Circuit, Id, Port, Reading, Verb};
use crate::simulate::{Hazard, ProofReading};
use crate::units::{Quantity, Range, Unit};

/// Words for what runs out of an open end.
const RUNS: &[&str] =
    &["comes", "drain", "drains", "flow", "flows", "hose", "more", "out", "tap", "taps", "water"];
/// Words that speak of something else than zero.
const OTHER: &[&str] = &["change", "drop", "drops", "fall", "falls", "leak", "leaks", "loss"];

/// The proofs that a reading of zero is: one a circuit. None, if it is not clear which are meant, or something of
/// it is not at zero.
pub(super) fn proved(telling: &Telling<'_>) -> Option<Shown> {
    if telling.says(OTHER) || telling.says(&["test", "working"]) {
        return None;
    }
    let open: Vec<&Circuit> =
        telling.map().circuits.iter().filter(|circuit| !cut_off(telling, circuit).is_empty()).collect();
    let by_gauge = by_gauge(telling, &open).ok()?;
    let proofs: Vec<Action> =
        open.iter().filter_map(|circuit| proof(telling, circuit, &open, by_gauge)).collect();
    (!proofs.is_empty()).then_some(Shown { says: "Prove zero", actions: proofs })
}

/// The sections of a circuit that have to be proved here: cut off, and open somewhere.
fn cut_off(telling: &Telling<'_>, circuit: &Circuit) -> Vec<Id> {
    let is_judged = row(circuit).is_some_and(|row| row.hazard != Hazard::Isolation && !row.proof.is_empty());
    let is_open = |section: &Id| {
        let mut own = telling.map().connections.iter().filter(|c| c.section.as_ref() == Some(section));
        own.any(|c| telling.connection(&c.id).is_some_and(|state| state.open + state.slack > 0))
    };
    let sections = circuit.sections.iter().map(|section| &section.id);
    sections.filter(|id| is_judged && !telling.is_fed(id) && is_open(id)).cloned().collect()
}

/// A figure that is not zero, or of which it is not clear what it is of.
struct Unclear;

/// The circuit of which the gauge is read; none, if the words give no figure.
fn by_gauge<'c>(telling: &Telling<'_>, open: &[&'c Circuit]) -> Result<Option<&'c Circuit>, Unclear> {
    let mut pressures = telling.figures_of(Quantity::Pressure);
    let figure = pressures.next();
    if pressures.next().is_some() {
        return Err(Unclear);
    }
    if figure.is_none() && !telling.says(&["zero"]) {
        return Ok(None);
    }
    let first = telling.parts.first().ok_or(Unclear)?;
    let named = telling.circuits_named(first);
    let fits = |circuit: &&&Circuit| {
        let is_named = named.is_empty() || named.iter().any(|known| known.id == circuit.id);
        is_named && asked_of_gauge(circuit).is_some_and(|asked| figure.is_none_or(|f| is_zero(f, asked)))
    };
    let mut meant = open.iter().filter(fits);
    match (meant.next(), meant.next()) {
        (Some(only), None) => Ok(Some(only)),
        _ => Err(Unclear),
    }
}

/// The reading of the gauge that a kind of circuit asks for.
fn asked_of_gauge(circuit: &Circuit) -> Option<&'static ProofReading> {
    let of_pressure = |asked: &&ProofReading| {
        asked.limits.as_ref().is_some_and(|(_, _, unit)| unit.quantity() == Quantity::Pressure)
    };
    row(circuit)?.proof.iter().filter(of_pressure).find(|asked| !asked.what.starts_with("rise"))
}

/// Whether limits demand zero as a kind of circuit asks for it, on a gauge of its scale.
fn is_zero(range: &Range, asked: &ProofReading) -> bool {
    let is_fine = |unit: &Unit| matches!(unit, Unit::Millibar | Unit::Pascal);
    let Some(limits) = asked.range() else { return false };
    is_fine(&range.unit) == is_fine(&limits.unit) && is_within(range, &limits)
}

/// The proof of a circuit with those readings of its kind that the words give.
fn proof(
    telling: &Telling<'_>,
    circuit: &Circuit,
    open: &[&Circuit],
    by_gauge: Option<&Circuit>,
) -> Option<Action> {
    let is_gauged = by_gauge.is_some_and(|gauged| gauged.id == circuit.id);
    let own: Vec<&Part> =
        telling.parts.iter().filter(|part| is_about(telling, part, circuit, open, by_gauge)).collect();
    let runs_dry = own.iter().find(|part| part.denies(RUNS) && part.lasts(60.0)).copied();
    let is_tap = |part: &&&Part| part.denies(&["tap", "taps"]) && part.lasts(60.0);
    let tap = own.iter().find(is_tap);
    let mut readings: Vec<Reading> = Vec::new();
    let mut at_zero = false;
    for asked in row(circuit)?.proof {
        let limits = asked.range();
        let given = match &limits {
            None => {
                runs_dry.filter(|_| asked.what.contains("flow") || asked.what.contains("tap")).map(|part| {
                    let seen = match &part.time {
                        Some((_, time)) => asked.seen.replace("60 s", time),
                        None => asked.seen.to_owned(),
                    };
                    (None, seen)
                })
            }
            Some(limits) if limits.unit.quantity() == Quantity::Temperature => {
                temperature(telling, limits).map(|range| (Some(range), String::new()))
            }
            Some(limits) if asked.what.starts_with("rise") => {
                let still = own.iter().any(|part| part.denies(&["rise", "rises"]) && part.lasts(60.0));
                still.then(|| (Some(limits.clone()), String::new()))
            }
            Some(limits) => {
                let by_figure = || telling.figures_of(Quantity::Pressure).next().unwrap_or(limits).clone();
                let by_tap = || tap.filter(|_| asked.what.contains("tap")).map(|_| limits.clone());
                let range = if is_gauged { Some(by_figure()) } else { by_tap() };
                at_zero |= range.is_some();
                range.map(|range| (Some(range), String::new()))
            }
        };
        readings.extend(given.map(|(limits, seen)| Reading {
            what: asked.what.to_owned(),
            limits,
            seen,
            source: asked.source.to_owned(),
            ..Reading::default()
        }));
    }
    at_zero.then(|| Action {
        at: port(telling, circuit),
        readings,
        ..Action::new(Verb::Prove, on(telling, circuit))
    })
}

/// Whether a part of the words speaks of a circuit: it names it, or names none and the gauge is of it. "Nothing
/// from either drain" speaks of all that are open.
fn is_about(
    telling: &Telling<'_>,
    part: &Part,
    circuit: &Circuit,
    open: &[&Circuit],
    by_gauge: Option<&Circuit>,
) -> bool {
    if part.has(&["all", "both", "each", "either"]) {
        return true;
    }
    let named = telling.circuits_named(part);
    if named.is_empty() {
        let only = open.len() == 1;
        return by_gauge.map_or(only, |gauged| gauged.id == circuit.id);
    }
    named.iter().any(|known| known.id == circuit.id)
}

/// How hot the water may be: as it is read, or as it was told before.
fn temperature(telling: &Telling<'_>, asked: &Range) -> Option<Range> {
    let read = telling.figures_of(Quantity::Temperature).next();
    let Some(read) = read else { return cooling::told(telling, asked) };
    let most = Range::new(None, read.max.clone(), read.unit.clone());
    is_within(&most, asked).then_some(most)
}

/// What is proved: the circuit, or those of its sections that are cut off and open.
fn on(telling: &Telling<'_>, circuit: &Circuit) -> Vec<Id> {
    let sections = cut_off(telling, circuit);
    if sections.len() == circuit.sections.len() { vec![circuit.id.clone()] } else { sections }
}

/// The test point at which it is read: the only one of the circuit that is open.
fn port(telling: &Telling<'_>, circuit: &Circuit) -> Option<Id> {
    let mut open = telling.map().connections.iter().filter(|joint| {
        let own = circuit.sections.iter().any(|section| joint.section.as_ref() == Some(&section.id));
        let is_open = telling.connection(&joint.id).is_some_and(|state| state.open + state.slack > 0);
        own && is_open && joint.port == Some(Port::Test)
    });
    open.next().filter(|_| open.next().is_none()).map(|joint| joint.id.clone())
}
