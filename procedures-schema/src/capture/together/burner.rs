//! Figures of a burner that runs: "after 10 minutes at full load CO2 8.7 to 9.3 %, O2 in the air duct at least
//! 20.6 %".

use super::Shown;
use super::telling::{Part, Telling};
use crate::model::{Action, Mode, Reading, TestKind, Verb};
use crate::units::{Figure, Measured, Quantity, Range, Unit};

/// The tests that figures of a running burner are.
pub(super) fn figures(telling: &Telling<'_>) -> Option<Shown> {
    if !telling.is_running() || telling.says(&["room"]) {
        return None;
    }
    let mut tests: Vec<Action> = Vec::new();
    let (mut mode, mut first) = (None, true);
    for part in &telling.parts {
        mode = mode_of(part).or(mode);
        let limits = part.figures.first().or(telling.limits.filter(|_| first));
        first = false;
        if part.has(&["o2", "oxygen"]) && part.has(&["air", "duct", "intake"]) {
            let limits = limits?.clone();
            add(&mut tests, TestKind::FlueIntegrity, None, reading("O2 in the air duct", Some(limits)));
        } else if let Some(reading) = of_flue_gas(part, limits) {
            add(&mut tests, TestKind::Combustion, mode.clone(), reading);
        } else if part.has(&["same"]) {
            let ratio = part.has(&["ratio"]);
            let is_meant = |reading: &&Reading| !ratio || reading.what == "CO/CO2";
            let again: Vec<Reading> =
                tests.iter().flat_map(|test| &test.readings).filter(is_meant).cloned().collect();
            for one in again {
                add(&mut tests, TestKind::Combustion, mode.clone(), one);
            }
        }
    }
    if tests.is_empty() {
        return None;
    }
    let wait = telling.parts.iter().find(|part| part.has(&["after"])).and_then(|part| part.time.as_ref());
    let wait = wait.map(|(seconds, _)| wait_for(*seconds));
    let says = if wait.is_some() { "Wait and test" } else { "Test" };
    Some(Shown { says, actions: wait.into_iter().chain(tests).collect() })
}

/// The rate at which a part is read.
fn mode_of(part: &Part) -> Option<Mode> {
    if part.has(&["full", "max", "maximum"]) {
        Some(Mode::Max)
    } else if part.has(&["min", "minimum", "lowest", "part"]) && part.has(&["load", "rate", "output"]) {
        Some(Mode::Min)
    } else {
        None
    }
}

/// A figure of the flue gas with what decides it; a ratio has no unit and is told as it is written.
fn of_flue_gas(part: &Part, limits: Option<&Range>) -> Option<Reading> {
    if part.has(&["co/co2", "ratio"]) && !part.has(&["same"]) {
        let seen = part.text.find(|c: char| c.is_ascii_digit() && c != '2').and(criterion(&part.text))?;
        return Some(Reading { seen, ..reading("CO/CO2", None) });
    }
    let what = if part.has(&["co2"]) {
        "CO2"
    } else if part.has(&["co"]) {
        "CO"
    } else {
        return None;
    };
    let is_fraction = limits.is_some_and(|range| range.unit.quantity() == Quantity::Fraction);
    is_fraction.then(|| reading(what, limits.cloned()))
}

/// What is behind the name of a ratio: "not above 0.004".
fn criterion(text: &str) -> Option<String> {
    let lower = text.to_lowercase();
    let name =
        ["co/co2", "ratio"].into_iter().filter_map(|name| Some(lower.rfind(name)? + name.len())).max()?;
    let rest = text.get(name..)?.trim().trim_end_matches('.');
    (!rest.is_empty()).then(|| rest.to_owned())
}

fn reading(what: &str, limits: Option<Range>) -> Reading {
    Reading { what: what.to_owned(), limits, ..Reading::default() }
}

/// Adds a reading to the test of its kind and rate.
fn add(tests: &mut Vec<Action>, kind: TestKind, mode: Option<Mode>, reading: Reading) {
    let is_it = |test: &&mut Action| test.test.as_ref() == Some(&kind) && test.mode == mode;
    match tests.iter_mut().find(is_it) {
        Some(test) => test.readings.push(reading),
        None => tests.push(Action {
            test: Some(kind),
            mode,
            readings: vec![reading],
            ..Action::new(Verb::Test, Vec::new())
        }),
    }
}

fn wait_for(seconds: f64) -> Action {
    let minutes = Figure::parse(&(seconds / 60.0).to_string()).ok();
    let duration = minutes.map(|minutes| Measured::new(minutes, Unit::Minute));
    Action { duration, ..Action::new(Verb::Wait, Vec::new()) }
}
