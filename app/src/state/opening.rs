//! Opening: what was kept, the demonstration, a file.
//!
//! What cannot be opened changes nothing and says why.

use super::editor_store::EditorStore;
use super::file_names::ENDING;
use super::filing::Filed;
use super::ids::RandomIds;
use super::opened_over::Read;
use super::records::{self, KeptDocument};
use super::shelf::UNTITLED;
use super::taken_out::TakenOut;
use super::versions;
use crate::storage::file_access::Handle;
use crate::storage::{files, this_tab};
use leptos::prelude::*;
use procedures_schema::edit::{Edit, Session};
use procedures_schema::format::{self, Category, FormatError};
use procedures_schema::model::{IdSource, Procedure};
use std::sync::Arc;

/// The demonstration's name as a file.
const DEMO_NAME: &str = "circulation-pump";

/// What came of a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Came {
    /// It is open now.
    Procedure,
    /// What is here of the same procedure is open, and somebody is asked whether the file is to take its place.
    Asked,
    /// It holds answers found on a job, which are offered, or refused with the reason.
    Answers,
    /// Nothing; the reason is told.
    Nothing,
}

/// What there is to begin with.
pub struct Beginning {
    session: Session,
    name: String,
    is_demo: bool,
    kept_ms: Option<u64>,
    filed: Option<Filed>,
    notice: Option<String>,
}

impl Beginning {
    /// Looks for what was kept; else for the demonstration, if that is wanted; else begins an empty procedure.
    pub async fn find(is_demo_wanted: bool) -> Self {
        match records::kept_document().await {
            Ok(None) if !is_demo_wanted => Self::empty(None),
            Ok(Some(kept)) => match records::session_of(&kept).await {
                Ok(session) => {
                    let kept_ms = Some(kept.at_ms);
                    let filed = kept.filed;
                    Self { session, name: kept.name, is_demo: false, kept_ms, filed, notice: None }
                }
                // Not the demonstration, which would look as if nothing had ever been written here.
                Err(error) => Self::empty(Some(damaged(&kept, &error))),
            },
            Ok(None) => Self::demo(None).await,
            Err(notice) => Self::demo(Some(notice)).await,
        }
    }

    async fn demo(notice: Option<String>) -> Self {
        match demo().await {
            Ok(session) => {
                let name = DEMO_NAME.to_owned();
                Self { session, name, is_demo: true, kept_ms: None, filed: None, notice }
            }
            Err(reason) => {
                let reason = format!("The demonstration could not be opened: {reason}.");
                Self::empty(notice.or(Some(reason)))
            }
        }
    }

    fn empty(notice: Option<String>) -> Self {
        let document = Procedure::new(RandomIds.next_id("procedure"), UNTITLED);
        Self {
            session: Session::new(Arc::new(document)),
            name: String::new(),
            is_demo: false,
            kept_ms: None,
            filed: None,
            notice,
        }
    }

    /// The editor on it, on the demonstration without one of its steps.
    pub fn into_store(self) -> EditorStore {
        let store = EditorStore::new(self.session, &self.name);
        versions::learn_soon(&store.document_now().id);
        store.join_tabs();
        this_tab::note(store.document_now().id.as_str());
        store.reopen_line_below();
        store.was_filed(self.filed);
        store.notice().set(self.notice);
        if let Some(at_ms) = self.kept_ms {
            store.keeper().was_kept(at_ms);
        }
        if self.is_demo {
            store.take_one_out();
        } else {
            leptos::task::spawn_local(async move { store.set_taken_out(TakenOut::remembered().await) });
        }
        store
    }
}

async fn demo() -> Result<Session, String> {
    let text = files::own_text(&sample_path(DEMO_NAME)).await?;
    let document = format::read(text.as_bytes()).map_err(|error| error.to_string())?;
    Ok(Session::new(Arc::new(document)))
}

/// Where a procedure that comes with the page stands on this site.
pub(super) fn sample_path(name: &str) -> String {
    format!("demo/{name}{ENDING}")
}

fn damaged(kept: &KeptDocument, reason: &str) -> String {
    format!(
        "\"{}\" as kept on this device cannot be read: {reason} It stays on this device; Procedures has a key that saves it as it is.",
        kept.name
    )
}

impl EditorStore {
    /// Opens the demonstration without one of its steps.
    ///
    /// # Errors
    /// In words, if it cannot be fetched; then nothing has changed.
    pub async fn open_demo(self) -> Result<(), String> {
        let session = demo().await?;
        self.notice().set(None);
        self.open(session, DEMO_NAME);
        self.take_one_out();
        Ok(())
    }

    /// Takes a step out of the demonstration, as an edit that can be undone.
    fn take_one_out(self) {
        let Some(taken_out) = TakenOut::pick(&self.document_now()) else { return };
        // What may be kept of the demonstration from before becomes a version of it.
        self.keep_now();
        let remove = Edit::RemoveStep { step: taken_out.step.id.clone() };
        if self.edit(&[remove], &taken_out.label(), None) {
            taken_out.remember();
            self.set_taken_out(Some(taken_out));
        }
    }

    /// Opens the bytes of a file with this name, and its place if it has one here; if they cannot be read, says why and
    /// changes nothing.
    pub async fn open_bytes(self, file_name: &str, bytes: Vec<u8>, file: Option<Handle>) -> Came {
        match format::read(&bytes) {
            Ok(document) => {
                let (name, document) = (file_name.to_owned(), Arc::new(document));
                self.open_read(Read { name, bytes, document, file }).await
            }
            Err(_) if format::is_found(&bytes) => {
                self.bring_found(file_name, &bytes);
                Came::Answers
            }
            Err(error) => {
                self.notice().set(Some(not_opened(file_name, &bytes, &error)));
                Came::Nothing
            }
        }
    }
}

/// Why a file was not opened. One that does not even begin as ours do is a text, a picture or what not, and where in it
/// that shows is of little use to anybody.
fn not_opened(file_name: &str, bytes: &[u8], error: &FormatError) -> String {
    // A mark of the order of bytes, which some programs put first, makes no other file of it.
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    let begins_as_ours = bytes.trim_ascii_start().first() == Some(&b'{');
    if begins_as_ours || !matches!(error.category(), Category::Text | Category::Syntax | Category::Content) {
        return format!("{file_name} was not opened: {error}");
    }
    format!(
        "{file_name} was not opened: it is not a procedure of Putback. A procedure is a file that Putback has saved, and \
         its name ends in {ENDING}. To make steps of a text, copy it and paste it into the line for a new step. In \
         detail: {error}"
    )
}

#[cfg(test)]
mod tests {
    use super::not_opened;
    use procedures_schema::format;
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test]
    fn a_file_of_another_kind_is_told_in_plain_words_and_a_damaged_one_by_its_place() {
        let told =
            |bytes: &[u8]| not_opened("notes.txt", bytes, &format::read(bytes).expect_err("no procedure"));
        for other in [&b"Shut down the boiler.\nLock it off."[..], b"\xff\xd8\xff", b"[1, 2]", b""] {
            let words = told(other);
            assert!(
                words.starts_with("notes.txt was not opened: it is not a procedure of Putback."),
                "{words}"
            );
            assert!(words.contains("paste it into the line"), "{words}");
        }
        let damaged = told(b"{\"putback\": 0,\n oh");
        assert!(damaged.starts_with("notes.txt was not opened: line 2"), "{damaged}");
        let marked = told(b"\xef\xbb\xbf{\"putback\": 0}");
        assert!(!marked.contains("not a procedure"), "{marked}");
    }
}
