//! What is kept of a procedure: one record with the document as its file would be, its undo beside it in the
//! same transaction, and which one is open.

use super::clock;
use super::filing::Filed;
use super::versions::{self, Stored};
use super::written::Texts;
use crate::storage::database::{self, Durability, Entry, Store};
use crate::storage::this_tab;
use leptos::task::spawn_local;
use procedures_schema::edit::Session;
use procedures_schema::format;
use procedures_schema::model::Id;
use serde::{Deserialize, Serialize};
use std::sync::Arc;

/// The key in the store of facts that names the open procedure.
const CURRENT: &str = "current";

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
    /// Whether it is in a file as it is now, if it ever was.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub filed: Option<Filed>,
}

/// A state of a procedure that is to be kept.
pub(super) struct ToKeep {
    pub(super) session: Session,
    pub(super) name: String,
    pub(super) filed: Option<Filed>,
}

/// Keeps a procedure with its undo, all or nothing; what was kept before becomes a version where that is due,
/// or in any case if what is kept now `is_opened` from elsewhere.
///
/// # Errors
/// If the database refuses; then what was kept before is still kept.
pub(super) async fn keep(state: &ToKeep, texts: &Texts, is_opened: bool) -> Result<(), database::StoreError> {
    let ToKeep { session, name, filed } = state;
    let document = session.document();
    let kept = KeptDocument {
        name: name.clone(),
        text: texts.document.clone(),
        at_ms: clock::now_ms(),
        removed_ms: None,
        filed: *filed,
    };
    let text = format::write_part(&kept);
    let id = document.id.as_str();
    let mut entries = vec![
        Entry { store: Store::Docs, key: id, text: Some(&text) },
        Entry { store: Store::Meta, key: CURRENT, text: Some(id) },
    ];
    entries.extend(texts.undo.as_ref().map(|undo| Entry { store: Store::Undo, key: id, text: Some(undo) }));
    let due = versions::due(&document.id, &kept, is_opened).await?;
    let all: Vec<Entry<'_>> = entries.iter().copied().chain(due.iter().map(Stored::entry)).collect();
    match database::keep(&all, Durability::Default).await {
        Ok(()) => versions::was_kept(&document.id, &text, &due),
        // What is written now matters more than what it was.
        Err(error) if error.is_for_want_of_room() && !due.is_empty() => {
            database::keep(&entries, Durability::Default).await?;
            versions::was_kept(&document.id, &text, &[]);
        }
        Err(error) => return Err(error),
    }
    Ok(())
}

/// The procedure that was open last, as it was kept.
///
/// # Errors
/// In words, if the database cannot be read.
pub async fn kept_document() -> Result<Option<KeptDocument>, String> {
    // What this tab had open, if it is still on the device.
    if let Some(id) = this_tab::open()
        && let Some(text) = database::kept(Store::Docs, &id).await.map_err(unread)?
        && let Some(kept) = read(&text).ok().filter(|kept| kept.removed_ms.is_none())
    {
        return Ok(Some(kept));
    }
    let Some(id) = database::kept(Store::Meta, CURRENT).await.map_err(unread)? else { return Ok(None) };
    let Some(text) = database::kept(Store::Docs, &id).await.map_err(unread)? else { return Ok(None) };
    read(&text).map(Some)
}

/// Whether some procedure was open here before, so that the page goes on with it. If that cannot be found out,
/// the editor is to say so.
pub async fn is_any_kept() -> bool {
    !matches!(database::kept(Store::Meta, CURRENT).await, Ok(None))
}

pub(super) fn unread(error: database::StoreError) -> String {
    format!("What is kept on this device cannot be read: {error}.")
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
