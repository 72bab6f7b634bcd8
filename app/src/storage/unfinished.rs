//! The line that somebody was typing when the page went, of the procedure that was typed in last.

use gloo_storage::{LocalStorage, Storage};

const LINE: &str = "putback.line";

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
