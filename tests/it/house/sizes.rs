//! Files and functions stay small enough to be read at once.

use super::judge;
use super::source::{Source, all_sources, functions};

/// Files over their limit.
const KNOWN_FILES: &[&str] = &[];
/// Functions over the limit, as `path function`.
const KNOWN_FUNCTIONS: &[&str] = &[];

const MOST_LINES_OF_A_MODULE: usize = 500;
const MOST_LINES_OF_A_RULE: usize = 250;
const MOST_LINES_OF_A_COMPONENT: usize = 250;
const MOST_LINES_OF_A_FUNCTION: usize = 70;
const MOST_LINES_OF_THE_MAP: usize = 400;

/// What marks a component.
const COMPONENT: &str = "#[component]";

#[test]
fn files_stay_small() {
    let mut offences = Vec::new();
    for source in all_sources() {
        let (n_lines, most) = lines_and_limit(&source);
        if n_lines > most {
            offences.push((source.path, format!("{n_lines} lines, at most {most}")));
        }
    }
    judge("file size", &offences, KNOWN_FILES);
}

#[test]
fn functions_stay_small() {
    let mut offences = Vec::new();
    for source in all_sources() {
        for (name, n_lines) in functions(&source) {
            if n_lines > MOST_LINES_OF_A_FUNCTION {
                let place = format!("{} {name}", source.path);
                offences.push((place, format!("{n_lines} lines, at most {MOST_LINES_OF_A_FUNCTION}")));
            }
        }
    }
    judge("function size", &offences, KNOWN_FUNCTIONS);
}

#[test]
fn the_map_for_developers_stays_short() {
    let path = putback_tests::repository().join("DEVELOPERS.md");
    let n_lines = std::fs::read_to_string(&path).map_or(0, |text| text.lines().count());
    assert!(n_lines > 0, "DEVELOPERS.md is missing or empty");
    assert!(n_lines <= MOST_LINES_OF_THE_MAP, "DEVELOPERS.md has {n_lines} lines");
}

/// A rule is measured without its fixtures; everything else as it is.
fn lines_and_limit(source: &Source) -> (usize, usize) {
    let n_lines = source.text.lines().count();
    if source.path.starts_with("procedures-schema/src/check/rules/") {
        (n_lines - source.n_test_lines, MOST_LINES_OF_A_RULE)
    } else if source.path.starts_with("app/") && source.text.contains(COMPONENT) {
        (n_lines - source.n_test_lines, MOST_LINES_OF_A_COMPONENT)
    } else {
        (n_lines, MOST_LINES_OF_A_MODULE)
    }
}
