//! The file that the open procedure is in: opened and saved in its place where the browser lets a page do that,
//! and never written over unread.
//!
//! Before a file is written it is read. If it is not what was read or written here last, somebody is told what
//! has become of it, and nothing is written until they have said so. Other browsers share or download.

use super::clock;
use super::editor_store::EditorStore;
use super::file_names::{file_name, mark_in, name_or_title, stem};
use super::opened_over::Read;
use super::opening::Came;
use crate::storage::file_access::{self, Handle};
use crate::storage::files;
use crate::storage::sharing::{self, Shared};
use leptos::prelude::*;
use leptos::task::spawn_local;
use procedures_schema::compare::changes;
use procedures_schema::format;
use procedures_schema::model::{Id, Procedure};
use serde::{Deserialize, Serialize};
use std::sync::Arc;

/// A file in hand, and what was read or written here last.
#[derive(Clone)]
pub(super) struct InHand {
    document: Id,
    file: Handle,
    known: Vec<u8>,
    /// What it was found to be instead, if somebody was told of that.
    told: Option<Vec<u8>>,
}

/// The files that the editor has to do with.
#[derive(Clone, Copy)]
pub(super) struct Files {
    pub(super) in_hand: StoredValue<Option<InHand>, LocalStorage>,
    /// The one that somebody is asked about before it is opened.
    pub(super) offered: StoredValue<Option<Read>, LocalStorage>,
    pub(super) changed: RwSignal<Option<ChangedFile>>,
}

impl Default for Files {
    fn default() -> Self {
        Self {
            in_hand: StoredValue::new_local(None),
            offered: StoredValue::new_local(None),
            changed: RwSignal::new(None),
        }
    }
}

/// What is to be saved: the state of the procedure when somebody pressed, as a file.
struct ToSave {
    document: Arc<Procedure>,
    name: String,
    mark: Option<&'static str>,
    text: String,
}

/// Whether a procedure is in a file as it is now.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Filed {
    /// It is as it was opened from one.
    Opened,
    /// It was saved at this time, and is the same since.
    At(u64),
    /// It has been changed since this time.
    NotSince(u64),
}

/// A file that is not what it was when it was opened or saved here, or that is opened over other work.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ChangedFile {
    /// The name of the file.
    pub name: String,
    /// What has become of it, in words.
    pub what: Vec<String>,
    /// What somebody wanted to do with it.
    pub meant: Meant,
}

/// What was wanted of a file that is not what is here.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Meant {
    /// To save over it. It can be opened instead if it is a state of the same procedure.
    Save {
        /// Whether it is.
        can_be_opened: bool,
    },
    /// To open it over what is here, of which this says why it would be missed.
    Open(String),
}

impl EditorStore {
    /// A file that was not written because it is not what was read here, or not opened because something here is not in
    /// it; until somebody has decided.
    pub fn changed_file(self) -> RwSignal<Option<ChangedFile>> {
        self.parts().files.changed
    }

    /// Whether files can be opened to be saved in their place.
    pub fn has_files_in_hand() -> bool {
        file_access::is_there()
    }

    /// Opens the file that a person picks, and keeps it in hand; then goes on, if it is open.
    pub fn open_in_hand(self, then: Callback<()>) {
        spawn_local(async move {
            match self.pick_and_open().await {
                Ok(true) => then.run(()),
                Ok(false) => {}
                Err(reason) => self.notice().set(Some(format!("Nothing was opened: {reason}."))),
            }
        });
    }

    async fn pick_and_open(self) -> Result<bool, String> {
        let Some(file) = file_access::pick_to_open().await? else { return Ok(false) };
        let known = files::bytes_of(&file.file().await?).await?;
        let came = self.open_bytes(&file.name(), known, Some(file.clone())).await;
        Ok(matches!(came, Came::Procedure | Came::Asked))
    }

    /// Whether the open procedure is in a file as it is now, as far as that is known since it was opened.
    pub fn filed(self) -> ReadSignal<Option<Filed>> {
        self.parts().filed.read_only()
    }

    /// Says that it was saved in a file of this name, unless somebody has gone on writing meanwhile.
    fn is_filed(self, what: &ToSave, file_name: &str) {
        self.let_go_of_notice();
        if self.document_now().id == what.document.id {
            self.parts().name.set(stem(file_name).to_owned());
        }
        let now = clock::now_ms();
        let is_as_saved = Arc::ptr_eq(&what.document, &self.document_now());
        self.parts().filed.set(Some(if is_as_saved { Filed::At(now) } else { Filed::NotSince(now) }));
        self.keep_again();
    }

    /// Says whether the procedure that was opened is in a file.
    pub(super) fn was_filed(self, filed: Option<Filed>) {
        self.parts().filed.set(filed);
    }

    /// Says that the open procedure is changed; the first change since counts.
    pub(super) fn is_no_longer_filed(self) {
        if self.parts().filed.with_untracked(|filed| matches!(filed, Some(Filed::Opened | Filed::At(_)))) {
            self.parts().filed.set(Some(Filed::NotSince(clock::now_ms())));
        }
    }

    pub(super) fn keep_in_hand(self, document: Id, file: Handle, known: Vec<u8>) {
        self.parts().files.in_hand.set_value(Some(InHand { document, file, known, told: None }));
        self.changed_file().set(None);
    }

    /// Saving this procedure asks for a place from now on.
    pub(super) fn let_go_of_file_of(self, document: &Id) {
        let is_of = |held: &Option<InHand>| held.as_ref().is_some_and(|held| held.document == *document);
        if self.parts().files.in_hand.with_value(is_of) {
            self.parts().files.in_hand.set_value(None);
        }
    }

