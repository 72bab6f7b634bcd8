//! Earlier versions of a procedure: states that were kept once, each a record as the procedure itself has one.
//!
//! What is kept becomes a version when it is written over for the first time in five minutes, so a spell of
//! writing leaves a handful. Which of them stay is the core's business.

use super::clock;
use super::editor_store::EditorStore;
use super::records::{self, KeptDocument};
use crate::storage::database::{self, Durability, Entry, Store, StoreError};
use leptos::task::spawn_local;
use procedures_schema::edit::Edit;
use procedures_schema::format;
use procedures_schema::model::{Id, Procedure};
use procedures_schema::versions::{Moment, staying};
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::sync::Arc;

/// Two versions are at least so far apart, unless one is made on purpose.
const APART_MS: u64 = 5 * 60 * 1000;

/// A version to keep, or one to forget.
pub(super) struct Stored {
    key: String,
    stamp: Stamp,
    text: Option<String>,
}

impl Stored {
    fn new(id: &Id, stamp: Stamp, text: Option<String>) -> Self {
        Self { key: stamp.key(id), stamp, text }
    }

    pub(super) fn entry(&self) -> Entry<'_> {
        Entry { store: Store::Versions, key: &self.key, text: self.text.as_deref() }
    }
}

/// When a version was kept, and when it became one, by being written over. Its order is that of time.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Stamp {
    /// When it was kept.
    pub at_ms: u64,
    /// When it became a version.
    made_ms: u64,
}

impl Stamp {
    /// Leading zeros make the order of the keys that of time. Keys of an identity that goes on behind a blank are told
    /// apart when they are read.
    fn key(self, id: &Id) -> String {
        format!("{}{:015} {:015}", beginning(id), self.at_ms, self.made_ms)
    }

    fn of_key(key: &str, beginning: &str) -> Option<Self> {
        let (at, made) = key.strip_prefix(beginning)?.split_once(' ')?;
        Some(Self { at_ms: at.parse().ok()?, made_ms: made.parse().ok()? })
    }
}

fn beginning(id: &Id) -> String {
    format!("{id} ")
}

/// What is kept of a procedure and its versions, as far as this tab has read or written it. So a write needs to
/// read nothing before it begins: one that has to may be cut off when the page goes.
#[derive(Clone, Default)]
struct Known {
    /// The record of the procedure.
    record: Option<String>,
    /// The versions, the oldest first.
    stamps: Vec<Stamp>,
    /// The record of the newest version.
    newest: Option<String>,
}

thread_local! {
    static KNOWN: RefCell<BTreeMap<Id, Known>> = const { RefCell::new(BTreeMap::new()) };
}

/// Says that what is known of a procedure may no longer be so.
pub(super) fn forget_known(id: &Id) {
    KNOWN.with_borrow_mut(|known| known.remove(id));
}

/// Reads what will be wanted when the procedure is written over.
pub(super) fn learn_soon(id: &Id) {
    forget_known(id);
    let id = id.clone();
    spawn_local(async move {
        if let Ok(read) = learn(&id).await {
            // What has been written meanwhile is newer.
            KNOWN.with_borrow_mut(|known| {
                known.entry(id).or_insert(read);
            });
        }
    });
}

async fn learn(id: &Id) -> Result<Known, StoreError> {
    let record = database::kept(Store::Docs, id.as_str()).await?;
    let stamps = stamps(id).await?;
    let newest = match stamps.last() {
        Some(stamp) => database::kept(Store::Versions, &stamp.key(id)).await?,
        None => None,
    };
    Ok(Known { record, stamps, newest })
}

/// What has to be kept and forgotten of the versions when a procedure is written over with `next`.
pub(super) async fn due(id: &Id, next: &KeptDocument, is_opened: bool) -> Result<Vec<Stored>, StoreError> {
    let known = match KNOWN.with_borrow(|known| known.get(id).cloned()) {
        Some(known) => known,
        None => learn(id).await?,
    };
    let changes = due_of(id, &known, next, is_opened);
    KNOWN.with_borrow_mut(|all| all.insert(id.clone(), known));
    Ok(changes)
}

/// Takes note of what has been kept.
pub(super) fn was_kept(id: &Id, record: &str, changes: &[Stored]) {
    KNOWN.with_borrow_mut(|all| {
        let known = all.entry(id.clone()).or_default();
        known.record = Some(record.to_owned());
        for Stored { stamp, text, .. } in changes {
            known.stamps.retain(|other| other != stamp);
            if text.is_some() {
                known.stamps.push(*stamp);
                known.newest.clone_from(text);
            }
        }
        known.stamps.sort_unstable();
    });
}

