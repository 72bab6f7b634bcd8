//! What is typed in the lines for a new step and is nobody's step yet.
//!
//! It stays while other screens are shown, and that of the line at the end outlives a reload.

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
            Line::Below => below.set(words),
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
}
