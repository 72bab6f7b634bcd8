//! Keeps every edit on this device, and says so only once it is true.
//!
//! Typing is written 300 ms after the last key, and at the latest two seconds after the first that is not
//! kept; every other edit at once; everything pending when the page is hidden. A failed write is tried
//! again and its reason is shown meanwhile.

use super::clock;
use crate::storage::database::{self, Durability, Entry, Store};
use leptos::leptos_dom::helpers::{TimeoutHandle, set_timeout_with_handle};
use leptos::prelude::*;
use leptos::task::spawn_local;
use procedures_schema::edit::Session;
use procedures_schema::format;
use procedures_schema::model::Id;
use serde::{Deserialize, Serialize};
use std::sync::Arc;
use std::time::Duration;

/// How long after the last key typing is written.
const AFTER_TYPING: Duration = Duration::from_millis(250);
/// How long typing without a pause may wait.
const LONGEST_WAIT_MS: u64 = 2_000;
/// After which a write counts as slow and is said not to be kept.
const SLOW: Duration = Duration::from_millis(300);
/// After which a failed write is tried again.
const AGAIN: Duration = Duration::from_secs(3);
/// How many entries of undo outlive a reload.
const ENTRIES_KEPT: usize = 40;
/// The key in the store of facts that names the open procedure.
const CURRENT: &str = "current";

/// Whether the work is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Kept {
    /// Nothing has been changed yet.
    Untouched,
    /// A write is under way.
    Keeping,
    /// Kept at this time.
    At(u64),
    /// Not kept: slow, or failed for a reason.
    NotYet(Option<String>),
}

/// A kept procedure with the name of its file.
#[derive(Serialize, Deserialize)]
pub struct KeptDocument {
    /// The name without ending.
    pub name: String,
    /// The document as its file would be.
    pub text: String,
    /// When it was kept.
    pub at_ms: u64,
    /// When it was removed from the list; it stays for a while and can be brought back.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub removed_ms: Option<u64>,
}

/// The part of the state that keeps the document.
#[derive(Clone, Copy)]
pub struct Keeper {
    state: RwSignal<Kept>,
    /// What is to be written: the last state of each procedure that was changed.
    latest: StoredValue<Vec<(Session, String)>>,
    timer: StoredValue<Option<TimeoutHandle>>,
    unkept_since: StoredValue<Option<u64>>,
    writing: StoredValue<bool>,
    has_asked: StoredValue<bool>,
    /// Who waits to hear whether everything is kept.
    waiting: StoredValue<Vec<Callback<bool>>>,
}

impl Default for Keeper {
    fn default() -> Self {
        Self {
            state: RwSignal::new(Kept::Untouched),
            latest: StoredValue::new(Vec::new()),
            timer: StoredValue::new(None),
            unkept_since: StoredValue::new(None),
            writing: StoredValue::new(false),
            has_asked: StoredValue::new(false),
            waiting: StoredValue::new(Vec::new()),
        }
    }
}

impl Keeper {
    /// Whether the work is kept.
    pub fn state(self) -> ReadSignal<Kept> {
        self.state.read_only()
    }

    /// Says that the document that was opened is kept since some time.
    pub fn was_kept(self, at_ms: u64) {
        self.state.set(Kept::At(at_ms));
    }

    /// Takes note of a new document; writes it at once or, while somebody types, a moment later.
    pub fn changed(self, session: Session, name: String, is_typing: bool) {
        let now = clock::now_ms();
        self.latest.update_value(|latest| {
            latest.retain(|(other, _)| other.document().id != session.document().id);
            latest.push((session, name));
        });
        self.state.set(Kept::Keeping);
        let since = self.unkept_since.get_value().unwrap_or(now);
        self.unkept_since.set_value(Some(since));
        self.stop_timer();
        if is_typing && now.saturating_sub(since) < LONGEST_WAIT_MS {
            let timer = set_timeout_with_handle(move || self.flush(), AFTER_TYPING);
            self.timer.set_value(timer.ok());
        } else {
            self.flush();
        }
    }

    /// Writes what is pending now.
    pub fn flush(self) {
        self.stop_timer();
        if self.writing.get_value() || self.latest.with_value(Vec::is_empty) {
            // A write under way looks again when it is through.
            return;
        }
        self.writing.set_value(true);
        spawn_local(self.write());
    }

    /// Writes what is pending, then says whether everything is kept.
    pub(super) fn flush_then(self, then: Callback<bool>) {
        if !self.writing.get_value() && self.latest.with_value(Vec::is_empty) {
            then.run(true);
            return;
        }
        self.waiting.update_value(|waiting| waiting.push(then));
        self.flush();
    }

    fn stop_timer(self) {
        if let Some(timer) = self.timer.try_update_value(Option::take).flatten() {
            timer.clear();
        }
    }

