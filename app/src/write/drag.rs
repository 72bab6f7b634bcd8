//! Dragging a row by its number or its handle: the row follows the pointer from place to place, held.
//!
//! Places are told by the middles of the other rows, so a tall and a short row never swap to and fro.

use crate::frame::pointer_drag::{self, Dragging, End, may_drag};
use crate::state::{Command, EditorStore};
use leptos::prelude::*;
use procedures_schema::model::Id;
use std::cell::Cell;
use wasm_bindgen::JsCast;

/// How far a pointer moves before a press becomes a drag, in pixels.
const SLACK: i32 = 4;

/// A pointer went down on a number or a handle. A finger scrolls on numbers, so it drags handles alone.
pub fn begin(store: EditorStore, step: Id, event: &web_sys::PointerEvent) {
    let on_handle =
        event.current_target().and_then(|target| target.dyn_into::<web_sys::HtmlButtonElement>().ok());
    if event.shift_key() || !may_drag(event, on_handle.is_some()) {
        return;
    }
    let has_held = Cell::new(false);
    let follow = move |(_, y): (i32, i32)| {
        // If Esc has put it back the drag is over, although the button is still down.
        let goes_on = !has_held.replace(true) || store.is_holding();
        if goes_on {
            let place = place_at(store, &step, y);
            store.run(Command::HoldAt(step.clone(), place));
        }
        goes_on
    };
    let ended = move |end| match end {
        End::Pressed => {}
        End::Dropped => store.run(Command::Drop),
        End::PutBack => store.run(Command::PutHeldBack),
    };
    let (follow, ended) = (Box::new(follow), Box::new(ended));
    pointer_drag::begin(event, Dragging { slack: SLACK, head: ".top", follow, ended });
}

/// How many rows that do not move have their middle above the pointer.
fn place_at(store: EditorStore, step: &Id, y: i32) -> usize {
    let moves = store.selection().get_untracked();
    let is_moved = |id: &str| {
        if moves.contains(step) { moves.iter().any(|m| m.as_str() == id) } else { step.as_str() == id }
    };
    let Ok(rows) = document().query_selector_all("li[data-step]") else { return 0 };
    let row = |at: u32| rows.item(at).and_then(|row| row.dyn_into::<web_sys::Element>().ok());
    let others = (0..rows.length()).filter_map(row);
    let others = others.filter(|row| row.get_attribute("data-step").is_none_or(|id| !is_moved(&id)));
    let above = |row: &web_sys::Element| {
        let place = row.get_bounding_client_rect();
        place.top() + place.height() / 2.0 < f64::from(y)
    };
    others.take_while(above).count()
}
