//! The line that somebody was typing when the page went, of the procedure that was typed in last.

use gloo_storage::{LocalStorage, Storage};

const LINE: &str = "putback.line";
const BELOW: &str = "putback.line-below";

/// What was being typed in a procedure.
pub fn line_of(document: &str) -> Option<String> {
    let (of, words): (String, String) = LocalStorage::get(LINE).ok()?;
    (of == document).then_some(words)
}

/// Keeps what is being typed; without a place to keep it, it stays until the page is closed.
pub fn keep_line(document: &str, words: &str) {
    if words.is_empty() {
        LocalStorage::delete(LINE);
    } else {
        let _ = LocalStorage::set(LINE, (document, words));
    }
}

/// What was being typed below a step of a procedure: the step, and the words.
pub fn below_of(document: &str) -> Option<(String, String)> {
    let (of, after, words): (String, String, String) = LocalStorage::get(BELOW).ok()?;
    (of == document).then_some((after, words))
}

/// Keeps what is being typed below a step.
pub fn keep_below(document: &str, after: &str, words: &str) {
    if words.is_empty() {
        LocalStorage::delete(BELOW);
    } else {
        let _ = LocalStorage::set(BELOW, (document, after, words));
    }
}
