//! Which rows are in sight, or nearly; the others wait a moment for what changes beside them.

use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::model::Id;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Element, IntersectionObserver, IntersectionObserverEntry, IntersectionObserverInit};

/// So far beyond the edge of the window a row counts as in sight.
const NEARLY: &str = "120px 0px";

/// Tells the store which rows are in sight, as long as the page is shown.
pub fn watch_rows(store: EditorStore) {
    let seen = Closure::<dyn Fn(js_sys::Array)>::new(move |entries: js_sys::Array| {
        let changes: Vec<(Id, bool)> = entries.iter().filter_map(change).collect();
        store.lane_rows().seen(&changes);
    });
    let options = IntersectionObserverInit::new();
    options.set_root_margin(NEARLY);
    // Without one every row waits for the pause; nothing else is lost.
    let Ok(observer) = IntersectionObserver::new_with_options(seen.as_ref().unchecked_ref(), &options) else {
        return;
    };
    let (of_rows, watching) = (observer.clone(), StoredValue::new_local((observer, seen)));
    Effect::new(move |_| {
        store.order().track();
        let observer = of_rows.clone();
        // The rows stand in the page by then; one that is watched already is not watched twice.
        request_animation_frame(move || rows().iter().for_each(|row| observer.observe(row)));
    });
    on_cleanup(move || {
        watching.with_value(|(observer, _)| observer.disconnect());
    });
}

fn change(entry: wasm_bindgen::JsValue) -> Option<(Id, bool)> {
    let entry: IntersectionObserverEntry = entry.dyn_into().ok()?;
    let step = entry.target().get_attribute("data-step")?;
    Some((Id::new(&step), entry.is_intersecting()))
}

fn rows() -> Vec<Element> {
    let Ok(found) = document().query_selector_all("li[data-step]") else { return Vec::new() };
    (0..found.length()).filter_map(|at| found.get(at)?.dyn_into().ok()).collect()
}
