//! The lanes beside a row, drawn, and the same in words for those who do not see them.

use crate::components::apart_curve::apart_curve;
use crate::components::lane::{lane_class, lane_picture};
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::derive::lanes::{LaneCell, LaneHead, LaneRow, in_words};
use procedures_schema::model::{CircuitKind, Id};

/// The lanes of a step.
#[component]
pub fn RowLanes(
    /// The editor's state.
    store: EditorStore,
    /// The step.
    id: Id,
) -> impl IntoView {
    view! { <div class="lanes">{strip(store, store.lane_row(&id).into())}</div> }
}

/// The lanes below the last step: as they are at the end. They stand twice, beside the line and at the end, and are told
/// to a screen reader once.
pub fn end_lanes(store: EditorStore, is_told: bool) -> impl IntoView {
    let last = Memo::new(move |_| store.lanes().with(|lanes| lanes.rows.last().map(as_it_stays)));
    view! { <div class="lanes" aria-hidden=(!is_told).then_some("true")>{strip(store, last.into())}</div> }
}

/// The row after a row, if nothing more happens.
fn as_it_stays(row: &LaneRow) -> LaneRow {
    let mut row = row.clone();
    for cell in &mut row.cells {
        cell.before = cell.after;
    }
    row.apart_before = row.apart_after;
    row
}

/// A row of lanes; of a row that changes only the lanes are drawn anew that do.
fn strip(store: EditorStore, row: Signal<Option<LaneRow>>) -> impl IntoView {
    let counts = Memo::new(move |_| {
        row.with(|row| row.as_ref().map_or((0, 0), |row| (row.apart_before, row.apart_after)))
    });
    let lanes = move || {
        let heads = store.heads().get();
        heads.iter().enumerate().map(|(at, head)| lane(row, at, head.kind.clone())).collect_view()
    };
    let words = move || {
        let changes = |row: &LaneRow| store.heads().with(|heads| in_sentence(row, heads));
        row.with(|row| row.as_ref().map(changes))
    };
    view! {
        {lanes}
        {apart_curve(counts)}
        <p class="unseen">{words}</p>
    }
}

fn lane(row: Signal<Option<LaneRow>>, at: usize, kind: CircuitKind) -> impl IntoView {
    let class = lane_class(&kind);
    let cell = Memo::new(move |_| row.with(|row| row.as_ref()?.cells.get(at).cloned()));
    let picture =
        move || cell.with(|cell| cell.as_ref().map_or_else(String::new, |cell| lane_picture(cell, &kind)));
    view! { <svg class=class aria-hidden="true" focusable="false" inner_html=picture></svg> }
}

fn in_sentence(row: &LaneRow, heads: &[LaneHead]) -> String {
    let changes = row.cells.iter().zip(heads).filter_map(|(cell, head)| change(cell, head));
    let apart = format!("still apart {}", row.apart_after);
    format!("Afterwards: {}.", changes.chain([apart]).collect::<Vec<_>>().join("; "))
}

fn change(cell: &LaneCell, head: &LaneHead) -> Option<String> {
    (cell.before != cell.after).then(|| format!("{} {}", head.name, in_words(&cell.after, &head.kind)))
}
