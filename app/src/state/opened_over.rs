//! A file that is opened over what this device has of the same procedure.
//!
//! Opening it is one entry of undo. Where it lacks something that stands here and in no file, or is what was here before,
//! somebody is told what differs, and nothing is opened until they have said so.

use super::editor_store::EditorStore;
use super::file_names::stem;
use super::filing::{ChangedFile, Filed, Meant};
use super::on_shelf::kept;
use super::opening::Came;
use super::{clock, versions};
use crate::storage::file_access::Handle;
use leptos::prelude::*;
use procedures_schema::compare::changes;
use procedures_schema::edit::{Edit, Session};
use procedures_schema::model::{Id, Procedure};
use std::sync::Arc;

/// A file that was read and is a procedure.
#[derive(Clone)]
pub(super) struct Read {
    pub(super) name: String,
    pub(super) bytes: Vec<u8>,
    pub(super) document: Arc<Procedure>,
    /// Its place, if it can be saved there.
    pub(super) file: Option<Handle>,
}

impl EditorStore {
    /// Opens what was read, unless somebody has to be asked first.
    pub(super) async fn open_read(self, read: Read) -> Came {
        if !self.has_open(&read.document.id).await {
            self.notice().set(None);
            self.open(Session::new(read.document.clone()), stem(&read.name));
            self.is_as_in(read);
            return Came::Procedure;
        }
        self.leave_draft();
        self.drop_held();
        self.close_group();
        if !self.has_to_ask(&read.document).await {
            return self.take(read);
        }
        let (mine, filed) = (self.document_now(), self.filed().get_untracked());
        let since = match filed {
            Some(Filed::NotSince(at)) => {
                format!("has been in no file since {}", clock::day_and_minute(at, clock::now_ms()))
            }
            None => "is in no file".to_owned(),
            Some(Filed::Opened | Filed::At(_)) => "is newer".to_owned(),
        };
        let what = changes(&mine, &read.document).lines();
        self.changed_file().set(Some(ChangedFile {
            name: read.name.clone(),
            what,
            meant: Meant::Open(since),
        }));
        self.parts().files.offered.set_value(Some(read));
        Came::Asked
    }

    /// Whether a procedure is open here; if it only lies on this device, it is now.
    async fn has_open(self, id: &Id) -> bool {
        if self.document_now().id == *id {
            return true;
        }
        // What was thrown away is not asked about; it stays as a version.
        let is_here = kept(id).await.is_ok_and(|kept| kept.removed_ms.is_none());
        is_here && self.open_kept(id.clone()).await.is_ok()
    }

    /// Whether something would go that is in no file, or an older state come that was left behind here.
    async fn has_to_ask(self, there: &Procedure) -> bool {
        if !lacks_something(&self.document_now(), there) {
            return false;
        }
        let is_in_file = matches!(self.filed().get_untracked(), Some(Filed::Opened | Filed::At(_)));
        !self.is_demo_as_it_came() && (!is_in_file || self.was_here_before(there).await)
    }

    /// Whether nobody has written in the demonstration: all that has become of it is that a step was taken out.
    fn is_demo_as_it_came(self) -> bool {
        let label = self.taken_out_now().map(|taken_out| taken_out.label());
        let n_done = self.parts().session.with_untracked(Session::n_done);
        label.is_some() && n_done == 1 && self.undo_label_now() == label
    }

    async fn was_here_before(self, there: &Procedure) -> bool {
        if self.parts().session.with_untracked(|session| session.was(there)) {
            return true;
        }
        // What cannot be read cannot be told to be the same.
        for stamp in versions::earlier(&there.id).await.unwrap_or_default() {
            if versions::version(&there.id, stamp).await.is_ok_and(|version| *version == *there) {
                return true;
            }
        }
        false
    }

    /// Puts what was read in the place of the open state of the same procedure, which undo brings back.
    pub(super) fn take(self, read: Read) -> Came {
        self.notice().set(None);
        self.select(None);
        let is_other = *self.document_now() != *read.document;
        let label = format!("open {}", stem(&read.name));
        if is_other && !self.edit(&[Edit::Replace(read.document.clone())], &label, None) {
            return Came::Nothing;
        }
        self.parts().name.set(stem(&read.name).to_owned());
        self.is_as_in(read);
        Came::Procedure
    }

    /// Says that the open procedure is just what was read, and keeps it.
    fn is_as_in(self, read: Read) {
        self.was_filed(Some(Filed::Opened));
        self.keep_now();
        // Without a place there is none to save in either: that of another state would be written over.
        match read.file {
            Some(file) => self.keep_in_hand(read.document.id.clone(), file, read.bytes),
            None => self.let_go_of_file_of(&read.document.id),
        }
    }

    /// Opens the file that was asked about.
    pub fn open_offered(self) {
        if let Some(read) = self.take_offered() {
            self.take(read);
        }
    }

    /// Opens the file that was asked about as a procedure of its own; what is here stays as it is.
    pub fn open_offered_beside(self) {
        if let Some(read) = self.take_offered() {
            let title = format!("{} (from a file)", read.document.title);
            self.open_another(&read.document, title);
        }
    }

    /// Leaves the file alone that was asked about.
    pub fn leave_offered(self) {
        self.take_offered();
    }

    fn take_offered(self) -> Option<Read> {
        self.changed_file().set(None);
        self.parts().files.offered.try_update_value(Option::take).flatten()
    }
}

/// Whether anything of one state is not in another, or not as it is there.
fn lacks_something(mine: &Procedure, there: &Procedure) -> bool {
    let changes = changes(mine, there);
    let only_adds = [&changes.steps, &changes.things]
        .iter()
        .all(|parts| parts.changed.is_empty() && parts.moved.is_empty() && parts.gone.is_empty());
    !only_adds || !changes.others.is_empty()
}

#[cfg(test)]
mod tests {
    use super::lacks_something;
    use procedures_schema::model::{Procedure, Stage, Step};
    use std::sync::Arc;
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test]
    fn a_state_that_only_has_more_lacks_nothing() {
        let mine = Procedure::new("p".into(), "Pump");
        let mut more = mine.clone();
        more.steps.push(Arc::new(Step::new("a".into(), Stage::MakeSafe, "Switch off.")));
        assert!(!lacks_something(&mine, &mine));
        assert!(!lacks_something(&mine, &more));
        assert!(lacks_something(&more, &mine));
        let mut renamed = more.clone();
        renamed.title = "Another".to_owned();
        assert!(lacks_something(&more, &renamed));
    }
}
