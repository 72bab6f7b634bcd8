//! How everything stands before the job: the appliance in service and running.

use super::run::Run;
use super::state::{
    ApplianceState, ComponentState, ConnectionState, Contents, Energies, IsolatorState, Proof, SealState,
    SectionState, SettingState, SupplyState, TemporaryState, Whereabouts,
};
use super::timeline::Timeline;
use super::{Plant, SectionCell, Trace};
use crate::model::Mode;
use std::sync::Arc;

/// A trace in which nothing has happened yet.
pub(super) fn trace_of(plant: Plant, run: &Run) -> Trace {
    Trace {
        run: run.clone(),
        appliance: Timeline::new(ApplianceState {
            running: Some(Mode::Heat),
            since_second: 0,
            shown_to_work: None,
            ended: None,
        }),
        clock: Timeline::new(0),
        sections: plant.sections().map(|(s, _)| Timeline::new(section(&plant, s))).collect(),
        supplies: plant
            .sections()
            .map(|_| Timeline::new(SupplyState { fed: false, locked: false }))
            .collect(),
        isolators: plant
            .isolators()
            .map(|(_, i)| Timeline::new(IsolatorState { open: i.normally_open, locked: false }))
            .collect(),
        connections: plant.connections().map(|(_, k)| Timeline::new(made(k.count))).collect(),
        components: plant.components().map(|_| Timeline::new(fitted())).collect(),
        seals: (0..plant.n_seals())
            .map(|_| Timeline::new(SealState { inspected: None, question: None, renewed: None }))
            .collect(),
        temporaries: plant
            .temporaries()
            .map(|(_, t)| Timeline::new(TemporaryState { in_place: t.initially }))
            .collect(),
        settings: plant.settings().map(|_| Timeline::new(as_found())).collect(),
        tests: super::test_lines::TestLines::default(),
        loadings: Vec::new(),
        proofs: Vec::new(),
        unmet: Vec::new(),
        cannot_judge: Vec::new(),
        plant: Arc::new(plant),
    }
}

fn section(plant: &Plant, section: SectionCell) -> SectionState {
    let empty = plant.section(section).is_some_and(|s| s.normally_empty);
    let stored = match plant.row_of(section) {
        Some(row) if !empty => row.stores,
        _ => Energies::default(),
    };
    let contents = if empty { Contents::Air } else { Contents::Medium };
    SectionState { stored, contents, proof: Proof::None, off_since: None, last_filled: None }
}

fn made(count: u32) -> ConnectionState {
    ConnectionState {
        made: count,
        slack: 0,
        open: 0,
        last_touched: None,
        last_opened: None,
        seals_disturbed: false,
        most_open: 0,
        marked: false,
        tightened_again: false,
    }
}

fn fitted() -> ComponentState {
    ComponentState {
        whereabouts: Whereabouts::Fitted,
        new: false,
        on_carrier: true,
        put_over: false,
        last_touched: None,
        cleaned: None,
        inspected: None,
    }
}

fn as_found() -> SettingState {
    SettingState { recorded: None, last_set: None, lost: false, changed: false }
}
