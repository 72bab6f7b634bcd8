//! Dragging a thing onto the thing that it is: while it is over one, it is told whether the two can be one, and why not.
//!
//! A mouse or a pen drags by the row, a finger by the handle, since it scrolls elsewhere. Letting go asks what differs,
//! in the sheet of the thing that stays; nothing is changed before that.

use super::list::{Open, OpenedTo};
use crate::frame::edge_scroll::scroll_at_edges;
use crate::state::EditorStore;
use leptos::ev;
use leptos::leptos_dom::helpers::{IntervalHandle, WindowListenerHandle, set_interval_with_handle};
use leptos::prelude::*;
use procedures_schema::edit::differences;
use procedures_schema::model::Id;
use std::cell::{Cell, RefCell};
use std::time::Duration;
use wasm_bindgen::JsCast;

/// How far a pointer moves before a press becomes a drag, in pixels.
const SLACK: i32 = 6;
const SCROLL_EVERY: Duration = Duration::from_millis(30);

/// What is dragged, and over what.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Dragged {
    /// The thing.
    pub thing: Id,
    /// The thing below the pointer.
    pub over: Option<Id>,
    /// Why the two stay two, if they do.
    pub refused: Option<String>,
}

/// What rows and bar know of a drag.
#[derive(Clone, Copy)]
pub struct Dragging {
    store: EditorStore,
    open: Open,
    dragged: RwSignal<Option<Dragged>>,
}

/// A pointer that is down on a row.
struct Drag {
    dragging: Dragging,
    thing: Id,
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

/// Whether the press that is being told of was the end of a drag; asked once.
pub fn has_just_ended() -> bool {
    HAS_JUST_ENDED.replace(false)
}

impl Dragging {
    /// Nothing is dragged.
    pub fn new(store: EditorStore, open: Open) -> Self {
        on_cleanup(end);
        Self { store, open, dragged: RwSignal::new(None) }
    }

    /// What is dragged.
    pub fn dragged(self) -> ReadSignal<Option<Dragged>> {
        self.dragged.read_only()
    }

    /// Whether a thing is in hand.
    pub fn is_held(self, thing: &Id) -> bool {
        self.dragged.with(|dragged| dragged.as_ref().is_some_and(|dragged| dragged.thing == *thing))
    }

    /// Whether what is in hand is over a thing, and could be one with it or not.
    pub fn over(self, thing: &Id) -> Option<bool> {
        self.dragged.with(|dragged| {
            let dragged = dragged.as_ref().filter(|dragged| dragged.over.as_ref() == Some(thing))?;
            Some(dragged.refused.is_none())
        })
    }

    /// A pointer went down on a row or its handle.
    pub fn begin(self, thing: Id, event: &web_sys::PointerEvent) {
        let target = event.current_target().and_then(|target| target.dyn_into::<web_sys::Element>().ok());
        let is_handle = target.is_some_and(|target| target.class_list().contains("handle"));
        if event.button() != 0 || (event.pointer_type() == "touch" && !is_handle) {
            return;
        }
        end();
        HAS_JUST_ENDED.set(false);
        let listeners = vec![
            window_event_listener(ev::pointermove, |event| moved(&event)),
            window_event_listener(ev::pointerup, |event| released(event.pointer_id(), true)),
            window_event_listener(ev::pointercancel, |event| released(event.pointer_id(), false)),
            window_event_listener(ev::keydown, |event| escaped(&event)),
        ];
        let (pointer, from) = (event.pointer_id(), (event.client_x(), event.client_y()));
        let scrolling = set_interval_with_handle(scroll, SCROLL_EVERY).ok();
        let (at, is_moving) = (Cell::new(from), Cell::new(false));
        DRAG.set(Some(Drag { dragging: self, thing, pointer, from, at, is_moving, listeners, scrolling }));
    }

    /// Looks at what is below the pointer; whether two can be one is asked only when that changes.
    fn look(self, thing: &Id, (x, y): (i32, i32)) {
        #[expect(clippy::cast_precision_loss, reason = "no window is so large")]
        let below = document().element_from_point(x as f32, y as f32);
        let row = below.and_then(|below| below.closest("li[id^=\"thing-\"]").ok().flatten());
        let over = row.and_then(|row| row.id().strip_prefix("thing-").map(Id::new)).filter(|id| id != thing);
        let is_same = self.dragged.with_untracked(|dragged| {
            dragged.as_ref().is_some_and(|dragged| dragged.thing == *thing && dragged.over == over)
        });
        if !is_same {
            let told = |over: &Id| {
                self.store.document().with_untracked(|document| differences(document, over, thing))
            };
            let refused = over.as_ref().and_then(|over| told(over).err()).map(|error| error.to_string());
            self.dragged.set(Some(Dragged { thing: thing.clone(), over, refused }));
        }
    }

    /// Asks what differs where the two can be one, and says why not where they cannot.
    fn drop_it(self) {
        let Some(dragged) = self.dragged.get_untracked() else { return };
        self.dragged.set(None);
        match (dragged.over, dragged.refused) {
            (Some(over), None) => self.open.set(Some((over, OpenedTo::Merge(Some(dragged.thing))))),
            (_, Some(reason)) => self.store.notice().set(Some(reason)),
            (None, None) => {}
        }
    }
}

fn moved(event: &web_sys::PointerEvent) {
    let begins = DRAG.with_borrow(|drag| {
        let Some(drag) = drag.as_ref().filter(|drag| drag.pointer == event.pointer_id()) else {
            return false;
        };
        let at = (event.client_x(), event.client_y());
        drag.at.set(at);
        if (at.0 - drag.from.0).abs().max((at.1 - drag.from.1).abs()) > SLACK {
            drag.is_moving.set(true);
        }
        drag.is_moving.get()
    });
    if begins {
        event.prevent_default();
        look();
    }
}

fn look() {
    let found = DRAG.with_borrow(|drag| {
        let drag = drag.as_ref().filter(|drag| drag.is_moving.get())?;
        Some((drag.dragging, drag.thing.clone(), drag.at.get()))
    });
    if let Some((dragging, thing, at)) = found {
        dragging.look(&thing, at);
    }
}

fn scroll() {
    let y = DRAG
        .with_borrow(|drag| drag.as_ref().filter(|drag| drag.is_moving.get()).map(|drag| drag.at.get().1));
    if y.is_some_and(|y| scroll_at_edges(".plain-top", f64::from(y))) {
        look();
    }
}

fn released(pointer: i32, is_dropped: bool) {
    let found = DRAG.with_borrow(|drag| {
        drag.as_ref().filter(|drag| drag.pointer == pointer).map(|drag| (drag.dragging, drag.is_moving.get()))
    });
    let Some((dragging, was_moving)) = found else { return };
    end();
    if was_moving && is_dropped {
        dragging.drop_it();
    } else {
        dragging.dragged.set(None);
    }
}

/// Esc puts back what is in hand.
fn escaped(event: &web_sys::KeyboardEvent) {
    let held =
        DRAG.with_borrow(|drag| drag.as_ref().filter(|drag| drag.is_moving.get()).map(|drag| drag.dragging));
    if let Some(dragging) = held.filter(|_| event.key() == "Escape") {
        event.prevent_default();
        end();
        dragging.dragged.set(None);
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
