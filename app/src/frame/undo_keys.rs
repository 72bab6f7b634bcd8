//! Undo and redo by keys, alike on every screen of the editor.

use crate::state::{Command, EditorStore};
use leptos::ev::KeyboardEvent;
use wasm_bindgen::JsCast;

/// Takes back or does again what the keys ask for; says whether they were such keys. A field that holds what the
/// document does not have yet is undone by the browser, key by key.
pub fn undo_keys(store: EditorStore, event: &KeyboardEvent) -> bool {
    if !(event.ctrl_key() || event.meta_key()) || event.alt_key() || has_text_of_its_own(event) {
        return false;
    }
    let command = match event.key().to_lowercase().as_str() {
        "z" if event.shift_key() => Command::Redo,
        "z" => Command::Undo,
        "y" => Command::Redo,
        _ => return false,
    };
    event.prevent_default();
    store.run(command);
    true
}

/// Whether the keyboard is in a line that is not kept yet, or in a name that is taken when its field is left.
fn has_text_of_its_own(event: &KeyboardEvent) -> bool {
    let target = event.target().and_then(|target| target.dyn_into::<web_sys::Element>().ok());
    target.is_some_and(|field| {
        let line = field.dyn_ref::<web_sys::HtmlTextAreaElement>();
        let is_typed =
            line.is_some_and(|line| line.class_list().contains("draft") && !line.value().is_empty());
        // A selector that is ours is well formed.
        is_typed || field.closest(".naming").ok().flatten().is_some()
    })
}
