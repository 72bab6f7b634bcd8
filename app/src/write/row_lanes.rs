//! The lanes beside a row, drawn, and the same in words for those who do not see them.

use crate::components::apart_curve::apart_curve;
use crate::components::lane::lane_cell;
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::derive::lanes::{LaneCell, LaneHead, LaneRow, in_words};
use procedures_schema::model::Id;

/// The lanes of a step.
#[component]
pub fn RowLanes(
    /// The editor's state.
    store: EditorStore,
    /// The step.
    id: Id,
) -> impl IntoView {
    let row = store.lane_row(id);
    let frame = store.frame();
    view! {
        <div class="lanes">
            {move || row.with(|row| row.as_ref().map(|row| frame.with(|frame| strip(row, &frame.heads, frame.most_apart))))}
        </div>
    }
}

/// The lanes below the last step: as they are at the end. They stand twice, beside the line and at the end, and are told
/// to a screen reader once.
pub fn end_lanes(store: EditorStore, is_told: bool) -> impl IntoView {
    let frame = store.frame();
    let last = Memo::new(move |_| store.lanes().with(|lanes| lanes.rows.last().map(as_it_stays)));
    view! {
        <div class="lanes" aria-hidden=(!is_told).then_some("true")>
            {move || last.with(|row| row.as_ref().map(|row| frame.with(|frame| strip(row, &frame.heads, frame.most_apart))))}
        </div>
    }
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

fn strip(row: &LaneRow, heads: &[LaneHead], most: u32) -> impl IntoView + use<> {
    let cells: Vec<_> = row.cells.iter().zip(heads).map(|(cell, head)| lane_cell(cell, &head.kind)).collect();
    let changes: Vec<String> =
        row.cells.iter().zip(heads).filter_map(|(cell, head)| change(cell, head)).collect();
    let apart = format!("still apart {}", row.apart_after);
    let words = changes.into_iter().chain([apart]).collect::<Vec<_>>().join("; ");
    view! {
        {cells}
        {apart_curve(row.apart_before, row.apart_after, most)}
        <p class="unseen">"Afterwards: " {words} "."</p>
    }
}

fn change(cell: &LaneCell, head: &LaneHead) -> Option<String> {
    (cell.before != cell.after).then(|| format!("{} {}", head.name, in_words(&cell.after, &head.kind)))
}
