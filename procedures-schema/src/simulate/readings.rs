//! The readings that an action takes when it states none: those of the circuit's kind.

use super::kinds::{KindRow, kind_row};
use crate::model::{Action, Procedure, Reading, Verb};
use crate::units::{Figure, Range};

/// The readings of an action: its own, or for *prove* the defaults of the kinds of its circuits, in order.
pub fn default_readings(procedure: &Procedure, action: &Action) -> Vec<Reading> {
    if !action.readings.is_empty() || action.verb != Verb::Prove {
        return action.readings.clone();
    }
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
    rows.into_iter().flat_map(of_row).collect()
}

fn of_row(row: &'static KindRow) -> impl Iterator<Item = Reading> {
    row.proof.iter().map(|reading| Reading {
        what: reading.what.to_owned(),
        limits: reading.limits.as_ref().map(|(min, max, unit)| {
            Range::new(Figure::parse(min).ok(), Figure::parse(max).ok(), unit.clone())
        }),
        seen: reading.seen.to_owned(),
        source: reading.source.to_owned(),
        ..Reading::default()
    })
}
