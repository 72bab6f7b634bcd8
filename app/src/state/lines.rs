//! What is typed in the lines for a new step and is nobody's step yet.
//!
//! It stays while other screens are shown, and outlives a reload.

use super::editor_store::EditorStore;
use crate::storage::unfinished;
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
}

impl Lines {
    /// What was left in them when this procedure was open before.
    pub(super) fn of(document: &Id) -> Self {
        let last = unfinished::line_of(document.as_str()).unwrap_or_default();
        Self { last: RwSignal::new(last), below: RwSignal::new(String::new()) }
    }
}

impl EditorStore {
    /// What stands in a line.
    pub fn line(self, line: Line) -> ReadSignal<String> {
        let Lines { last, below } = self.lines();
        match line {
            Line::Last => last.read_only(),
            Line::Below => below.read_only(),
        }
    }

    /// Types in a line.
    pub fn set_line(self, line: Line, words: String) {
        let Lines { last, below } = self.lines();
        match line {
            Line::Last => {
                unfinished::keep_line(self.document_now().id.as_str(), &words);
                last.set(words);
            }
            Line::Below => {
                if let Some(after) = self.attention().draft_after.get_untracked() {
                    unfinished::keep_below(self.document_now().id.as_str(), after.as_str(), &words);
                }
                below.set(words);
            }
        }
    }

    /// Types behind what stands in a line.
    pub fn type_in_line(self, line: Line, more: &str) {
        let words = format!("{}{more}", self.line(line).get_untracked());
        self.set_line(line, words);
    }

    /// Shows what was left in the lines of a procedure that is now open.
    pub(super) fn lines_of(self, document: &Id) {
        let Lines { last, below } = self.lines();
        last.set(unfinished::line_of(document.as_str()).unwrap_or_default());
        below.set(String::new());
    }

    /// Opens the line below a step again in which something was typed when the page went.
    pub(super) fn reopen_line_below(self) {
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
            unfinished::keep_below(document.id.as_str(), "", "");
            self.set_line(Line::Last, [last, below].join(" ").trim().to_owned());
        }
    }
}
