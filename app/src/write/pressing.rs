//! Where words are pressed: the caret goes to that very place.

use crate::state::{Command, EditorStore};
use leptos::prelude::*;
use procedures_schema::model::Id;
use wasm_bindgen::JsCast;

/// Presses on the words of one row.
///
/// A mouse goes right into the words; a finger selects first, so that no keyboard jumps up unasked.
#[derive(Clone, Copy)]
pub struct Pressing {
    store: EditorStore,
    id: StoredValue<Id>,
    is_mouse: StoredValue<bool>,
}

impl Pressing {
    /// Of the row of a step.
    pub fn new(store: EditorStore, id: StoredValue<Id>) -> Self {
        Self { store, id, is_mouse: StoredValue::new(false) }
    }

    /// Takes note of what presses; only this event says so.
    pub fn comes(self, event: &web_sys::PointerEvent) {
        self.is_mouse.set_value(event.pointer_type() == "mouse");
    }

    /// Opens the words with the caret where they are pressed. The browser would give the keyboard to the row after that,
    /// for the words that it found under the pointer have gone.
    pub fn presses(self, event: &web_sys::MouseEvent) {
        if self.is_mouse.get_value() && event.button() == 0 && !event.shift_key() {
            event.prevent_default();
            self.store.run(Command::EditWords(self.id.get_value(), caret_at(event)));
        }
    }
}

/// The place in a text that lies under the pointer, in UTF-16 units. Browsers have one of two names for it.
fn caret_at(event: &web_sys::MouseEvent) -> Option<u32> {
    let ask = |name: &str, field: &str| {
        let page = document();
        let of: js_sys::Function = js_sys::Reflect::get(&page, &name.into()).ok()?.dyn_into().ok()?;
        let found = of.call2(&page, &event.client_x().into(), &event.client_y().into()).ok()?;
        let offset = js_sys::Reflect::get(&found, &field.into()).ok()?.as_f64()?;
        format!("{offset}").parse().ok()
    };
    ask("caretPositionFromPoint", "offset").or_else(|| ask("caretRangeFromPoint", "startOffset"))
}
