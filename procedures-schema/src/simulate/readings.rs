//! The readings that an action takes when it states none: those of the circuit's kind, or of the test's.

use super::country_limits::follow_country;
use super::kinds::{KindRow, ProofReading, kind_row};
use super::replaced::{limit_proof, limit_test};
use super::test_kinds::test_row;
use crate::model::{Action, Procedure, Reading, Verb};

/// The readings of an action: its own, or for *prove* the defaults of the kinds of its circuits in order,
/// and for *test* those of its kind; with the limits that the document puts in the place of theirs, or else those of its
/// country.
pub fn default_readings(procedure: &Procedure, action: &Action) -> Vec<Reading> {
    match action.verb {
        _ if !action.readings.is_empty() => action.readings.clone(),
        Verb::Prove => proof_readings(procedure, action),
        Verb::Test => {
            let row = action.test.as_ref().and_then(test_row);
            let mut readings: Vec<Reading> =
                row.into_iter().flat_map(|row| row.readings).map(as_reading).collect();
            for reading in &mut readings {
                let of_table = reading.limits.clone();
                limit_test(procedure, action, reading);
                if reading.limits == of_table {
                    follow_country(procedure.country.as_ref(), action.test.as_ref(), reading);
                }
            }
            readings
        }
        _ => Vec::new(),
    }
}

/// Whether a test is read or seen by anything: readings of its own, or those of its kind.
pub fn is_read(action: &Action) -> bool {
    let row = || action.test.as_ref().and_then(test_row);
    !action.readings.is_empty() || row().is_some_and(|row| !row.readings.is_empty())
}

fn proof_readings(procedure: &Procedure, action: &Action) -> Vec<Reading> {
    let mut rows: Vec<&'static KindRow> = Vec::new();
    for id in &action.on {
        let circuit = procedure
            .map
            .circuits
            .iter()
            .find(|c| c.id == *id || c.sections.iter().any(|section| section.id == *id));
        if let Some(row) = circuit.and_then(|c| kind_row(&c.kind))
            && !rows.iter().any(|known| known.kind == row.kind)
        {
            rows.push(row);
        }
    }
    let mut readings = Vec::new();
    for (row, asked) in rows.into_iter().flat_map(|row| row.proof.iter().map(move |asked| (row, asked))) {
        let mut reading = as_reading(asked);
        limit_proof(procedure, action, &row.kind, &mut reading);
        readings.push(reading);
    }
    readings
}

fn as_reading(reading: &ProofReading) -> Reading {
    Reading {
        what: reading.what.to_owned(),
        limits: reading.range(),
        seen: reading.seen.to_owned(),
        source: reading.source.to_owned(),
        ..Reading::default()
    }
}
