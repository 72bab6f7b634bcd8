//! Files that stay in hand: opened and written in their place, where the browser lets a page do that.
//!
//! The bindings have none of this without unstable features, hence by name. A person who picks nothing is no
//! error. Nothing is written here that the caller has not asked for, and a file is whole or as it was: the
//! browser swaps the new one in when all of it is written.

use js_sys::{Array, Function, Object, Promise, Reflect, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{DomException, File};

/// A file in hand.
#[derive(Clone)]
pub struct Handle(JsValue);

/// Whether the browser hands out files to be written in their place.
pub fn is_there() -> bool {
    window().is_some_and(|window| {
        ["showOpenFilePicker", "showSaveFilePicker"].iter().all(|name| function(&window, name).is_ok())
    })
}

/// The file that a person picks to open; none, if they pick none.
///
/// # Errors
/// In words, if the browser refuses.
pub async fn pick_to_open() -> Result<Option<Handle>, String> {
    let picked = picked("showOpenFilePicker", &Object::new()).await?;
    Ok(picked.map(|files| Handle(Array::from(&files).get(0))))
}

/// The place that a person picks for a file of this name; none, if they pick none.
///
/// # Errors
/// In words, if the browser refuses.
pub async fn pick_to_save(name: &str) -> Result<Option<Handle>, String> {
    let options = Object::new();
    // A plain object takes any field.
    let _ = Reflect::set(&options, &"suggestedName".into(), &name.into());
    Ok(picked("showSaveFilePicker", &options).await?.map(Handle))
}

impl Handle {
    /// The name of the file.
    pub fn name(&self) -> String {
        Reflect::get(&self.0, &"name".into()).ok().and_then(|name| name.as_string()).unwrap_or_default()
    }

    /// The file as it is now.
    ///
    /// # Errors
    /// In words, if it is not in its place any more or may not be read.
    pub async fn file(&self) -> Result<File, String> {
        let file = called(&self.0, "getFile", None).await.map_err(|error| self.in_words(&error))?;
        Ok(file.unchecked_into())
    }

    /// Writes the file; asks the person first, if the browser wants that.
    ///
    /// # Errors
    /// In words, if it may not be written or the device refuses; then it is as it was.
    pub async fn write(&self, text: &str) -> Result<(), String> {
        self.put(text).await.map_err(|error| self.in_words(&error))
    }

    async fn put(&self, text: &str) -> Result<(), JsValue> {
        let mode = Object::new();
        Reflect::set(&mode, &"mode".into(), &"readwrite".into())?;
        if function(&self.0, "requestPermission").is_ok() {
            let answer = called(&self.0, "requestPermission", Some(&mode)).await?;
            if answer.as_string().as_deref() != Some("granted") {
                return Err("you have not let the page write it".into());
            }
        }
        let writer = called(&self.0, "createWritable", None).await?;
        let bytes = Uint8Array::from(text.as_bytes());
        if let Err(error) = called(&writer, "write", Some(&bytes)).await {
            // What is half written is not swapped in; if even this fails, the browser drops it by itself.
            let _ = called(&writer, "abort", None).await;
            return Err(error);
        }
        called(&writer, "close", None).await.map(|_| ())
    }

    fn in_words(&self, error: &JsValue) -> String {
        let name = self.name();
        match error.dyn_ref::<DomException>().map(DomException::name).as_deref() {
            Some("NotFoundError") => format!("{name} is not in its place any more"),
            Some("NotAllowedError") => format!("the browser does not let the page use {name}"),
            Some("QuotaExceededError") => format!("there is no room left for {name}"),
            Some("NoModificationAllowedError" | "InvalidModificationError") => {
                format!("{name} is in use elsewhere or may not be changed")
            }
            _ => {
                let reason = error.as_string().or_else(|| message(error));
                format!("{name}: {}", reason.as_deref().unwrap_or("the browser refused"))
            }
        }
    }
}

async fn picked(dialogue: &str, options: &JsValue) -> Result<Option<JsValue>, String> {
    let window = window().ok_or("there is no window")?;
    match called(&window, dialogue, Some(options)).await {
        Ok(picked) => Ok(Some(picked)),
        Err(error) if error.dyn_ref::<DomException>().is_some_and(|error| error.name() == "AbortError") => {
            Ok(None)
        }
        Err(error) => Err(message(&error).unwrap_or_else(|| "the browser refused".to_owned())),
    }
}

fn window() -> Option<JsValue> {
    web_sys::window().map(JsValue::from)
}

fn message(error: &JsValue) -> Option<String> {
    Reflect::get(error, &"message".into()).ok()?.as_string()
}

fn function(of: &JsValue, name: &str) -> Result<Function, JsValue> {
    Reflect::get(of, &name.into())?.dyn_into()
}

/// Calls a method that answers with a promise.
async fn called(of: &JsValue, name: &str, argument: Option<&JsValue>) -> Result<JsValue, JsValue> {
    let method = function(of, name)?;
    let promise = match argument {
        Some(argument) => method.call1(of, argument)?,
        None => method.call0(of)?,
    };
    JsFuture::from(promise.dyn_into::<Promise>()?).await
}
