//! Where the selection and the keyboard are, and how they get there.

use super::doubts::AskedFrom;
use super::editor_store::EditorStore;
use super::lines::Line;
use leptos::prelude::*;
use procedures_schema::model::Id;

/// Where the keyboard goes next.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Focus {
    /// To a row.
    Row(Id),
    /// Into the words of a row; at a place in UTF-16 units, if it was pressed there.
    Words(Id, Option<u32>),
    /// Into the line for a new step below a row.
    Draft,
    /// Into the line at the end.
    LastLine,
    /// To the first answer of the question about a step.
    Choice(Id),
    /// To the first of the readings of words of a step.
    Reading(Id),
    /// To an action of a step, by its position.
    Token(Id, usize),
    /// To what belongs to no step, at the end.
    End,
}

impl Focus {
    /// The id of what it names on the page.
    pub fn element_id(&self) -> String {
        match self {
            Self::Row(step) => format!("row-{step}"),
            Self::Words(step, _) => format!("words-{step}"),
            Self::Draft => "draft-line".to_owned(),
            Self::LastLine => "new-line".to_owned(),
            Self::Choice(step) => format!("choice-{step}"),
            Self::Reading(step) => format!("reading-{step}"),
            Self::Token(step, at) => format!("token-{step}-{at}"),
            Self::End => "end".to_owned(),
        }
    }
}

/// Where words are being written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum WritesIn {
    /// In those of a step.
    Words(Id),
    /// In the line for a new step below a row.
    Draft,
    /// In the line at the end.
    Line,
}

impl WritesIn {
    /// The id of the field on the page.
    pub fn field(&self) -> String {
        match self {
            Self::Words(step) => format!("words-{step}"),
            Self::Draft => "draft-line".to_owned(),
            Self::Line => "new-line".to_owned(),
        }
    }
}

/// The signals of it.
#[derive(Clone, Copy)]
pub(super) struct Attention {
    pub(super) selected: RwSignal<Option<Id>>,
    pub(super) anchor: RwSignal<Option<Id>>,
    pub(super) is_editing: RwSignal<bool>,
    pub(super) draft_after: RwSignal<Option<Id>>,
    pub(super) focus: RwSignal<Option<Focus>>,
    pub(super) is_in_line: RwSignal<bool>,
}

impl EditorStore {
    pub(super) fn select(self, step: Option<Id>) {
        self.typing(false);
        self.ask_nothing();
        self.leave_draft();
        self.attention().anchor.set(None);
        self.attention().selected.set(step.clone());
        if let Some(step) = step {
            self.in_line(false);
            self.look_at(Focus::Row(step));
        }
    }

    /// Where words are being written, or would be with the next key: in the line at the end if the keyboard has been
    /// there last, else at the selected row.
    pub fn writes_in(self) -> Memo<WritesIn> {
        let Attention { selected, draft_after, is_in_line, .. } = self.attention();
        Memo::new(move |_| match selected.get() {
            Some(_) if !is_in_line.get() && draft_after.with(Option::is_some) => WritesIn::Draft,
            Some(step) if !is_in_line.get() => WritesIn::Words(step),
            _ => WritesIn::Line,
        })
    }

    /// Where the keyboard goes when Write is shown again: into the line in which it was, else onto the selected row.
    pub fn left_at(self) -> Option<Focus> {
        let Attention { selected, draft_after, is_in_line, .. } = self.attention();
        if is_in_line.get_untracked() {
            Some(Focus::LastLine)
        } else if draft_after.with_untracked(Option::is_some) {
            Some(Focus::Draft)
        } else {
            selected.get_untracked().map(Focus::Row)
        }
    }

    /// Leaves the keyboard where it is, in a line or at a step, although what has it may move on the page.
    pub(super) fn stay_at(self, step: &Id) {
        let is_in_words =
            self.attention().is_editing.get_untracked() && self.selected_now().as_ref() == Some(step);
        let here = if is_in_words { Some(Focus::Words(step.clone(), None)) } else { self.left_at() };
        if let Some(here) = here {
            self.look_at(here);
        }
    }

    /// Takes note that the keyboard went into the line at the end.
    pub fn entered_line(self) {
        self.in_line(true);
        self.leave_draft();
    }

    fn in_line(self, is_so: bool) {
        if self.attention().is_in_line.get_untracked() != is_so {
            self.attention().is_in_line.set(is_so);
        }
    }

    /// Takes note of the row into which the keyboard or a finger went.
    pub fn entered(self, step: &Id) {
        self.in_line(false);
        if self.attention().selected.with_untracked(|selected| selected.as_ref() != Some(step)) {
            self.drop_held();
            self.typing(false);
            self.ask_nothing();
            self.leave_draft();
            self.attention().anchor.set(None);
            self.attention().selected.set(Some(step.clone()));
        }
    }

    pub(super) fn edit_words(self, step: Id, at: Option<u32>) {
        self.leave_draft();
        self.attention().anchor.set(None);
        self.attention().selected.set(Some(step.clone()));
        self.attention().is_editing.set(true);
        self.look_at(Focus::Words(step, at));
    }

    pub(super) fn stop_editing(self) {
        self.typing(false);
        if let Some(step) = self.selected_now() {
            self.look_at(Focus::Row(step));
        }
    }

    /// Takes note of whether the keyboard is in the words of the selected step.
    pub fn typing(self, is_typing: bool) {
        if self.attention().is_editing.get_untracked() != is_typing {
            self.attention().is_editing.set(is_typing);
        }
        if !is_typing {
            self.close_group();
            if let Some(typed) = self.retyped().try_update_value(Option::take).flatten() {
                self.take_leading_lines(&typed.step.id);
                self.make_things(&typed.step.id, &[], None);
            }
        }
    }

    pub(super) fn keep_words(self, step: Id) {
        self.typing(false);
        if !self.ask(&step, AskedFrom::LineBelow) {
            self.open_draft(step);
        }
    }

    /// Closes the line below a step, for the keyboard has gone elsewhere; what was typed in it becomes a step.
    pub(super) fn leave_draft(self) {
        let Some(after) = self.attention().draft_after.get_untracked() else { return };
        let words = self.line(Line::Below).with_untracked(|words| words.trim().to_owned());
        if !words.is_empty() && self.refuses() {
            return;
        }
        // First, for it says of which step it was; what has become a step is no draft any more.
        self.set_line(Line::Below, String::new());
        self.attention().draft_after.set(None);
        if !words.is_empty() {
            self.keep_line(Some(&after), &words);
        }
    }

    pub(super) fn open_draft(self, after: Id) {
        self.typing(false);
        self.leave_draft();
        self.attention().selected.set(Some(after.clone()));
        self.attention().draft_after.set(Some(after));
        self.look_at(Focus::Draft);
    }

    pub(super) fn close_draft(self) {
        self.set_line(Line::Below, String::new());
        self.attention().draft_after.set(None);
        if let Some(step) = self.selected_now() {
            self.look_at(Focus::Row(step));
        }
    }

    /// Where the keyboard is to go, once: asking again gives nothing.
    pub fn take_focus(self) -> Option<Focus> {
        self.attention().focus.try_update_untracked(Option::take).flatten()
    }

    /// Sends the keyboard to where something that was open has been closed.
    pub fn go_on_at(self, focus: Focus) {
        self.look_at(focus);
    }

    pub(super) fn look_at(self, focus: Focus) {
        self.attention().focus.set(Some(focus));
    }
}
