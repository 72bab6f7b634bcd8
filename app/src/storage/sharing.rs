//! Handing a file to another program of the device: on tablets, which have no folder that people look into.

use js_sys::{Array, Function, Object, Promise, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{DomException, File, FilePropertyBag};

/// What came of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shared {
    /// Another program has it.
    Done,
    /// The person decided otherwise.
    Not,
    /// This is not the way of this device, or the browser refuses such a file.
    Unable,
}

/// Offers a file to the other programs. To be called while a press is being handled.
pub async fn share(name: &str, text: &str) -> Shared {
    try_share(name, text).await.unwrap_or(Shared::Unable)
}

async fn try_share(name: &str, text: &str) -> Result<Shared, JsValue> {
    let window = web_sys::window().ok_or(JsValue::NULL)?;
    // With a mouse a download is what people expect.
    let is_touched = window.match_media("(pointer: coarse)")?.is_some_and(|media| media.matches());
    let navigator = window.navigator();
    let can: Function = Reflect::get(&navigator, &"canShare".into())?.dyn_into()?;
    let share: Function = Reflect::get(&navigator, &"share".into())?.dyn_into()?;
    let options = FilePropertyBag::new();
    options.set_type("application/json");
    let file = File::new_with_str_sequence_and_options(&Array::of1(&text.into()), name, &options)?;
    let what = Object::new();
    Reflect::set(&what, &"files".into(), &Array::of1(&file))?;
    if !is_touched || !can.call1(&navigator, &what)?.is_truthy() {
        return Ok(Shared::Unable);
    }
    match JsFuture::from(share.call1(&navigator, &what)?.dyn_into::<Promise>()?).await {
        Ok(_) => Ok(Shared::Done),
        Err(error) if error.dyn_ref::<DomException>().is_some_and(|error| error.name() == "AbortError") => {
            Ok(Shared::Not)
        }
        Err(error) => Err(error),
    }
}
