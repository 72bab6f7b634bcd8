//! Working without a server: registers the service worker and counts what the cache still lacks.
//!
//! The list of files comes from `precache.json`, which the build writes; nothing here stores or fetches
//! pages. Whether a network is there is never asked, because browsers answer that wrongly.

use super::files;
use procedures_schema::format;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    CacheStorage, RegistrationOptions, ServiceWorkerContainer, ServiceWorkerRegistration,
    ServiceWorkerUpdateViaCache,
};

/// The list of all files of the site, written by the build.
const LIST: &str = "precache.json";
/// The service worker, written by the build.
const WORKER: &str = "sw.js";

/// What is known about working without a server.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Offline {
    /// Every file is in the cache.
    Ready,
    /// So many files are missing.
    Missing(usize),
    /// This browser, or this address, has no service workers.
    Unable,
}

/// Registers the service worker; once for the page.
///
/// # Errors
/// If the browser has no service workers or refuses this one.
pub async fn register() -> Result<(), JsValue> {
    let container = container().ok_or(JsValue::NULL)?;
    let options = RegistrationOptions::new();
    options.set_update_via_cache(ServiceWorkerUpdateViaCache::None);
    JsFuture::from(container.register_with_options(WORKER, &options)).await?;
    JsFuture::from(container.ready()?).await.map(|_| ())
}

/// Asks the server for a newer version, where there is one, and tells whether one is fetched and waits until no tab of
/// this one is open.
pub async fn is_newer_waiting() -> bool {
    let Some(container) = container() else { return false };
    let found = JsFuture::from(container.get_registration()).await.ok();
    let Some(registration) = found.and_then(|found| found.dyn_into::<ServiceWorkerRegistration>().ok())
    else {
        return false;
    };
    // Without a network nothing newer is heard of, and what waits already waits on.
    if let Ok(update) = registration.update() {
        let _ = JsFuture::from(update).await;
    }
    registration.waiting().is_some()
}

/// Compares the list of files with the cache.
pub async fn look() -> Offline {
    let Some(caches) = caches() else { return Offline::Unable };
    let Ok(list) = files::own_text(LIST).await else { return Offline::Unable };
    let Ok(urls) = format::read_part::<Vec<String>>(&list) else { return Offline::Unable };
    let mut missing = 0;
    for url in &urls {
        let found = JsFuture::from(caches.match_with_str(url)).await;
        if !found.is_ok_and(|response| response.is_object()) {
            missing += 1;
        }
    }
    if missing == 0 { Offline::Ready } else { Offline::Missing(missing) }
}

fn container() -> Option<ServiceWorkerContainer> {
    // Absent in insecure contexts and some private windows, where the typed getter would hand out `undefined`.
    let navigator = web_sys::window()?.navigator();
    let value = js_sys::Reflect::get(&navigator, &"serviceWorker".into()).ok()?;
    value.is_object().then(|| value.unchecked_into())
}

fn caches() -> Option<CacheStorage> {
    let window = web_sys::window()?;
    let value = js_sys::Reflect::get(&window, &"caches".into()).ok()?;
    value.is_object().then(|| value.unchecked_into())
}
