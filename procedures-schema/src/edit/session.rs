//! A document with its undo and redo.
//!
//! Undo is a stack of shared documents, not of inverse edits. Typing into the same field within
//! [`GROUP_MS`] of the last key is one entry; an entry knows its name and the step where it acted.

use super::{Edit, EditError, apply};
use crate::model::{Id, Procedure};
use std::sync::Arc;

/// Edits of one group further apart than this become two entries.
const GROUP_MS: u64 = 500;
/// Entries kept.
const MOST_ENTRIES: usize = 100;

/// A document being written.
#[derive(Clone, Debug, PartialEq)]
pub struct Session {
    document: Arc<Procedure>,
    // Shared, since whoever shows or keeps a session clones it with each key.
    undo: Arc<Vec<Entry>>,
    redo: Arc<Vec<Entry>>,
    /// How many entries lie behind the document, those that have been dropped included.
    n_done: usize,
    open_group: Option<OpenGroup>,
}

/// The document on the far side of an edit.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Entry {
    pub(super) document: Arc<Procedure>,
    pub(super) label: String,
    pub(super) step: Option<Id>,
}

#[derive(Clone, Debug, PartialEq)]
struct OpenGroup {
    key: String,
    last_ms: u64,
}

/// What was undone or done again.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Undone {
    /// The name of the edit, for example `move step 12`.
    pub label: String,
    /// Where it acted.
    pub step: Option<Id>,
}

impl Session {
    /// A session on a document, with nothing to undo.
    pub fn new(document: Arc<Procedure>) -> Self {
        Self { document, undo: Arc::default(), redo: Arc::default(), n_done: 0, open_group: None }
    }

    /// The same session with these entries, the ones that are reached first at the end.
    pub(super) fn with_entries(self, undo: Vec<Entry>, redo: Vec<Entry>) -> Self {
        Self { n_done: undo.len(), undo: Arc::new(undo), redo: Arc::new(redo), ..self }
    }

    pub(super) fn undo_entries(&self) -> &[Entry] {
        &self.undo
    }

    pub(super) fn redo_entries(&self) -> &[Entry] {
        &self.redo
    }

    /// The document now.
    pub fn document(&self) -> &Arc<Procedure> {
        &self.document
    }

    /// Whether it has been just so before, as far as undo reaches.
    pub fn was(&self, document: &Procedure) -> bool {
        self.undo.iter().any(|entry| *entry.document == *document)
    }

    /// Applies edits as one undo entry; with the same `group` as the last edit, no more than 500 ms
    /// after it, as part of that entry.
    ///
    /// # Errors
    /// If any of the edits cannot be applied; then none is.
    pub fn edit(
        &mut self,
        edits: &[Edit],
        label: &str,
        group: Option<&str>,
        now_ms: u64,
    ) -> Result<(), EditError> {
        let mut document = self.document.clone();
        let mut step = None;
        for edit in edits {
            let applied = apply(&document, edit)?;
            document = applied.document;
            step = step.or_else(|| applied.touched.into_iter().next());
        }
        let joins = match (&self.open_group, group) {
            (Some(open), Some(key)) => open.key == key && now_ms.saturating_sub(open.last_ms) <= GROUP_MS,
            _ => false,
        };
        if !joins {
            let undo = Arc::make_mut(&mut self.undo);
            if undo.len() == MOST_ENTRIES {
                undo.remove(0);
            }
            undo.push(Entry { document: self.document.clone(), label: label.to_owned(), step });
            self.n_done += 1;
        }
        if !self.redo.is_empty() {
            self.redo = Arc::default();
        }
        self.document = document;
        self.open_group = group.map(|key| OpenGroup { key: key.to_owned(), last_ms: now_ms });
        Ok(())
    }

    /// Goes back before the last entry.
    pub fn undo(&mut self) -> Option<Undone> {
        let entry = Arc::make_mut(&mut self.undo).pop()?;
        Some(self.swap(entry, true))
    }

    /// Does again what was undone last.
    pub fn redo(&mut self) -> Option<Undone> {
        let entry = Arc::make_mut(&mut self.redo).pop()?;
        Some(self.swap(entry, false))
    }

    fn swap(&mut self, entry: Entry, was_undo: bool) -> Undone {
        let Entry { document, label, step } = entry;
        let here = std::mem::replace(&mut self.document, document);
        let other = Entry { document: here, label: label.clone(), step: step.clone() };
        if was_undo {
            self.n_done = self.n_done.saturating_sub(1);
            Arc::make_mut(&mut self.redo).push(other);
        } else {
            self.n_done += 1;
            Arc::make_mut(&mut self.undo).push(other);
        }
        self.open_group = None;
        Undone { label, step }
    }

    /// The name of what undo would take back.
    pub fn undo_label(&self) -> Option<&str> {
        self.undo.last().map(|entry| entry.label.as_str())
    }

    /// How many entries lie behind the document, those that are no longer kept included.
    pub fn n_done(&self) -> usize {
        self.n_done
    }

    /// How many of them can be taken back.
    pub fn n_undo(&self) -> usize {
        self.undo.len()
    }

    /// The name of what redo would do again.
    pub fn redo_label(&self) -> Option<&str> {
        self.redo.last().map(|entry| entry.label.as_str())
    }

    /// Ends the open group: the next edit is an entry of its own.
    pub fn close_group(&mut self) {
        self.open_group = None;
    }
}
