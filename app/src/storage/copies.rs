//! Steps that were copied last in any tab, for browsers whose clipboard keeps their words and not what they are.

use gloo_storage::{LocalStorage, Storage};

const COPIED: &str = "putback.copied";

/// Keeps copied steps by their words; without a place for them another tab pastes the words alone.
pub fn keep(words: &str, steps: &str) {
    // What was copied before must not stand for the same words.
    LocalStorage::delete(COPIED);
    let _ = LocalStorage::set(COPIED, (words, steps));
}

/// The steps that were copied last, if these are their words.
pub fn of_words(words: &str) -> Option<String> {
    let (known, steps): (String, String) = LocalStorage::get(COPIED).ok()?;
    // Clipboards write the ends of lines in their own way.
    known.lines().eq(words.lines()).then_some(steps)
}
