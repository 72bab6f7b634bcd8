//! What the rows of circuits, sections and isolators say.

use super::{Around, Cell, yes};
use crate::model::{
    Action, CensusAnswer, Circuit, CircuitKind, Handle, Id, Isolator, Procedure, Section, Verb,
};
use crate::simulate::{default_readings, kind_row};

impl<'d> Around<'d> {
    /// By section and by circuit what shuts it off. A relief device shuts nothing off.
    pub(super) fn note_isolators(&mut self) {
        for isolator in self.map.isolators.iter().filter(|isolator| isolator.handle != Handle::Relief) {
            for side in [&isolator.between.0, &isolator.between.1] {
                let Some(circuit) = self.circuits.get(side) else { continue };
                for place in [side, &circuit.id] {
                    let known = self.isolators.entry(place).or_default();
                    if known.iter().all(|other| other.id != isolator.id) {
                        known.push(isolator);
                    }
                }
            }
        }
    }

    /// By section and by circuit where a step proves it.
    pub(super) fn note_proofs(&mut self) {
        let document: &'d Procedure = self.document;
        let actions = document.steps.iter().flat_map(|step| &step.actions);
        for action in actions.filter(|action| action.verb == Verb::Prove) {
            let by = self.proof(action);
            for id in &action.on {
                let circuit = self.circuits.get(id).map(|circuit| &circuit.id);
                let whole = self.map.circuits.iter().find(|circuit| circuit.id == *id);
                let inside = whole.into_iter().flat_map(|circuit| circuit.sections.iter().map(|s| &s.id));
                for place in [id].into_iter().chain(circuit).chain(inside) {
                    let known = self.proved.entry(place).or_default();
                    if !known.contains(&by) {
                        known.push(by.clone());
                    }
                }
            }
        }
    }

    /// Where an action proves, or else what it reads; the instrument that is tried before and behind shows nothing of it.
    fn proof(&self, action: &'d Action) -> String {
        if let Some(at) = &action.at {
            return self.name(at).to_owned();
        }
        let read = default_readings(self.document, action).into_iter();
        let read = read.map(|reading| reading.what).filter(|what| !what.starts_with("tester"));
        read.collect::<Vec<_>>().join(", ")
    }

    fn isolated_at(&self, place: &Id) -> Cell {
        let known = self.isolators.get(place).map(Vec::as_slice).unwrap_or_default();
        Cell::names(&known.iter().map(|isolator| isolator.name.as_str()).collect::<Vec<_>>())
    }

    fn proved_at(&self, place: &Id, kind: &CircuitKind) -> Cell {
        let known = self.proved.get(place).map(Vec::as_slice).unwrap_or_default();
        let needs_none = kind_row(kind).is_some_and(|row| row.proof.is_empty());
        if known.is_empty() && needs_none { Cell::of(["needs no proof"]) } else { Cell::of(known) }
    }

    pub(super) fn circuit(&self, circuit: &'d Circuit) -> [Cell; 5] {
        let isolated = self.isolated_at(&circuit.id);
        let isolated = if isolated.is_unknown() && !circuit.fed_by.is_empty() {
            Cell::of([format!("off with {}", self.names_of(&circuit.fed_by))])
        } else {
            isolated
        };
        let entry = self.document.census.iter().find(|entry| entry.kind == circuit.kind);
        let answer = entry.map(|entry| match &entry.answer {
            CensusAnswer::Touched => "touched",
            CensusAnswer::NotTouched => "left alone",
            CensusAnswer::Absent => "said not to be here",
            CensusAnswer::Other(word) => word,
        });
        [
            Cell::of([circuit.kind.word()]),
            isolated,
            self.proved_at(&circuit.id, &circuit.kind),
            stores(circuit),
            Cell::of(answer),
        ]
    }

    pub(super) fn section(&self, circuit: &'d Circuit, section: &'d Section) -> [Cell; 5] {
        [
            Cell::of([&circuit.name]),
            self.isolated_at(&section.id),
            self.proved_at(&section.id, &circuit.kind),
            Cell::of(section.volume.as_ref().map(ToString::to_string)),
            Cell::of([in_service(&circuit.kind, section)]),
        ]
    }

    pub(super) fn isolator(&self, isolator: &'d Isolator) -> [Cell; 5] {
        let between = format!("{} – {}", self.name(&isolator.between.0), self.name(&isolator.between.1));
        [
            Cell::of([isolator.handle.word()]),
            Cell::of([between]),
            Cell::of([isolator.normal.word()]),
            Cell::of(isolator.lockable.map(yes)),
            Cell::of([&isolator.location]),
        ]
    }
}

/// How a section is in service; of air, and of what is no medium, nothing is said.
fn in_service(kind: &CircuitKind, section: &Section) -> &'static str {
    match kind {
        _ if section.normally_empty => "empty",
        kind if is_electric(kind) => "live",
        CircuitKind::AirAndFlue
        | CircuitKind::StoredHeat
        | CircuitKind::StoredMotion
        | CircuitKind::Other(_) => "",
        _ => "full",
    }
}

fn is_electric(kind: &CircuitKind) -> bool {
    matches!(kind, CircuitKind::MainsElectricity | CircuitKind::ControlElectricity | CircuitKind::DcBus)
}

/// What is stored in service; of electricity whether there is a charge.
fn stores(circuit: &Circuit) -> Cell {
    let Some(row) = kind_row(&circuit.kind) else { return Cell::default() };
    let has_charge = row.stores.charge || circuit.discharge_wait.is_some();
    let stored = [
        (row.stores.pressure, "pressure"),
        (row.stores.heat, "heat"),
        (has_charge, "charge"),
        (row.stores.motion, "motion"),
        (is_electric(&circuit.kind) && !has_charge, "no charge"),
    ];
    let stored: Vec<&str> = stored.into_iter().filter_map(|(is_so, what)| is_so.then_some(what)).collect();
    let wait = circuit.discharge_wait.as_ref().map(|wait| format!("wait {wait}"));
    Cell::of(std::iter::once(stored.join(", ")).chain(wait))
}