    async fn write(self) {
        let mut outcome = Ok(());
        let next = || {
            let first = |latest: &mut Vec<_>| (!latest.is_empty()).then(|| latest.remove(0));
            self.latest.try_update_value(first).flatten()
        };
        while let Some((session, name)) = next() {
            self.unkept_since.set_value(None);
            let slow = set_timeout_with_handle(move || self.is_slow(), SLOW).ok();
            outcome = keep(&session, &name).await;
            if let Some(slow) = slow {
                slow.clear();
            }
            if outcome.is_err() {
                // Unless something newer of it waits already, this is what has to be tried again.
                self.latest.update_value(|latest| {
                    if latest.iter().all(|(other, _)| other.document().id != session.document().id) {
                        latest.insert(0, (session, name));
                    }
                });
                break;
            }
        }
        self.writing.set_value(false);
        for waiting in self.waiting.try_update_value(std::mem::take).unwrap_or_default() {
            waiting.run(outcome.is_ok());
        }
        self.report(outcome);
    }

    /// Says so, unless the write has been completed meanwhile.
    fn is_slow(self) {
        if self.writing.get_value() && self.state.with_untracked(|state| *state == Kept::Keeping) {
            self.state.set(Kept::NotYet(None));
        }
    }

    fn report(self, outcome: Result<(), database::StoreError>) {
        match outcome {
            Ok(()) => {
                self.state.set(Kept::At(clock::now_ms()));
                if !self.has_asked.get_value() {
                    self.has_asked.set_value(true);
                    database::ask_to_persist();
                }
            }
            Err(error) => {
                self.state.set(Kept::NotYet(Some(error.to_string())));
                set_timeout(move || self.flush(), AGAIN);
            }
        }
    }
}

async fn keep(session: &Session, name: &str) -> Result<(), database::StoreError> {
    let document = session.document();
    let kept = KeptDocument {
        name: name.to_owned(),
        text: format::write(document),
        at_ms: clock::now_ms(),
        removed_ms: None,
    };
    let text = format::write_part(&kept);
    let undo = format::write_part(&session.kept_undo(ENTRIES_KEPT));
    let id = document.id.as_str();
    let entries = [
        Entry { store: Store::Docs, key: id, text: Some(&text) },
        Entry { store: Store::Undo, key: id, text: Some(&undo) },
        Entry { store: Store::Meta, key: CURRENT, text: Some(id) },
    ];
    database::keep(&entries, Durability::Default).await
}

/// The procedure that was open last, as it was kept.
///
/// # Errors
/// In words, if the database cannot be read.
pub async fn kept_document() -> Result<Option<KeptDocument>, String> {
    let in_words =
        |error: database::StoreError| format!("What is kept on this device cannot be read: {error}.");
    let Some(id) = database::kept(Store::Meta, CURRENT).await.map_err(in_words)? else { return Ok(None) };
    let Some(text) = database::kept(Store::Docs, &id).await.map_err(in_words)? else { return Ok(None) };
    read(&text).map(Some)
}

/// A kept procedure with the undo that was kept in the same transaction.
///
/// # Errors
/// In words, if the document cannot be read. An undo that cannot be read is left out.
pub(super) async fn session_of(kept: &KeptDocument) -> Result<Session, String> {
    let document = format::read(kept.text.as_bytes()).map_err(|error| error.to_string())?;
    let undo = database::kept(Store::Undo, document.id.as_str()).await.ok().flatten();
    let undo = undo.and_then(|text| format::read_part(&text).ok()).unwrap_or_default();
    Ok(Session::with_undo(Arc::new(document), &undo))
}

/// A kept procedure with its undo; none, if it is not on this device any more.
///
/// # Errors
/// In words, if it cannot be read.
pub(super) async fn kept_session(id: &Id) -> Result<Option<(KeptDocument, Session)>, String> {
    let text = database::kept(Store::Docs, id.as_str()).await.map_err(|error| error.to_string())?;
    let Some(text) = text else { return Ok(None) };
    let kept = read(&text)?;
    let session = session_of(&kept).await?;
    Ok(Some((kept, session)))
}

/// Says which procedure is open, for the next start.
pub(super) fn note_open(id: &Id) {
    let id = id.clone();
    spawn_local(async move {
        let entry = Entry { store: Store::Meta, key: CURRENT, text: Some(id.as_str()) };
        // If this is lost, the next start opens what was open before.
        let _ = database::keep(&[entry], Durability::Default).await;
    });
}

/// Reads what was kept.
pub(super) fn read(text: &str) -> Result<KeptDocument, String> {
    format::read_part(text).map_err(|error| format!("What is kept on this device is damaged: {error}."))
}