fn due_of(id: &Id, known: &Known, next: &KeptDocument, is_opened: bool) -> Vec<Stored> {
    let now = next.at_ms;
    let is_too_soon = known.stamps.iter().any(|stamp| now.abs_diff(stamp.made_ms) < APART_MS);
    let Some(text) = known.record.as_ref().filter(|_| is_opened || !is_too_soon) else { return Vec::new() };
    let mut stamps = known.stamps.clone();
    let mut changes = Vec::new();
    // What is damaged is kept as it is, without a look inside.
    let mut at_ms = now;
    if let Ok(before) = records::read(text) {
        if before.text == next.text || is_blank(&before) {
            return changes;
        }
        at_ms = before.at_ms;
        let same = known.newest_as(&before).and_then(|same| stamps.pop_if(|newest| *newest == same));
        changes.extend(same.map(|stamp| Stored::new(id, stamp, None)));
    }
    changes.extend(with_thinning(id, stamps, Stamp { at_ms, made_ms: now }, text.clone()));
    changes
}

impl Known {
    /// The newest version, if it is just what was kept later on the same day.
    fn newest_as(&self, before: &KeptDocument) -> Option<Stamp> {
        let stamp = *self.stamps.last()?;
        let newest = records::read(self.newest.as_ref()?).ok()?;
        let is_of_that_day = clock::day_number(stamp.at_ms) == clock::day_number(before.at_ms);
        (is_of_that_day && newest.text == before.text).then_some(stamp)
    }
}

/// Whether nothing has been written yet that would be missed.
fn is_blank(kept: &KeptDocument) -> bool {
    format::read(kept.text.as_bytes()).is_ok_and(|document| document.steps.is_empty())
}

/// A new version, and those that have to go for it.
fn with_thinning(id: &Id, mut stamps: Vec<Stamp>, new: Stamp, text: String) -> Vec<Stored> {
    stamps.push(new);
    let moments: Vec<Moment> = stamps
        .iter()
        .map(|stamp| Moment { at_ms: stamp.at_ms, day: clock::day_number(stamp.at_ms) })
        .collect();
    let stays = staying(&moments, clock::day_number(new.made_ms));
    let gone = stamps.iter().zip(stays).filter(|(stamp, stays)| !stays && **stamp != new);
    let gone = gone.map(|(stamp, _)| Stored::new(id, *stamp, None));
    gone.chain([Stored::new(id, new, Some(text))]).collect()
}

/// Everything that is kept of the versions of a procedure, to be forgotten.
pub(super) async fn all_of(id: &Id) -> Result<Vec<Stored>, StoreError> {
    Ok(stamps(id).await?.into_iter().map(|stamp| Stored::new(id, stamp, None)).collect())
}

/// The stamps of the versions of a procedure, the oldest first.
async fn stamps(id: &Id) -> Result<Vec<Stamp>, StoreError> {
    let beginning = beginning(id);
    let keys = database::keys(Store::Versions, &beginning).await?;
    Ok(keys.iter().filter_map(|key| Stamp::of_key(key, &beginning)).collect())
}

/// The versions of a procedure, the newest first.
///
/// # Errors
/// In words, if the database cannot be read.
pub async fn earlier(id: &Id) -> Result<Vec<Stamp>, String> {
    let stamps = stamps(id).await;
    let mut stamps = stamps.map_err(|error| format!("The earlier versions cannot be read: {error}."))?;
    stamps.reverse();
    Ok(stamps)
}

/// One version.
///
/// # Errors
/// In words, if it is gone or cannot be read.
pub async fn version(id: &Id, stamp: Stamp) -> Result<Arc<Procedure>, String> {
    let text = database::kept(Store::Versions, &stamp.key(id)).await.map_err(|error| error.to_string())?;
    let kept = records::read(&text.ok_or("this version is not on this device any more")?)?;
    format::read(kept.text.as_bytes()).map(Arc::new).map_err(|error| error.to_string())
}

impl EditorStore {
    /// Keeps the procedure as it is now as a version; then brings an earlier one in its place, as one edit.
    /// Says whether that was done; a refusal is shown as a notice.
    ///
    /// # Errors
    /// In words, if the present one cannot be kept as a version; then nothing has changed.
    pub async fn bring_back(self, stamp: Stamp, earlier: Arc<Procedure>) -> Result<bool, String> {
        if self.refuses() {
            return Ok(false);
        }
        self.drop_held();
        self.close_group();
        let (document, now) = (self.document_now(), clock::now_ms());
        let kept = KeptDocument {
            name: self.name_now(),
            text: format::write(&document),
            at_ms: now,
            removed_ms: None,
            filed: None,
        };
        let text = format::write_part(&kept);
        let in_words = |error: StoreError| format!("Nothing was changed: {error}.");
        let stamps = stamps(&document.id).await.map_err(in_words)?;
        let new = Stamp { at_ms: now, made_ms: now };
        let stored = with_thinning(&document.id, stamps, new, text);
        let entries: Vec<Entry<'_>> = stored.iter().map(Stored::entry).collect();
        database::keep(&entries, Durability::Default).await.map_err(in_words)?;
        forget_known(&document.id);
        let label = format!("bring back the version of {}", clock::day_and_minute(stamp.at_ms, now));
        Ok(self.edit(&[Edit::Replace(earlier)], &label, None))
    }
}
