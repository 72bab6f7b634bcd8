//! The sections that a procedure works on: those it opens, bares, releases, proves or tests at.

use crate::model::{Id, Procedure};
use crate::simulate::{Plant, SectionCell, Thing};
use std::collections::BTreeSet;

/// Sections that some action of the procedure names, or whose connections it names.
pub(super) fn worked_sections(procedure: &Procedure, plant: &Plant) -> BTreeSet<SectionCell> {
    let mut worked = BTreeSet::new();
    for action in procedure.steps.iter().flat_map(|step| &step.actions) {
        let places = [&action.through, &action.vent, &action.at].into_iter().flatten();
        for id in action.on.iter().chain(places) {
            worked.extend(sections_of(plant, id));
        }
    }
    worked
}

fn sections_of(plant: &Plant, id: &Id) -> Vec<SectionCell> {
    match plant.thing(id) {
        Some(Thing::Section(section)) => vec![section],
        Some(Thing::Connection(connection)) => {
            plant.connection(connection).and_then(|plan| plan.section).into_iter().collect()
        }
        // Naming a whole circuit, as filling and purging do, works on none of its sections in particular.
        Some(Thing::Circuit(circuit)) => match plant.circuit(circuit).map(|plan| plan.sections.as_slice()) {
            Some([only]) => vec![*only],
            _ => Vec::new(),
        },
        _ => Vec::new(),
    }
}
