//! Every module says on its first line what it is for.

use super::judge;
use super::source::all_sources;

const KNOWN: &[&str] = &[];

#[test]
fn every_module_opens_with_what_it_is_for() {
    let offences: Vec<(String, String)> = all_sources()
        .into_iter()
        .filter(|source| !has_header(&source.text))
        .map(|source| (source.path, "does not open with `//!` and a sentence".to_owned()))
        .collect();
    judge("module headers", &offences, KNOWN);
}

/// A header of at least two words; a bare `//!` says nothing.
fn has_header(text: &str) -> bool {
    let first = text.lines().next().unwrap_or_default();
    first.strip_prefix("//!").is_some_and(|words| words.split_whitespace().count() >= 2)
}

#[test]
fn a_bare_mark_is_no_header() {
    assert!(has_header("//! Steps of a job.\nuse x;"));
    assert!(!has_header("//!\n"));
    assert!(!has_header("use x;\n//! Steps of a job."));
}
