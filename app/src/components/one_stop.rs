//! Keys that stand together as one stop of Tab: arrows lead from one to the next, Home and End to the ends.
//!
//! Each of them carries `data-along`, and the first the only `tabindex` of 0.

use leptos::ev::KeyboardEvent;
use leptos::prelude::document;
use wasm_bindgen::JsCast;

/// The `tabindex` of a key, by its position.
pub fn stop(at: usize) -> &'static str {
    if at == 0 { "0" } else { "-1" }
}

/// Leads along the keys of the element that hears an event; says whether the key was one that does.
pub fn goes_along(event: &KeyboardEvent) -> bool {
    if event.ctrl_key() || event.alt_key() || event.meta_key() || event.shift_key() {
        return false;
    }
    let around = event.current_target().and_then(|target| target.dyn_into::<web_sys::Element>().ok());
    let Some(found) = around.and_then(|around| around.query_selector_all("[data-along]").ok()) else {
        return false;
    };
    let key = |at: u32| found.item(at).and_then(|key| key.dyn_into::<web_sys::HtmlElement>().ok());
    let keys: Vec<web_sys::HtmlElement> = (0..found.length()).filter_map(key).collect();
    let active = document().active_element();
    let Some(at) = keys.iter().position(|key| active.as_ref() == Some(key.as_ref())) else { return false };
    let last = keys.len() - 1;
    let next = match event.key().as_str() {
        "ArrowRight" | "ArrowDown" => (at + 1) % keys.len(),
        "ArrowLeft" | "ArrowUp" => at.checked_sub(1).unwrap_or(last),
        "Home" => 0,
        "End" => last,
        _ => return false,
    };
    for (at, key) in keys.iter().enumerate() {
        key.set_tab_index(if at == next { 0 } else { -1 });
    }
    if let Some(key) = keys.get(next) {
        // A key that is gone refuses.
        let _ = key.focus();
    }
    event.prevent_default();
    event.stop_propagation();
    true
}
