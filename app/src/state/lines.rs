//! What is typed in the lines for a new step and is nobody's step yet.
//!
//! It stays while other screens are shown, and outlives a reload. It is kept a moment after the first key that is not,
//! however long somebody goes on, for to keep it takes a tenth of what a key costs; at once where the line is empty
//! again, and when the page goes out of sight.

use super::editor_store::EditorStore;
use super::keeping::AFTER_TYPING;
use crate::storage::unfinished;
use leptos::leptos_dom::helpers::set_timeout_with_handle;
use leptos::prelude::*;
use procedures_schema::model::Id;

/// One of the lines.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Line {
    /// The one at the end.
    Last,
    /// The one below a step.
    Below,
}

/// What stands in them.
#[derive(Clone, Copy)]
pub(super) struct Lines {
    last: RwSignal<String>,
    below: RwSignal<String>,
    /// What is to be kept of each.
    pending: StoredValue<Vec<Pending>>,
}

/// Words that are to be kept, with the procedure and the step below which they stand, if they do.
#[derive(Clone, Debug)]
struct Pending {
    document: Id,
    below: Option<Id>,
    words: String,
}

impl Pending {
    fn store(&self) {
        let document = self.document.as_str();
        match &self.below {
            None => unfinished::keep_line(document, &self.words),
            Some(step) => unfinished::keep_below(document, step.as_str(), &self.words),
        }
    }
}

impl Lines {
    /// What was left in them when this procedure was open before.
    pub(super) fn of(document: &Id) -> Self {
        let last = unfinished::line_of(document.as_str()).unwrap_or_default();
        let pending = StoredValue::new(Vec::new());
        Self { last: RwSignal::new(last), below: RwSignal::new(String::new()), pending }
    }
}

impl EditorStore {
    /// What stands in a line.
    pub fn line(self, line: Line) -> ReadSignal<String> {
        let Lines { last, below, .. } = self.lines();
        match line {
            Line::Last => last.read_only(),
            Line::Below => below.read_only(),
        }
    }

    /// Types in a line.
    pub fn set_line(self, line: Line, words: String) {
        let Lines { last, below, .. } = self.lines();
        let document = self.document_now().id.clone();
        match line {
            Line::Last => {
                self.store_soon(Pending { document, below: None, words: words.clone() });
                last.set(words);
            }
            Line::Below => {
                if let Some(after) = self.attention().draft_after.get_untracked() {
                    self.store_soon(Pending { document, below: Some(after), words: words.clone() });
                }
                below.set(words);
            }
        }
    }

    /// Keeps what stands in a line: a moment later with what else is typed until then, at once if nothing stands there any
    /// more, for it may be a step by now.
    fn store_soon(self, new: Pending) {
        let pending = self.lines().pending;
        let (at_once, waits) = (new.words.is_empty(), pending.with_value(|pending| !pending.is_empty()));
        pending.update_value(|pending| {
            pending.retain(|known| known.below.is_some() != new.below.is_some());
            pending.push(new);
        });
        if at_once || (!waits && set_timeout_with_handle(move || self.store_drafts(), AFTER_TYPING).is_err())
        {
            self.store_drafts();
        }
    }

    /// Keeps what was typed in the lines and is not kept yet.
    pub fn store_drafts(self) {
        let pending = self.lines().pending.try_update_value(std::mem::take).unwrap_or_default();
        pending.iter().for_each(Pending::store);
    }

    /// Types behind what stands in a line.
    pub fn type_in_line(self, line: Line, more: &str) {
        let words = format!("{}{more}", self.line(line).get_untracked());
        self.set_line(line, words);
    }

    /// Shows what was left in the lines of a procedure that is now open.
    pub(super) fn lines_of(self, document: &Id) {
        self.store_drafts();
        let Lines { last, below, .. } = self.lines();
        last.set(unfinished::line_of(document.as_str()).unwrap_or_default());
        below.set(String::new());
    }

    /// Opens the line below a step again in which something was typed when the page went.
    pub(super) fn reopen_line_below(self) {
        self.store_drafts();
        let document = self.document_now();
        let Some((after, words)) = unfinished::below_of(document.id.as_str()) else { return };
        let after = Id::new(&after);
        if document.position(&after).is_some() {
            self.attention().selected.set(Some(after.clone()));
            self.attention().draft_after.set(Some(after));
            self.set_line(Line::Below, words);
        } else {
            // Its step has gone, the words have not.
            let (last, below) = (self.line(Line::Last).get_untracked(), words);
            self.set_line(Line::Last, [last, below].join(" ").trim().to_owned());
            self.store_drafts();
            unfinished::keep_below(document.id.as_str(), "", "");
        }
    }
}
