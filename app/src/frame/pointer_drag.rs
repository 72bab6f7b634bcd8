//! A press that becomes a drag: from so many pixels on it follows its pointer, near the edges of the window the page
//! scrolls, and letting go drops what is dragged. Esc, or a pointer that the browser takes away, puts it back.
//!
//! There is one drag at a time in the whole page. What is dragged, and over what, is the screen's own.

use super::edge_scroll::scroll_at_edges;
use leptos::ev;
use leptos::leptos_dom::helpers::{IntervalHandle, WindowListenerHandle, set_interval_with_handle};
use leptos::prelude::*;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use std::time::Duration;

const SCROLL_EVERY: Duration = Duration::from_millis(30);

/// How a press ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// It was none but a press.
    Pressed,
    /// What is dragged is let go.
    Dropped,
    /// What is dragged goes back.
    PutBack,
}

/// What a screen does with a drag.
pub struct Dragging {
    /// How far a pointer moves before a press becomes a drag, in pixels.
    pub slack: i32,
    /// What covers the top of the window, as a selector.
    pub head: &'static str,
    /// Follows the pointer to a place in the window; whether the drag goes on.
    pub follow: Box<dyn Fn((i32, i32)) -> bool>,
    /// Told of the end, unless following has ended it.
    pub ended: Box<dyn Fn(End)>,
}

/// A pointer that is down.
struct Drag {
    doing: Rc<Dragging>,
    pointer: i32,
    from: (i32, i32),
    at: Cell<(i32, i32)>,
    is_moving: Cell<bool>,
    listeners: Vec<WindowListenerHandle>,
    scrolling: Option<IntervalHandle>,
}

thread_local! {
    static DRAG: RefCell<Option<Drag>> = const { RefCell::new(None) };
    static HAS_JUST_ENDED: Cell<bool> = const { Cell::new(false) };
}

/// Whether a pointer that goes down may drag: the first button, and a finger only by a handle, since it scrolls elsewhere.
pub fn may_drag(event: &web_sys::PointerEvent, is_handle: bool) -> bool {
    event.button() == 0 && (event.pointer_type() != "touch" || is_handle)
}

/// A pointer went down.
pub fn begin(event: &web_sys::PointerEvent, doing: Dragging) {
    stop();
    HAS_JUST_ENDED.set(false);
    let listeners = vec![
        window_event_listener(ev::pointermove, |event| moved(&event)),
        window_event_listener(ev::pointerup, |event| released(event.pointer_id(), End::Dropped)),
        window_event_listener(ev::pointercancel, |event| released(event.pointer_id(), End::PutBack)),
        window_event_listener(ev::keydown, |event| escaped(&event)),
    ];
    let (pointer, from) = (event.pointer_id(), (event.client_x(), event.client_y()));
    let scrolling = set_interval_with_handle(scroll, SCROLL_EVERY).ok();
    let (at, is_moving, doing) = (Cell::new(from), Cell::new(false), Rc::new(doing));
    DRAG.set(Some(Drag { doing, pointer, from, at, is_moving, listeners, scrolling }));
}

/// Whether the press that is being told of was the end of a drag; asked once.
pub fn has_just_ended() -> bool {
    HAS_JUST_ENDED.replace(false)
}

/// Ends what is going on, of which nobody is told.
pub fn stop() {
    let Some(drag) = DRAG.take() else { return };
    HAS_JUST_ENDED.set(drag.is_moving.get());
    drag.listeners.into_iter().for_each(WindowListenerHandle::remove);
    if let Some(scrolling) = drag.scrolling {
        scrolling.clear();
    }
}

fn moved(event: &web_sys::PointerEvent) {
    let is_dragged = DRAG.with_borrow(|drag| {
        let Some(drag) = drag.as_ref().filter(|drag| drag.pointer == event.pointer_id()) else {
            return false;
        };
        let at = (event.client_x(), event.client_y());
        drag.at.set(at);
        if (at.0 - drag.from.0).abs().max((at.1 - drag.from.1).abs()) > drag.doing.slack {
            drag.is_moving.set(true);
        }
        drag.is_moving.get()
    });
    if is_dragged {
        event.prevent_default();
        follow();
    }
}

/// What is being dragged, and where the pointer is.
fn dragged() -> Option<(Rc<Dragging>, (i32, i32))> {
    DRAG.with_borrow(|drag| {
        let drag = drag.as_ref().filter(|drag| drag.is_moving.get())?;
        Some((drag.doing.clone(), drag.at.get()))
    })
}

fn follow() {
    if let Some((doing, at)) = dragged()
        && !(doing.follow)(at)
    {
        stop();
    }
}

fn scroll() {
    if let Some((doing, (_, y))) = dragged()
        && scroll_at_edges(doing.head, f64::from(y))
    {
        follow();
    }
}

fn released(pointer: i32, end: End) {
    let found = DRAG.with_borrow(|drag| {
        let drag = drag.as_ref().filter(|drag| drag.pointer == pointer)?;
        Some((drag.doing.clone(), drag.is_moving.get()))
    });
    if let Some((doing, was_moving)) = found {
        stop();
        (doing.ended)(if was_moving { end } else { End::Pressed });
    }
}

fn escaped(event: &web_sys::KeyboardEvent) {
    if event.key() == "Escape"
        && !event.default_prevented()
        && let Some((doing, _)) = dragged()
    {
        event.prevent_default();
        stop();
        (doing.ended)(End::PutBack);
    }
}
