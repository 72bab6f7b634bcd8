//! Files that a person opens or saves.
//!
//! A file is read whole and handed on as bytes; whether it is one of ours is decided by its content, never
//! by its name, because tablets and mail programs rename files.

use js_sys::{Array, Uint8Array};
use std::time::Duration;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, BlobPropertyBag, File, HtmlAnchorElement, Url};

/// Files larger than this are not even read.
pub const LARGEST_BYTES: f64 = 50.0 * 1024.0 * 1024.0;

/// The bytes of a file.
///
/// # Errors
/// In words, if the file is too large or cannot be read.
pub async fn bytes_of(file: &File) -> Result<Vec<u8>, String> {
    let size = file.size();
    if size > LARGEST_BYTES {
        let megabytes = (size / 1024.0 / 1024.0).ceil();
        return Err(format!("This file has {megabytes} MB; 50 MB can be opened. Nothing was changed."));
    }
    let buffer = JsFuture::from(file.array_buffer()).await;
    let buffer = buffer
        .map_err(|_| "This file cannot be read from its place any more. Nothing was changed.".to_owned())?;
    Ok(Uint8Array::new(&buffer).to_vec())
}

/// Hands a text to the person as a file to save.
///
/// # Errors
/// In words, if the browser does not let the page make files.
pub fn save(name: &str, text: &str) -> Result<(), String> {
    let refused = |_: JsValue| "This browser does not let the page save a file.".to_owned();
    let options = BlobPropertyBag::new();
    options.set_type("application/json");
    let blob = Blob::new_with_str_sequence_and_options(&Array::of1(&JsValue::from_str(text)), &options)
        .map_err(refused)?;
    let url = Url::create_object_url_with_blob(&blob).map_err(refused)?;
    let document = leptos::prelude::document();
    let link: HtmlAnchorElement = document.create_element("a").map_err(refused)?.unchecked_into();
    link.set_href(&url);
    link.set_download(name);
    link.click();
    // Some browsers start to read only after the click has been handled, so the address lives a while longer.
    leptos::prelude::set_timeout(
        move || {
            let _ = Url::revoke_object_url(&url);
        },
        Duration::from_secs(60),
    );
    Ok(())
}

/// The text of a file of this site.
///
/// # Errors
/// In words, if there is none or the server and the cache are both out of reach.
pub async fn own_text(path: &str) -> Result<String, String> {
    let missing = |_: JsValue| format!("{path} cannot be fetched");
    let window = web_sys::window().ok_or("no window")?;
    let response: web_sys::Response =
        JsFuture::from(window.fetch_with_str(path)).await.map_err(missing)?.unchecked_into();
    if !response.ok() {
        return Err(format!("{path} is not there (answer {})", response.status()));
    }
    let text = JsFuture::from(response.text().map_err(missing)?).await.map_err(missing)?;
    text.as_string().ok_or_else(|| format!("{path} is no text"))
}
