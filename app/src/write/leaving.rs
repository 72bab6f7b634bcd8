//! Esc in the fields that a key of a row has opened: they close, and the keyboard goes back to where it came from.

use leptos::ev::KeyboardEvent;
use leptos::prelude::document;
use wasm_bindgen::JsCast;

/// Whether a key leaves the fields; nothing else hears it then.
pub(super) fn is_left(event: &KeyboardEvent) -> bool {
    let leaves = event.key() == "Escape" && !event.is_composing();
    if leaves {
        event.prevent_default();
        event.stop_propagation();
    }
    leaves
}

/// Puts the keyboard on an element.
pub(super) fn focus_on(id: &str) {
    let element = document().get_element_by_id(id);
    if let Some(element) = element.and_then(|element| element.dyn_into::<web_sys::HtmlElement>().ok()) {
        // Only an element that is gone refuses.
        let _ = element.focus();
    }
}
