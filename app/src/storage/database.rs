//! The browser's database: texts under keys in a few stores.
//!
//! One connection for the page, opened when first needed. Browsers close it behind our back (in the
//! background, when another tab upgrades), so every call is tried once more on a fresh connection. A write
//! is `Ok` only after the transaction has completed. No other future is awaited inside a transaction,
//! because it would be committed under us.

use js_sys::{Array, Function, Object, Promise, Reflect};
use std::cell::RefCell;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    DomException, IdbDatabase, IdbFactory, IdbKeyRange, IdbOpenDbRequest, IdbRequest, IdbTransaction,
    IdbTransactionMode,
};

/// The database of this site.
const NAME: &str = "putback";
/// Raised when a store is added.
const VERSION: u32 = 3;

/// A store of the database.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Store {
    /// Procedures being written, by id.
    Docs,
    /// The undo of each procedure, by its id.
    Undo,
    /// Earlier versions of procedures, by id and time.
    Versions,
    /// Jobs being followed, by id.
    Jobs,
    /// Small facts, such as which procedure is open.
    Meta,
}

impl Store {
    const ALL: [Self; 5] = [Self::Docs, Self::Undo, Self::Versions, Self::Jobs, Self::Meta];

    fn name(self) -> &'static str {
        match self {
            Self::Docs => "docs",
            Self::Undo => "undo",
            Self::Versions => "versions",
            Self::Jobs => "jobs",
            Self::Meta => "meta",
        }
    }
}

/// How hard the browser is asked to make sure before it says that a write is complete.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Durability {
    /// For typing.
    Default,
    /// For ticks and readings.
    Strict,
}

/// Why something could not be kept or read; the text is for people.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StoreError {
    name: String,
    message: String,
}

impl std::fmt::Display for StoreError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self.name.as_str() {
            "QuotaExceededError" => f.write_str("this device has no room left for the site"),
            "SecurityError" | "NotAllowedError" => f.write_str(
                "this browser does not let the site keep anything, perhaps by a setting or a private window",
            ),
            "VersionError" => f.write_str("a newer Putback has been open here; reload the page"),
            "" => f.write_str(&self.message),
            name => write!(f, "the browser refused it ({name}: {})", self.message),
        }
    }
}

impl std::error::Error for StoreError {}

impl StoreError {
    fn new(message: &str) -> Self {
        Self { name: String::new(), message: message.to_owned() }
    }

    /// Whether less to keep would help.
    pub fn is_for_want_of_room(&self) -> bool {
        self.name == "QuotaExceededError"
    }

    /// Whether a fresh connection may help.
    fn is_stale_connection(&self) -> bool {
        matches!(
            self.name.as_str(),
            "InvalidStateError" | "UnknownError" | "AbortError" | "TransactionInactiveError"
        )
    }
}

impl From<JsValue> for StoreError {
    fn from(value: JsValue) -> Self {
        if let Some(error) = value.dyn_ref::<DomException>() {
            return Self { name: error.name(), message: error.message() };
        }
        let of_error = || value.dyn_ref::<js_sys::Error>().map(|error| String::from(error.message()));
        let message = value
            .as_string()
            .or_else(of_error)
            .unwrap_or_else(|| "the browser refused to keep it".to_owned());
        Self { name: String::new(), message }
    }
}

/// One text to keep.
#[derive(Clone, Copy)]
pub struct Entry<'a> {
    /// Where.
    pub store: Store,
    /// Under which key.
    pub key: &'a str,
    /// The text; `None` forgets the key.
    pub text: Option<&'a str>,
}

