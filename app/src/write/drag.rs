//! Dragging a row by its number or its handle: the row follows the pointer from place to place, held.
//!
//! Places are told by the middles of the other rows, so a tall and a short row never swap to and fro. Near the
//! edges of the window the page scrolls.

use crate::frame::edge_scroll::scroll_at_edges;
use crate::state::{Command, EditorStore};
use leptos::ev;
use leptos::leptos_dom::helpers::{IntervalHandle, WindowListenerHandle, set_interval_with_handle};
use leptos::prelude::*;
use procedures_schema::model::Id;
use std::cell::{Cell, RefCell};
use std::time::Duration;
use wasm_bindgen::JsCast;

/// How far a pointer moves before a press becomes a drag, in pixels.
const SLACK: i32 = 4;
const SCROLL_EVERY: Duration = Duration::from_millis(30);

/// A drag that is going on.
struct Drag {
    store: EditorStore,
    step: Id,
    pointer: i32,
    from_y: i32,
    y: Cell<i32>,
    is_moving: Cell<bool>,
    has_held: Cell<bool>,
    listeners: Vec<WindowListenerHandle>,
    scrolling: Option<IntervalHandle>,
}

thread_local! {
    static DRAG: RefCell<Option<Drag>> = const { RefCell::new(None) };
    static HAS_JUST_ENDED: Cell<bool> = const { Cell::new(false) };
}

/// A pointer went down on a number or a handle. A finger scrolls on numbers, so it drags handles alone.
pub fn begin(store: EditorStore, step: Id, event: &web_sys::PointerEvent) {
    let on_handle =
        event.current_target().and_then(|target| target.dyn_into::<web_sys::HtmlButtonElement>().ok());
    if event.button() != 0 || event.shift_key() || (event.pointer_type() == "touch" && on_handle.is_none()) {
        return;
    }
    end();
    HAS_JUST_ENDED.set(false);
    let listeners = vec![
        window_event_listener(ev::pointermove, |event| moved(&event)),
        window_event_listener(ev::pointerup, |event| released(event.pointer_id(), Command::Drop)),
        window_event_listener(ev::pointercancel, |event| released(event.pointer_id(), Command::PutHeldBack)),
    ];
    let scrolling = set_interval_with_handle(scroll, SCROLL_EVERY).ok();
    let (pointer, from_y) = (event.pointer_id(), event.client_y());
    let (y, is_moving, has_held) = (Cell::new(from_y), Cell::new(false), Cell::new(false));
    DRAG.set(Some(Drag { store, step, pointer, from_y, y, is_moving, has_held, listeners, scrolling }));
}

/// Whether the press that is being told of was the end of a drag; asked once.
pub fn has_just_ended() -> bool {
    HAS_JUST_ENDED.replace(false)
}

fn moved(event: &web_sys::PointerEvent) {
    let begins = DRAG.with_borrow(|drag| {
        let Some(drag) = drag.as_ref().filter(|drag| drag.pointer == event.pointer_id()) else {
            return false;
        };
        drag.y.set(event.client_y());
        if (event.client_y() - drag.from_y).abs() > SLACK {
            drag.is_moving.set(true);
        }
        drag.is_moving.get()
    });
    if begins {
        event.prevent_default();
        follow();
    }
}

/// Holds the row at the place where the pointer is.
fn follow() {
    let found = DRAG.with_borrow(|drag| {
        let drag = drag.as_ref().filter(|drag| drag.is_moving.get())?;
        Some((drag.store, drag.step.clone(), drag.y.get(), drag.has_held.replace(true)))
    });
    let Some((store, step, y, has_held)) = found else { return };
    if has_held && !store.is_holding() {
        // Esc has put it back: the drag is over, although the button is still down.
        end();
        return;
    }
    let place = place_at(store, &step, y);
    store.run(Command::HoldAt(step, place));
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

fn scroll() {
    let y =
        DRAG.with_borrow(|drag| drag.as_ref().filter(|drag| drag.is_moving.get()).map(|drag| drag.y.get()));
    if y.is_some_and(|y| scroll_at_edges(".top", f64::from(y))) {
        follow();
    }
}

fn released(pointer: i32, command: Command) {
    let found = DRAG.with_borrow(|drag| {
        drag.as_ref().filter(|drag| drag.pointer == pointer).map(|drag| (drag.store, drag.is_moving.get()))
    });
    let Some((store, was_moving)) = found else { return };
    end();
    if was_moving {
        store.run(command);
    }
}

fn end() {
    let Some(drag) = DRAG.take() else { return };
    HAS_JUST_ENDED.set(drag.is_moving.get());
    drag.listeners.into_iter().for_each(WindowListenerHandle::remove);
    if let Some(scrolling) = drag.scrolling {
        scrolling.clear();
    }
}
