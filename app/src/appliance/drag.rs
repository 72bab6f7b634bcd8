//! Dragging a thing onto the thing that it is: while it is over one, it is told whether the two can be one, and why not.
//!
//! A mouse or a pen drags by the row, a finger by the handle, since it scrolls elsewhere. Letting go asks what differs,
//! in the sheet of the thing that stays; nothing is changed before that.

use super::list::{Open, OpenedTo};
use crate::frame::pointer_drag::{self, End, may_drag};
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::edit::differences;
use procedures_schema::model::Id;
use wasm_bindgen::JsCast;

/// How far a pointer moves before a press becomes a drag, in pixels.
const SLACK: i32 = 6;

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

impl Dragging {
    /// Nothing is dragged.
    pub fn new(store: EditorStore, open: Open) -> Self {
        on_cleanup(pointer_drag::stop);
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
        if !may_drag(event, is_handle) {
            return;
        }
        let follow = move |at| {
            self.look(&thing, at);
            true
        };
        let ended = move |end| match end {
            End::Dropped => self.drop_it(),
            End::Pressed | End::PutBack => self.dragged.set(None),
        };
        let (follow, ended) = (Box::new(follow), Box::new(ended));
        pointer_drag::begin(
            event,
            pointer_drag::Dragging { slack: SLACK, head: ".plain-top", follow, ended },
        );
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
