//! Says what a person needs to know when the program itself fails: that the work is kept.

use wasm_bindgen::JsValue;

/// The element of the page that carries the words; hidden until something fails.
const ELEMENT: &str = "failed";

/// Shows the notice on a failure of the program, and leaves the cause in the browser's log.
pub fn install() {
    std::panic::set_hook(Box::new(|cause| {
        web_sys::console::error_1(&JsValue::from_str(&cause.to_string()));
        let document = web_sys::window().and_then(|window| window.document());
        if let Some(element) = document.and_then(|document| document.get_element_by_id(ELEMENT)) {
            // There is nobody left to tell if even this fails.
            let _ = element.remove_attribute("hidden");
        }
    }));
}
