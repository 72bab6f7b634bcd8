//! Keys of Write. Letter keys act nowhere but in texts; everything here needs a focused row or Ctrl.

use super::within_row;
use crate::components::keys_dialog::open_sheet;
use crate::frame::undo_keys::undo_keys;
use crate::state::readings::AskedAt;
use crate::state::{Command, EditorStore};
use leptos::ev::KeyboardEvent;
use leptos::prelude::document;
use procedures_schema::model::Id;
use wasm_bindgen::JsCast;

/// Enter drops what is held, and Esc puts it back; says whether the key was one of these.
fn while_holding(store: EditorStore, event: &KeyboardEvent) -> bool {
    let command = match event.key().as_str() {
        "Enter" if store.is_holding() => Command::Drop,
        "Escape" if store.is_holding() => Command::PutHeldBack,
        _ => return false,
    };
    event.prevent_default();
    event.stop_propagation();
    store.run(command);
    true
}

/// The row that is held loses the keyboard for a moment at each move, so its keys are heard everywhere.
fn holds_on(store: EditorStore, event: &KeyboardEvent) -> bool {
    let command = match (event.key().as_str(), event.alt_key()) {
        ("ArrowUp", true) => Command::HoldUp,
        ("ArrowDown", true) => Command::HoldDown,
        // A key of the page that has the keyboard does what it says.
        ("Enter", _) if is_on_button(event) => return false,
        _ => return while_holding(store, event),
    };
    event.prevent_default();
    store.run(command);
    true
}

fn focus_new_line() {
    let line = document().get_element_by_id("new-line");
    if let Some(line) = line.and_then(|line| line.dyn_into::<web_sys::HtmlElement>().ok()) {
        // Only an element that is gone refuses.
        let _ = line.focus();
    }
}

fn is_on_button(event: &KeyboardEvent) -> bool {
    event.target().is_some_and(|target| target.dyn_ref::<web_sys::HtmlButtonElement>().is_some())
}

/// Undo and redo, F8 from finding to finding and F1 for the sheet of keys, across the whole screen.
pub fn everywhere(store: EditorStore, event: &KeyboardEvent) {
    if store.is_holding() && !event.default_prevented() && holds_on(store, event) {
        return;
    }
    if event.key() == "F1" {
        event.prevent_default();
        open_sheet();
        return;
    }
    if event.key() == "Enter" && (event.ctrl_key() || event.meta_key()) && !event.default_prevented() {
        // On a row it opens the line below it; from anywhere else it leads to the line at the end.
        event.prevent_default();
        focus_new_line();
        return;
    }
    if event.key() == "F8" {
        event.prevent_default();
        store.run(if event.shift_key() { Command::PreviousFinding } else { Command::NextFinding });
        return;
    }
    undo_keys(store, event);
}

/// Keys on a focused row.
pub fn on_row(store: EditorStore, step: &Id, event: &KeyboardEvent) {
    let is_on_row_itself = event.target() == event.current_target();
    if !is_on_row_itself {
        leave_part(store, step, event);
        return;
    }
    if while_holding(store, event) {
        return;
    }
    if goes_on(event) {
        if within_row::into_leading_words(step) {
            event.prevent_default();
        }
        return;
    }
    let command = match (event.key().as_str(), event.alt_key(), event.ctrl_key()) {
        ("ArrowDown", false, false) if event.shift_key() => Command::ExtendDown,
        ("ArrowUp", false, false) if event.shift_key() => Command::ExtendUp,
        ("ArrowDown", false, false) => Command::SelectBeside(step.clone(), 1),
        ("ArrowUp", false, false) => Command::SelectBeside(step.clone(), -1),
        ("a", false, true) => Command::SelectAll,
        ("A", false, true) => Command::SelectStage(step.clone()),
        ("d", false, true) => Command::Duplicate,
        // Behind the last word, wherever the caret was before.
        ("Enter", false, false) => Command::EditWords(step.clone(), Some(u32::MAX)),
        ("Escape", ..) => Command::Select(None),
        ("Delete", false, false) => Command::RemoveSelection,
        _ => match on_row_or_words(step, event) {
            Some(command) => command,
            None => return,
        },
    };
    event.prevent_default();
    store.run(command);
}

