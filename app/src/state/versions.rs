//! Earlier versions of a procedure: states that were kept once, each a record as the procedure itself has one.
//!
//! What is kept becomes a version when it is written over for the first time in five minutes, so a spell of
//! writing leaves a handful. Which of them stay is the core's business.

use super::clock;
use super::editor_store::EditorStore;
use super::records::{self, KeptDocument};
use crate::storage::database::{self, Durability, Entry, Store, StoreError};
use procedures_schema::edit::Edit;
use procedures_schema::format;
use procedures_schema::model::{Id, Procedure};
use procedures_schema::versions::{Moment, staying};
use std::sync::Arc;

/// Two versions are at least so far apart, unless one is made on purpose.
const APART_MS: u64 = 5 * 60 * 1000;

/// A version to keep, or one to forget.
pub(super) struct Stored {
    key: String,
    text: Option<String>,
}

impl Stored {
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
    /// Identities are single words, so a blank ends them; leading zeros make the order of the keys that of time.
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

/// What has to be kept and forgotten of the versions when a procedure is written over with `next`.
pub(super) async fn due(id: &Id, next: &KeptDocument, is_opened: bool) -> Result<Vec<Stored>, StoreError> {
    let now = next.at_ms;
    let mut stamps = stamps(id).await?;
    let is_too_soon = stamps.iter().any(|stamp| now.abs_diff(stamp.made_ms) < APART_MS);
    if is_too_soon && !is_opened {
        return Ok(Vec::new());
    }
    let Some(text) = database::kept(Store::Docs, id.as_str()).await? else { return Ok(Vec::new()) };
    let mut changes = Vec::new();
    // What is damaged is kept as it is, without a look inside.
    let mut at_ms = now;
    if let Ok(before) = records::read(&text) {
        if before.text == next.text || is_blank(&before) {
            return Ok(changes);
        }
        at_ms = before.at_ms;
        changes.extend(the_same_of_that_day(id, &mut stamps, &before).await?);
    }
    let stamp = Stamp { at_ms, made_ms: now };
    changes.extend(with_thinning(id, stamps, stamp, text));
    Ok(changes)
}

/// Whether nothing has been written yet that would be missed.
fn is_blank(kept: &KeptDocument) -> bool {
    format::read(kept.text.as_bytes()).is_ok_and(|document| document.steps.is_empty())
}

/// The newest version, taken from the others, if it is just what was kept later on the same day.
async fn the_same_of_that_day(
    id: &Id,
    stamps: &mut Vec<Stamp>,
    before: &KeptDocument,
) -> Result<Option<Stored>, StoreError> {
    let Some(newest) = stamps.last().copied() else { return Ok(None) };
    if clock::day_number(newest.at_ms) != clock::day_number(before.at_ms) {
        return Ok(None);
    }
    let key = newest.key(id);
    let text = database::kept(Store::Versions, &key).await?;
    if text.and_then(|text| records::read(&text).ok()).is_none_or(|version| version.text != before.text) {
        return Ok(None);
    }
    stamps.pop();
    Ok(Some(Stored { key, text: None }))
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
    let gone = gone.map(|(stamp, _)| Stored { key: stamp.key(id), text: None });
    gone.chain([Stored { key: new.key(id), text: Some(text) }]).collect()
}

/// Everything that is kept of the versions of a procedure, to be forgotten.
pub(super) async fn all_of(id: &Id) -> Result<Vec<Stored>, StoreError> {
    let keys = database::keys(Store::Versions, &beginning(id)).await?;
    Ok(keys.into_iter().map(|key| Stored { key, text: None }).collect())
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
        };
        let text = format::write_part(&kept);
        let in_words = |error: StoreError| format!("Nothing was changed: {error}.");
        let stamps = stamps(&document.id).await.map_err(in_words)?;
        let new = Stamp { at_ms: now, made_ms: now };
        let stored = with_thinning(&document.id, stamps, new, text);
        let entries: Vec<Entry<'_>> = stored.iter().map(Stored::entry).collect();
        database::keep(&entries, Durability::Default).await.map_err(in_words)?;
        let label = format!("bring back the version of {}", clock::day_and_minute(stamp.at_ms, now));
        Ok(self.edit(&[Edit::Replace(earlier)], &label, None))
    }
}
