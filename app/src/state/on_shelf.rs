//! The procedures on this device: which there are, removing one and bringing it back.
//!
//! What is removed is only marked, which is the bin, and goes for good after a month or when somebody says so;
//! removing asks nothing and loses nothing. Of a procedure no more is read than its head, so that the list stands
//! before the editor is there, and shows also what this version cannot open.

use super::file_names::{NOT_CHECKED, file_name, name_or_title, own};
use super::filing::Filed;
use super::records::{self, KeptDocument};
use super::{clock, versions};
use crate::storage::database::{self, Durability, Entry, Store};
use crate::storage::files;
use procedures_schema::format;
use procedures_schema::model::Id;

/// How long a removed procedure can be brought back: 30 days.
const REMOVED_STAYS_MS: u64 = 30 * DAY_MS;
const DAY_MS: u64 = 24 * 60 * 60 * 1000;

/// The procedures that come with the page, invented ones: file and what it is about.
pub const SAMPLES: [(&str, &str); 3] = [
    ("circulation-pump", "Heating pump between two valves"),
    ("gas-valve", "Gas valve of a condensing water heater"),
    ("hot-water-store", "Immersion heater and relief valve of a hot-water store"),
];

/// One procedure on this device.
#[derive(Clone, Debug, PartialEq)]
pub struct OnShelf {
    /// Identity.
    pub id: Id,
    /// Title.
    pub title: String,
    /// The name of its file; empty, if it has none of its own.
    pub name: String,
    /// How many steps it has.
    pub n_steps: usize,
    /// The words of its first step.
    pub begins: String,
    /// When it was kept last.
    pub at_ms: u64,
    /// When it was removed, if it was.
    pub removed_ms: Option<u64>,
    /// Whether it is in a file as it is now, if it ever was.
    pub filed: Option<Filed>,
}

impl OnShelf {
    /// How many days it stays in the bin, the last one counted as one.
    pub fn days_left(&self, now_ms: u64) -> u64 {
        let goes_ms = self.removed_ms.unwrap_or(now_ms) + REMOVED_STAYS_MS;
        goes_ms.saturating_sub(now_ms).div_ceil(DAY_MS)
    }
}

/// Every procedure on this device, the last kept first; what was removed long ago goes for good.
///
/// # Errors
/// In words, if the database cannot be read.
pub async fn on_shelf() -> Result<Vec<OnShelf>, String> {
    let texts = database::kept_all(Store::Docs).await.map_err(records::unread)?;
    let now = clock::now_ms();
    let mut found = Vec::new();
    for kept in texts.iter().filter_map(|text| records::read(text).ok()) {
        // What has no head is damaged; it stays where it is and is not listed.
        let Ok(head) = format::read_head(&kept.text) else { continue };
        if kept.removed_ms.is_some_and(|at| now.saturating_sub(at) > REMOVED_STAYS_MS) {
            // If it cannot be forgotten now, the next look tries again.
            let _ = delete_for_good(&head.id).await;
            continue;
        }
        found.push(OnShelf {
            id: head.id,
            title: head.title,
            name: own(&kept.name).to_owned(),
            n_steps: head.n_steps,
            begins: head.begins,
            at_ms: kept.at_ms,
            removed_ms: kept.removed_ms,
            filed: kept.filed,
        });
    }
    found.sort_by(|a, b| b.at_ms.cmp(&a.at_ms).then_with(|| a.id.cmp(&b.id)));
    Ok(found)
}

/// Saves a procedure as a file, as it is kept, also if it cannot be opened.
///
/// # Errors
/// In words, if it is not there any more, or the browser refuses.
pub async fn save_as_kept(id: &Id) -> Result<(), String> {
    let kept = kept(id).await?;
    // What has no head has no title either.
    let title = format::read_head(&kept.text).map(|head| head.title).unwrap_or_default();
    files::save(&file_name(&name_or_title(&kept.name, &title), Some(NOT_CHECKED)), &kept.text)
}

/// Marks a procedure as removed, or brings it back.
///
/// # Errors
/// In words, if it is not there any more or the database refuses.
pub async fn set_removed(id: &Id, is_removed: bool) -> Result<(), String> {
    let mut kept = kept(id).await?;
    kept.removed_ms = is_removed.then(clock::now_ms);
    versions::forget_known(id);
    // Texts and numbers always serialise.
    let text = format::write_part(&kept);
    let entry = Entry { store: Store::Docs, key: id.as_str(), text: Some(&text) };
    database::keep(&[entry], Durability::Default)
        .await
        .map_err(|error| format!("Nothing was changed: {error}."))
}

/// Takes a procedure off this device with its undo and its earlier versions; nothing brings it back.
///
/// # Errors
/// In words, if the database refuses; then all of it is still there.
pub async fn delete_for_good(id: &Id) -> Result<(), String> {
    let in_words = |error: database::StoreError| format!("Nothing was deleted: {error}.");
    let all = versions::all_of(id).await.map_err(in_words)?;
    versions::forget_known(id);
    let gone = |store| Entry { store, key: id.as_str(), text: None };
    let entries: Vec<Entry<'_>> = [gone(Store::Docs), gone(Store::Undo)]
        .into_iter()
        .chain(all.iter().map(versions::Stored::entry))
        .collect();
    database::keep(&entries, Durability::Default).await.map_err(in_words)
}

pub(super) async fn kept(id: &Id) -> Result<KeptDocument, String> {
    let text = database::kept(Store::Docs, id.as_str()).await.map_err(records::unread)?;
    records::read(&text.ok_or("This procedure is not on this device any more.")?)
}