/// Keeps all entries or none; `Ok` only after the transaction has completed.
///
/// # Errors
/// If the database cannot be opened or the transaction is aborted, also on a second connection.
pub async fn keep(entries: &[Entry<'_>], durability: Durability) -> Result<(), StoreError> {
    match try_keep(entries, durability).await {
        Err(error) if error.is_stale_connection() => {
            forget_connection();
            try_keep(entries, durability).await
        }
        other => other,
    }
}

/// The text under a key, if there is one.
///
/// # Errors
/// If the database cannot be opened or read, also on a second connection.
pub async fn kept(store: Store, key: &str) -> Result<Option<String>, StoreError> {
    match try_kept(store, key).await {
        Err(error) if error.is_stale_connection() => {
            forget_connection();
            try_kept(store, key).await
        }
        other => other,
    }
}

/// Every text of a store.
///
/// # Errors
/// If the database cannot be opened or read, also on a second connection.
pub async fn kept_all(store: Store) -> Result<Vec<String>, StoreError> {
    match try_kept_all(store).await {
        Err(error) if error.is_stale_connection() => {
            forget_connection();
            try_kept_all(store).await
        }
        other => other,
    }
}

/// Every key of a store that begins so, in rising order.
///
/// # Errors
/// If the database cannot be opened or read, also on a second connection.
pub async fn keys(store: Store, beginning: &str) -> Result<Vec<String>, StoreError> {
    match try_keys(store, beginning).await {
        Err(error) if error.is_stale_connection() => {
            forget_connection();
            try_keys(store, beginning).await
        }
        other => other,
    }
}

async fn try_keep(entries: &[Entry<'_>], durability: Durability) -> Result<(), StoreError> {
    let database = connection().await?;
    let stores: Array = Store::ALL
        .iter()
        .filter(|s| entries.iter().any(|e| e.store == **s))
        .map(|s| JsValue::from(s.name()))
        .collect();
    let transaction = writing(&database, &stores, durability)?;
    let completed = completion(&transaction);
    if let Err(refusal) = entries.iter().try_for_each(|entry| request(&transaction, entry)) {
        // Else the browser would keep the entries before this one. It is over only when it says so.
        if transaction.abort().is_ok() {
            let _ = JsFuture::from(completed).await;
        }
        return Err(refusal.into());
    }
    close_to_requests(&transaction);
    match JsFuture::from(completed).await {
        Ok(_) => Ok(()),
        Err(_) => Err(transaction
            .error()
            .map_or_else(|| StoreError::new("the browser gave up keeping it"), |e| JsValue::from(e).into())),
    }
}

fn request(transaction: &IdbTransaction, entry: &Entry<'_>) -> Result<(), JsValue> {
    let store = transaction.object_store(entry.store.name())?;
    match entry.text {
        Some(text) => store.put_with_key(&text.into(), &entry.key.into())?,
        None => store.delete(&entry.key.into())?,
    };
    Ok(())
}

/// Says that all is asked for. Without this the browser waits until each answer has been heard, and a page that
/// goes hears none. By name, since the bindings warn of it; a browser without it finds out by itself.
fn close_to_requests(transaction: &IdbTransaction) {
    if let Ok(commit) = Reflect::get(transaction, &"commit".into()).and_then(JsCast::dyn_into::<Function>) {
        // It is refused only where the transaction is over already, which is told elsewhere.
        let _ = commit.call0(transaction);
    }
}

/// A transaction for writing. The bindings have no durability without unstable features, hence by name.
fn writing(
    database: &IdbDatabase,
    stores: &Array,
    durability: Durability,
) -> Result<IdbTransaction, JsValue> {
    let options = Object::new();
    let durability = match durability {
        Durability::Default => "default",
        Durability::Strict => "strict",
    };
    Reflect::set(&options, &"durability".into(), &durability.into())?;
    let begin: Function = Reflect::get(database, &"transaction".into())?.dyn_into()?;
    begin.call3(database, stores, &"readwrite".into(), &options)?.dyn_into()
}

async fn try_kept(store: Store, key: &str) -> Result<Option<String>, StoreError> {
    let database = connection().await?;
    let transaction = database.transaction_with_str_and_mode(store.name(), IdbTransactionMode::Readonly)?;
    let request = transaction.object_store(store.name())?.get(&key.into())?;
    Ok(answer(&request).await?.as_string())
}

async fn try_kept_all(store: Store) -> Result<Vec<String>, StoreError> {
    let database = connection().await?;
    let transaction = database.transaction_with_str_and_mode(store.name(), IdbTransactionMode::Readonly)?;
    let request = transaction.object_store(store.name())?.get_all()?;
    let all = Array::from(&answer(&request).await?);
    Ok(all.iter().filter_map(|text| text.as_string()).collect())
}

async fn try_keys(store: Store, beginning: &str) -> Result<Vec<String>, StoreError> {
    let database = connection().await?;
    let transaction = database.transaction_with_str_and_mode(store.name(), IdbTransactionMode::Readonly)?;
    // No key holds the last of all letters.
    let range = IdbKeyRange::bound(&beginning.into(), &format!("{beginning}\u{ffff}").into())?;
    let request = transaction.object_store(store.name())?.get_all_keys_with_key(&range)?;
    let all = Array::from(&answer(&request).await?);
    Ok(all.iter().filter_map(|key| key.as_string()).collect())
}

/// Settles when the transaction does; made before the first request, so that nothing is missed.
fn completion(transaction: &IdbTransaction) -> Promise {
    Promise::new(&mut |resolve, reject| {
        transaction.set_oncomplete(Some(&resolve));
        transaction.set_onabort(Some(&reject));
    })
}

/// The result of one request.
async fn answer(request: &IdbRequest) -> Result<JsValue, StoreError> {
    let settled = Promise::new(&mut |resolve, reject| {
        request.set_onsuccess(Some(&resolve));
        request.set_onerror(Some(&reject));
    });
    match JsFuture::from(settled).await {
        Ok(_) => Ok(request.result()?),
        Err(_) => Err(request
            .error()
            .ok()
            .flatten()
            .map_or_else(|| StoreError::new("the browser did not answer"), |e| JsValue::from(e).into())),
    }
}

thread_local! {
    static CONNECTION: RefCell<Option<IdbDatabase>> = const { RefCell::new(None) };
}

fn forget_connection() {
    if let Some(database) = CONNECTION.with(RefCell::take) {
        database.close();
    }
}

async fn connection() -> Result<IdbDatabase, StoreError> {
    if let Some(open) = CONNECTION.with_borrow(Clone::clone) {
        return Ok(open);
    }
    let factory: IdbFactory =
        web_sys::window().and_then(|window| window.indexed_db().ok().flatten()).ok_or_else(|| {
            StoreError::new("this browser has no database for sites, perhaps because the window is private")
        })?;
    let request = factory.open_with_u32(NAME, VERSION)?;
    prepare_stores_on_upgrade(&request);
    let database: IdbDatabase = answer(&request).await?.unchecked_into();
    let forget = Closure::<dyn Fn()>::new(forget_connection).into_js_value();
    database.set_onclose(Some(forget.unchecked_ref()));
    database.set_onversionchange(Some(forget.unchecked_ref()));
    CONNECTION.set(Some(database.clone()));
    Ok(database)
}

fn prepare_stores_on_upgrade(request: &IdbOpenDbRequest) {
    let upgrading = request.clone();
    let prepare = Closure::once_into_js(move || {
        let Ok(database) = upgrading.result().map(JsCast::unchecked_into::<IdbDatabase>) else { return };
        for store in Store::ALL {
            if !database.object_store_names().contains(store.name()) {
                // A store that cannot be made shows when it is first used; there is nobody to tell here.
                let _ = database.create_object_store(store.name());
            }
        }
    });
    request.set_onupgradeneeded(Some(prepare.unchecked_ref()));
}

/// Asks the browser not to throw this site's data away; its answer changes nothing that we do.
pub fn ask_to_persist() {
    let Some(window) = web_sys::window() else { return };
    // Never awaited: a browser may ask the person first and answer much later.
    let _ = window.navigator().storage().persist();
}
