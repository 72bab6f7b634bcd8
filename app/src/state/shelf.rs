//! The procedures on this device: which there are, opening one, beginning one, removing one and bringing it
//! back.
//!
//! What is removed is only marked, which is the bin, and goes for good after a month or when somebody says so;
//! removing asks nothing and loses nothing.

use super::editor_store::EditorStore;
use super::filing::Filed;
use super::ids::RandomIds;
use super::records::{self, KeptDocument};
use super::{clock, opening, versions};
use crate::storage::database::{self, Durability, Entry, Store};
use crate::storage::files;
use leptos::prelude::{Callback, Set};
use leptos::task::spawn_local;
use procedures_schema::edit::Session;
use procedures_schema::format;
use procedures_schema::model::{Id, IdSource, Procedure};
use std::sync::Arc;

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
    /// The name of its file.
    pub name: String,
    /// How many steps it has.
    pub n_steps: usize,
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
    let texts = database::kept_all(Store::Docs).await.map_err(|error| unread(&error))?;
    let now = clock::now_ms();
    let mut found = Vec::new();
    for kept in texts.iter().filter_map(|text| records::read(text).ok()) {
        // One that this version cannot read stays where it is and is not listed.
        let Ok(document) = format::read(kept.text.as_bytes()) else { continue };
        if kept.removed_ms.is_some_and(|at| now.saturating_sub(at) > REMOVED_STAYS_MS) {
            // If it cannot be forgotten now, the next look tries again.
            let _ = delete_for_good(&document.id).await;
            continue;
        }
        found.push(OnShelf {
            id: document.id.clone(),
            title: document.title.clone(),
            name: kept.name,
            n_steps: document.steps.len(),
            at_ms: kept.at_ms,
            removed_ms: kept.removed_ms,
            filed: kept.filed,
        });
    }
    found.sort_by(|a, b| b.at_ms.cmp(&a.at_ms).then_with(|| a.id.cmp(&b.id)));
    Ok(found)
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

async fn kept(id: &Id) -> Result<KeptDocument, String> {
    let text = database::kept(Store::Docs, id.as_str()).await.map_err(|error| unread(&error))?;
    records::read(&text.ok_or("This procedure is not on this device any more.")?)
}

fn not_kept() -> String {
    "Nothing was removed, because the last changes are not kept yet.".to_owned()
}

fn unread(error: &database::StoreError) -> String {
    format!("What is kept on this device cannot be read: {error}.")
}

impl EditorStore {
    /// Opens a procedure of this device.
    ///
    /// # Errors
    /// In words, if it cannot be read; then nothing has changed.
    pub async fn open_kept(self, id: Id) -> Result<(), String> {
        let kept = kept(&id).await?;
        let session = records::session_of(&kept).await?;
        self.notice().set(None);
        records::note_open(&session.document().id);
        self.open(session, &kept.name);
        self.was_filed(kept.filed);
        self.keeper().was_kept(kept.at_ms);
        Ok(())
    }

    /// Puts the open procedure into the bin, once everything of it is kept, and opens the one that was kept last
    /// before it; an empty one, if there is no other. Then says whether that was done; a refusal is shown as a
    /// notice.
    pub fn remove_open(self, then: impl Fn(Result<bool, String>) + Send + Sync + 'static) {
        if self.refuses() {
            then(Ok(false));
            return;
        }
        self.drop_held();
        self.close_group();
        let id = self.document_now().id.clone();
        // No callback: whoever calls goes as soon as another procedure is open.
        let then = Arc::new(then);
        self.keeper().flush_then(Callback::new(move |is_kept| {
            let (id, then) = (id.clone(), then.clone());
            spawn_local(async move {
                let outcome = if is_kept { self.open_another_and_remove(&id).await } else { Err(not_kept()) };
                then(outcome);
            });
        }));
    }

    async fn open_another_and_remove(self, id: &Id) -> Result<bool, String> {
        let others = on_shelf().await?;
        match others.into_iter().find(|one| one.id != *id && one.removed_ms.is_none()) {
            Some(other) => self.open_kept(other.id).await?,
            None => self.open_new(),
        }
        set_removed(id, true).await.map(|()| true)
    }

    /// Opens a procedure that came with the page, as a copy of its own.
    ///
    /// # Errors
    /// In words, if it cannot be fetched.
    pub async fn open_sample(self, name: &'static str) -> Result<(), String> {
        let text = files::own_text(&opening::sample_path(name)).await?;
        let document = format::read(text.as_bytes()).map_err(|error| error.to_string())?;
        self.open_and_keep(Procedure { id: RandomIds.next_id("procedure"), ..document }, name);
        Ok(())
    }

    /// Begins an empty procedure.
    pub fn open_new(self) {
        let document = Procedure::new(RandomIds.next_id("procedure"), "Untitled procedure");
        self.open_and_keep(document, "untitled");
    }

    /// Begins a procedure with everything of the open one, without what others said of that.
    pub fn open_new_from_this(self) {
        let this = self.document_now();
        let document = Procedure {
            id: RandomIds.next_id("procedure"),
            title: format!("{} (copy)", this.title),
            revisions: Vec::new(),
            sign_offs: Vec::new(),
            waivers: Vec::new(),
            ..(*this).clone()
        };
        let name = format!("{}-copy", self.name_now());
        self.open_and_keep(document, &name);
    }

    fn open_and_keep(self, document: Procedure, name: &str) {
        self.notice().set(None);
        self.open(Session::new(Arc::new(document)), name);
        self.keep_now();
    }
}