/// Esc in a part of a row that does not hear it itself leads back to the row; there it clears the selection.
fn leave_part(store: EditorStore, step: &Id, event: &KeyboardEvent) {
    let leaves = event.key() == "Escape" && !event.is_composing() && !event.default_prevented();
    if leaves && !store.is_holding() {
        event.prevent_default();
        within_row::back_to(step);
    }
}

/// Tab, forwards.
fn goes_on(event: &KeyboardEvent) -> bool {
    let is_bare = !event.shift_key() && !event.ctrl_key() && !event.alt_key() && !event.meta_key();
    event.key() == "Tab" && is_bare && !event.is_composing()
}

/// Keys in the words of a row.
pub fn in_words(store: EditorStore, step: &Id, event: &KeyboardEvent) {
    if event.is_composing() || while_holding(store, event) {
        return;
    }
    if goes_on(event) {
        if within_row::into_meaning(step) {
            event.prevent_default();
        }
        return;
    }
    let command = match event.key().as_str() {
        "Escape" => Command::TakeBackTyping(step.clone()),
        "." if event.ctrl_key() && !event.alt_key() => match asked_at(event.target()) {
            Some(at) => Command::AskReadings(step.clone(), at),
            None => return,
        },
        "Backspace" if is_at_the_start(event) => Command::JoinToStepBefore(step.clone()),
        "Enter" if !event.ctrl_key() && !event.shift_key() && !event.alt_key() => match cut_at(event) {
            Some(head) => Command::CutStep { step: step.clone(), head },
            None => Command::KeepWords(step.clone()),
        },
        _ => match on_row_or_words(step, event) {
            Some(command) => command,
            None => return,
        },
    };
    event.prevent_default();
    event.stop_propagation();
    store.run(command);
}

/// Where the caret of a field stands, or what is marked in it.
pub fn asked_at(field: Option<web_sys::EventTarget>) -> Option<AskedAt> {
    let field = field?.dyn_into::<web_sys::HtmlTextAreaElement>().ok()?;
    let words: Vec<u16> = field.value().encode_utf16().collect();
    let at = |place: Option<u32>| usize::try_from(place?).ok().map(|at| at.min(words.len()));
    let (from, to) = (at(field.selection_start().ok()?)?, at(field.selection_end().ok()?)?);
    let part = |range: std::ops::Range<usize>| String::from_utf16(words.get(range)?).ok();
    Some(AskedAt::Words { head: part(0..from)?, marked: part(from..to)? })
}

/// Whether the caret stands before the first word with nothing marked.
fn is_at_the_start(event: &KeyboardEvent) -> bool {
    let field = event.target().and_then(|target| target.dyn_into::<web_sys::HtmlTextAreaElement>().ok());
    let at = |field: &web_sys::HtmlTextAreaElement| {
        Some((field.selection_start().ok()??, field.selection_end().ok()??))
    };
    field.as_ref().and_then(at) == Some((0, 0)) && !event.ctrl_key() && !event.meta_key() && !event.alt_key()
}

/// The words before the caret, if it stands within the words and nothing is marked.
fn cut_at(event: &KeyboardEvent) -> Option<String> {
    let field = event.target().and_then(|target| target.dyn_into::<web_sys::HtmlTextAreaElement>().ok())?;
    let (start, end) = (field.selection_start().ok()??, field.selection_end().ok()??);
    let words: Vec<u16> = field.value().encode_utf16().collect();
    let (head, tail) = words.split_at_checked(usize::try_from(start).ok()?)?;
    let (head, tail) = (String::from_utf16(head).ok()?, String::from_utf16(tail).ok()?);
    (start == end && !head.trim().is_empty() && !tail.trim().is_empty()).then_some(head)
}

fn on_row_or_words(step: &Id, event: &KeyboardEvent) -> Option<Command> {
    match (event.key().as_str(), event.alt_key(), event.ctrl_key()) {
        ("ArrowUp", true, false) => Some(Command::HoldUp),
        ("ArrowDown", true, false) => Some(Command::HoldDown),
        ("Enter", true, false) => Some(Command::Mend(step.clone())),
        ("Enter", false, true) => Some(Command::DraftBelow(step.clone())),
        _ => None,
    }
}
