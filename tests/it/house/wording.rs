//! Words that no file of the repository may hold: paths of one machine, addresses of package registries,
//! names of guides that are not part of the repository, and notes to oneself.

use super::judge;
use putback_tests::text_files;

const KNOWN: &[&str] = &[];

/// Files that a package manager writes; they name where packages come from.
const LOCK_FILES: &[&str] = &["Cargo.lock", "tests/browser/package-lock.json"];

/// Each word in two halves, so that this list does not offend against itself.
const FORBIDDEN: &[(&str, &str)] = &[
    ("/wo", "rk/"),
    ("/ro", "ot/"),
    ("/tm", "p/"),
    ("/ho", "me/"),
    ("../sha", "red"),
    ("semantics", ".md"),
    ("design", ".md"),
    ("registry", ".npmjs"),
    ("index.crates", ".io"),
    ("pypi", ".org"),
    ("trans", "cript"),
    ("FIX", "ME"),
    ("TO", "DO:"),
    ("XX", "X:"),
    ("lorem ", "ipsum"),
];

#[test]
fn no_file_holds_a_forbidden_word() {
    let mut offences = Vec::new();
    for file in text_files("").unwrap() {
        if LOCK_FILES.contains(&file.path.as_str()) {
            continue;
        }
        for (line, word) in forbidden_words(&file.text) {
            offences.push((file.path.clone(), format!("line {line}: \"{word}\"")));
        }
    }
    judge("forbidden words", &offences, KNOWN);
}

#[test]
fn the_lock_of_the_browser_tests_names_no_registry() {
    let path = putback_tests::repository().join("tests/browser/package-lock.json");
    let text = std::fs::read_to_string(path).unwrap();
    assert!(text.contains("\"integrity\""), "the lock pins no package by its content");
    assert!(!text.contains("\"resolved\""), "install with the .npmrc of that folder");
}

fn forbidden_words(text: &str) -> Vec<(usize, String)> {
    let words: Vec<String> = FORBIDDEN.iter().map(|(first, second)| format!("{first}{second}")).collect();
    let mut found = Vec::new();
    for (index, line) in text.lines().enumerate() {
        found
            .extend(words.iter().filter(|word| line.contains(word.as_str())).map(|w| (index + 1, w.clone())));
    }
    found
}

#[test]
fn a_forbidden_word_is_found_in_its_line() {
    let text = format!("fine\nsee {}{}x", "/tm", "p/");
    assert_eq!(forbidden_words(&text).first().map(|(line, _)| *line), Some(2));
}
