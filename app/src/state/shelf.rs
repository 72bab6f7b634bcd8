//! The editor and the procedures on this device: opening one, beginning one, removing the open one.

use super::editor_store::EditorStore;
use super::ids::RandomIds;
use super::lines::Line;
use super::on_shelf::{delete_for_good, kept, on_shelf, set_removed};
use super::{opening, records};
use crate::storage::files;
use leptos::prelude::{Callback, GetUntracked, Set, WithUntracked};
use leptos::task::spawn_local;
use procedures_schema::edit::Session;
use procedures_schema::format;
use procedures_schema::model::{Id, IdSource, Procedure};
use std::sync::Arc;

/// What a procedure is called before somebody says what it is.
pub const UNTITLED: &str = "Untitled procedure";

/// Whether nothing at all stands in a procedure.
pub fn is_blank(document: &Procedure) -> bool {
    document.steps.is_empty() && *document == Procedure::new(document.id.clone(), UNTITLED)
}

fn not_kept() -> String {
    "Nothing was removed, because the last changes are not kept yet.".to_owned()
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
        let was_untouched = self.untouched().is_some();
        let mut is_open = false;
        for other in others.into_iter().filter(|one| one.id != *id && one.removed_ms.is_none()) {
            // What cannot be read stays where it is, and the one before it is opened.
            is_open = self.open_kept(other.id).await.is_ok();
            if is_open {
                break;
            }
        }
        if !is_open {
            self.open_new();
        }
        // One that nobody has touched has gone by now, and there is nothing to bring back.
        if was_untouched { Ok(false) } else { set_removed(id, true).await.map(|()| true) }
    }

    /// Brings a procedure back from the bin. It takes the place of an empty one that is open only because something
    /// has to be.
    ///
    /// # Errors
    /// In words, if it is not there any more, cannot be read, or the database refuses.
    pub async fn back_from_bin(self, id: Id) -> Result<(), String> {
        set_removed(&id, false).await?;
        if let Some(left) = self.untouched() {
            self.open_kept(id).await?;
            delete_for_good(&left).await?;
        }
        Ok(())
    }

    /// The open procedure, if nothing was ever written in it.
    pub(super) fn untouched(self) -> Option<Id> {
        let document = self.document_now();
        let is_new = self.undo_labels().with_untracked(|(undo, redo)| undo.is_none() && redo.is_none());
        let is_line_empty = self.line(Line::Last).with_untracked(|words| words.trim().is_empty());
        let is_ours = !self.seat().only_shows().get_untracked();
        (is_new && is_line_empty && is_ours && is_blank(&document)).then(|| document.id.clone())
    }

    /// Takes one that nobody has touched off this device once another is open, so that empty ones do not pile up.
    pub(super) fn forget_untouched(self, left: Option<Id>) {
        let Some(left) = left.filter(|left| *left != self.document_now().id) else { return };
        // First what is still to be kept of it, or that would bring it back.
        self.keeper().flush_then(Callback::new(move |_| {
            let left = left.clone();
            spawn_local(async move {
                // If it stays it is seen in the list and can be removed there.
                let _ = delete_for_good(&left).await;
            });
        }));
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
        let document = Procedure::new(RandomIds.next_id("procedure"), UNTITLED);
        self.open_and_keep(document, "");
    }

    /// Begins a procedure with everything of the open one, without what others said of that.
    pub fn open_new_from_this(self) {
        let this = self.document_now();
        self.open_another(&this, format!("{} (copy)", this.title));
    }

    /// Opens a procedure of its own with everything of another.
    pub(super) fn open_another(self, this: &Procedure, title: String) {
        // Where it came from goes along with it, for whoever wonders which of two was first.
        let origin = format!("Begun from \"{}\" ({}).", this.title, this.id);
        let document = Procedure {
            id: RandomIds.next_id("procedure"),
            note: [this.note.trim(), &origin].join(" ").trim().to_owned(),
            title,
            revisions: Vec::new(),
            sign_offs: Vec::new(),
            waivers: Vec::new(),
            ..this.clone()
        };
        self.open_and_keep(document, "");
    }

    fn open_and_keep(self, document: Procedure, name: &str) {
        self.notice().set(None);
        self.open(Session::new(Arc::new(document)), name);
        self.keep_now();
    }
}