    /// Saves the document as a file, with its verdict in the name where it is not accepted.
    pub fn save(self) {
        self.save_here(false);
    }

    fn save_here(self, is_over: bool) {
        self.close_group();
        let what = self.to_save();
        spawn_local(async move {
            let in_hand = self.parts().files.in_hand.get_value();
            // A file whose name says something else of the verdict is not the place for this state.
            let is_place =
                |held: &InHand| held.document == what.document.id && mark_in(&held.file.name()) == what.mark;
            let outcome = match in_hand.filter(is_place) {
                Some(held) => self.write_over(held, &what, is_over).await,
                None if file_access::is_there() => self.write_elsewhere(&what).await,
                None => self.give_away(&what).await,
            };
            if let Err(reason) = outcome {
                self.notice().set(Some(format!("Nothing was saved: {reason}.")));
            }
        });
    }

    /// The name of the document's file without its ending: a rejected one or a draft says so.
    pub fn marked_name(self) -> String {
        let judged = self.judged_now();
        let name = file_name(&self.name_in_file(&judged.document), judged.mark_of_file());
        name.strip_suffix(".putback.json").map_or_else(|| name.clone(), str::to_owned)
    }

    /// What its file is called: as it was opened or saved, else after its title.
    fn name_in_file(self, document: &Procedure) -> String {
        name_or_title(&self.name_now(), &document.title)
    }

    fn to_save(self) -> ToSave {
        let judged = self.judged_now();
        let mark = judged.mark_of_file();
        ToSave {
            document: judged.document.clone(),
            name: file_name(&self.name_in_file(&judged.document), mark),
            mark,
            text: format::write(&judged.document),
        }
    }

    /// Shares the file, where that is the way of the device, or downloads it.
    async fn give_away(self, what: &ToSave) -> Result<(), String> {
        match sharing::share(&what.name, &what.text).await {
            Shared::Done => {}
            Shared::Not => return Ok(()),
            Shared::Unable => files::save(&what.name, &what.text)?,
        }
        self.is_filed(what, &what.name);
        Ok(())
    }

    async fn write_over(self, held: InHand, what: &ToSave, is_over: bool) -> Result<(), String> {
        let found = match held.file.file().await {
            Ok(file) => files::bytes_of(&file).await?,
            Err(reason) => {
                // The next try asks for a place.
                self.parts().files.in_hand.set_value(None);
                return Err(format!("{reason}; save once more to choose a place"));
            }
        };
        let is_told = is_over && held.told.as_ref() == Some(&found);
        if !is_told && found != held.known && found != what.text.as_bytes() {
            self.tell_of_change(held, found);
            return Ok(());
        }
        held.file.write(&what.text).await?;
        let name = held.file.name();
        self.keep_in_hand(held.document, held.file, what.text.as_bytes().to_vec());
        self.is_filed(what, &name);
        Ok(())
    }

    async fn write_elsewhere(self, what: &ToSave) -> Result<(), String> {
        let Some(file) = file_access::pick_to_save(&what.name).await? else { return Ok(()) };
        // Nothing is known of a file that was there before, so it is asked about unless it is empty.
        let held = InHand { document: what.document.id.clone(), file, known: Vec::new(), told: None };
        self.write_over(held, what, false).await
    }

    fn tell_of_change(self, held: InHand, found: Vec<u8>) {
        let name = held.file.name();
        let (what, can_be_opened) = what_became(&held.known, &found, &self.document_now());
        self.parts().files.in_hand.set_value(Some(InHand { told: Some(found), ..held }));
        self.changed_file().set(Some(ChangedFile { name, what, meant: Meant::Save { can_be_opened } }));
    }

    /// Saves over the changed file after all, unless it has changed once more.
    pub fn save_over(self) {
        self.changed_file().set(None);
        self.save_here(true);
    }

    /// Leaves the changed file alone and picks another place.
    pub fn save_elsewhere(self) {
        self.changed_file().set(None);
        self.parts().files.in_hand.set_value(None);
        self.save();
    }

    /// Opens the changed file in place of what is written here, which undo brings back.
    pub fn open_changed(self) {
        self.changed_file().set(None);
        let Some(held) = self.parts().files.in_hand.get_value() else { return };
        let Some(found) = held.told else { return };
        // That it is another state was told just now.
        if let Ok(document) = format::read(&found) {
            let (name, document) = (held.file.name(), Arc::new(document));
            self.take(Read { name, bytes: found, document, file: Some(held.file) });
        }
    }

    /// Leaves the changed file alone; saving asks again.
    pub fn leave_changed(self) {
        self.changed_file().set(None);
        self.parts().files.in_hand.set_value(None);
    }
}

/// What has become of a file since it was read, in words, and whether it can be opened instead.
fn what_became(known: &[u8], found: &[u8], mine: &Procedure) -> (Vec<String>, bool) {
    let there = match format::read(found) {
        Ok(there) => there,
        Err(error) => return (vec![format!("it cannot be read as a procedure: {error}")], false),
    };
    if there.id != mine.id {
        return (vec![format!("it holds another procedure, \"{}\"", there.title)], false);
    }
    let since = format::read(known).map_or_else(|_| changes(mine, &there), |before| changes(&before, &there));
    let mut lines = since.lines();
    if lines.is_empty() {
        lines.push("only its layout differs".to_owned());
    }
    (lines, true)
}
