//! One rule, one file: the rule, its documentation beside it, and its entry in the catalogue.

use super::judge;
use procedures_schema::check::catalogue;
use putback_tests::text_files;
use std::collections::BTreeMap;

const KNOWN: &[&str] = &[];
const FOLDER: &str = "procedures-schema/src/check/rules";

/// What the documentation of a rule answers, in this order.
const HEADINGS: &[&str] = &["What it finds", "Why it matters", "Fires", "Does not fire", "Source"];

#[test]
fn every_rule_is_one_file_with_documentation_and_in_the_catalogue() {
    let files: BTreeMap<String, String> =
        text_files(FOLDER).unwrap().into_iter().map(|file| (file.path, file.text)).collect();
    let mut codes = Vec::new();
    let mut offences = Vec::new();
    for path in files.keys() {
        let Some(code) = code_of(path) else { continue };
        let page = format!("{}.md", path.trim_end_matches(".rs"));
        match files.get(&page) {
            None => offences.push((path.clone(), format!("has no documentation {page}"))),
            Some(text) => {
                offences.extend(lacks(text).map(|heading| (page.clone(), format!("lacks \"{heading}\""))));
                if !catalogue().iter().any(|rule| rule.code == code && rule.documentation.text == text) {
                    offences.push((path.clone(), format!("{code} is not in the catalogue with this page")));
                }
            }
        }
        codes.push(code);
    }
    assert!(!codes.is_empty(), "no rules in {FOLDER}");
    for rule in catalogue().iter().filter(|rule| !codes.iter().any(|code| code == rule.code)) {
        offences.push((rule.code.to_owned(), "has no file of its name".to_owned()));
    }
    judge("one rule, one file", &offences, KNOWN);
}

#[test]
fn the_map_for_developers_names_every_rule() {
    let path = putback_tests::repository().join("DEVELOPERS.md");
    let map = std::fs::read_to_string(path).unwrap();
    let rows: BTreeMap<&str, Vec<&str>> = map
        .split("## The rules\n")
        .nth(1)
        .unwrap_or_default()
        .lines()
        .skip_while(|line| !line.starts_with("|---"))
        .skip(1)
        .map_while(|line| line.strip_prefix("| ")?.strip_suffix(" |")?.split_once(" | "))
        .map(|(family, rules)| (family, rules.split(", ").collect()))
        .collect();
    let named: usize = rows.values().map(Vec::len).sum();
    let missing: Vec<&str> = catalogue()
        .iter()
        .filter(|rule| {
            let (family, name) = rule.code.split_once('/').unwrap_or_default();
            !rows.get(family).is_some_and(|rules| rules.contains(&name))
        })
        .map(|rule| rule.code)
        .collect();
    assert!(missing.is_empty(), "DEVELOPERS.md does not name {missing:?}");
    assert_eq!(named, catalogue().len(), "DEVELOPERS.md names rules that are not there");
}

#[test]
fn no_two_rules_share_a_code() {
    let mut codes: Vec<&str> = catalogue().iter().map(|rule| rule.code).collect();
    codes.sort_unstable();
    assert!(codes.windows(2).all(|pair| pair.first() != pair.last()), "{codes:?}");
}

/// `…/rules/gas/still_fed.rs` holds `gas/still-fed`; other files hold no rule.
fn code_of(path: &str) -> Option<String> {
    let (family, file) = path.strip_prefix(FOLDER)?.strip_prefix('/')?.split_once('/')?;
    let name = file.strip_suffix(".rs").filter(|name| *name != "mod")?;
    Some(format!("{family}/{name}").replace('_', "-"))
}

/// The headings that a page lacks or has in the wrong order.
fn lacks(page: &str) -> impl Iterator<Item = &'static str> {
    let mut headings = page
        .lines()
        .filter(|line| line.starts_with('#'))
        .map(|line| line.trim_matches(['#', ' ']).to_owned());
    HEADINGS.iter().copied().filter(move |wanted| !headings.any(|heading| heading == *wanted))
}

#[test]
fn codes_follow_from_the_place_of_the_file() {
    let at = |rest: &str| code_of(&format!("{FOLDER}/{rest}"));
    assert_eq!(at("gas/still_fed.rs").as_deref(), Some("gas/still-fed"));
    assert_eq!(at("gas/mod.rs"), None);
    assert_eq!(at("gas/still_fed.md"), None);
    assert_eq!(at("mod.rs"), None);
}

#[test]
fn a_page_answers_all_five_questions() {
    let page = "# t\n## What it finds\n## Why it matters\n## Fires\n## Does not fire\n## Source\n";
    assert_eq!(lacks(page).count(), 0);
    assert_eq!(lacks(&page.replace("## Fires\n", "")).next(), Some("Fires"));
}
