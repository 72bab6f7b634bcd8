//! Where words are pressed: the caret goes to that very place.

use crate::state::{Command, EditorStore};
use leptos::prelude::*;
use procedures_schema::model::Id;
use wasm_bindgen::JsCast;

/// A mouse goes right into the words; a finger selects first, so that no keyboard jumps up unasked.
pub fn pressed(store: EditorStore, id: Id, event: &web_sys::PointerEvent) {
    if event.pointer_type() == "mouse" && event.button() == 0 && !event.shift_key() {
        store.run(Command::EditWords(id, caret_at(event)));
    }
}

/// The place in a text that lies under the pointer, in UTF-16 units. Browsers have one of two names for it.
fn caret_at(event: &web_sys::PointerEvent) -> Option<u32> {
    let ask = |name: &str, field: &str| {
        let page = document();
        let of: js_sys::Function = js_sys::Reflect::get(&page, &name.into()).ok()?.dyn_into().ok()?;
        let found = of.call2(&page, &event.client_x().into(), &event.client_y().into()).ok()?;
        let offset = js_sys::Reflect::get(&found, &field.into()).ok()?.as_f64()?;
        format!("{offset}").parse().ok()
    };
    ask("caretPositionFromPoint", "offset").or_else(|| ask("caretRangeFromPoint", "startOffset"))
}
