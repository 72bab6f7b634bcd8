//! `FORMAT.md` tells a stranger everything: every field and word, and an example that the checker accepts.

use super::{faults_by_schema, read, validator};
use procedures_schema::check::{Verdict, check};
use procedures_schema::format::{self, MOST_ANSWERS, MOST_CHARACTERS, MOST_IMAGES, MOST_STEPS, MOST_THINGS};
use procedures_schema::model::{Date, step_links};
use procedures_schema::units::Unit;
use putback_tests::repository;
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};

fn manual() -> String {
    std::fs::read_to_string(repository().join("procedures-schema/FORMAT.md")).expect("the manual")
}

/// The text under each heading of the third level.
fn sections(manual: &str) -> BTreeMap<&str, &str> {
    let parts = manual.split("\n### ").skip(1);
    parts
        .filter_map(|part| part.split_once('\n'))
        .map(|(heading, text)| (heading.trim(), text.split("\n## ").next().unwrap_or(text)))
        .collect()
}

/// What stands in the first column of the tables of a section.
fn first_column(section: &str) -> BTreeSet<&str> {
    let rows = section.lines().filter_map(|line| line.strip_prefix("| `"));
    rows.filter_map(|row| row.split_once('`')).map(|(first, _)| first).collect()
}

/// Every object and list of both kinds of file.
fn definitions() -> BTreeMap<String, Value> {
    let mut all = BTreeMap::new();
    for (root, schema) in [("Procedure", format::schema()), ("FoundOnJob", format::found_schema())] {
        let inside = schema["$defs"].as_object().expect("definitions").clone();
        all.extend(inside);
        all.insert(root.to_owned(), schema);
    }
    all
}

#[test]
fn every_object_is_told_with_every_field_and_no_other() {
    let manual = manual();
    let sections = sections(&manual);
    let mut n_objects = 0;
    for (name, definition) in &definitions() {
        let Some(properties) = definition["properties"].as_object() else { continue };
        let section = sections.get(name.as_str()).unwrap_or_else(|| panic!("no section \"### {name}\""));
        let fields: BTreeSet<&str> = properties.keys().map(String::as_str).collect();
        assert_eq!(first_column(section), fields, "{name}");
        let required: BTreeSet<&str> =
            definition["required"].as_array().into_iter().flatten().filter_map(Value::as_str).collect();
        let told: BTreeSet<&str> = section
            .lines()
            .filter(|line| line.contains("| **required** |"))
            .filter_map(|line| line.strip_prefix("| `")?.split_once('`'))
            .map(|(field, _)| field)
            .collect();
        assert_eq!(told, required, "{name}: what must be there");
        n_objects += 1;
    }
    assert!(n_objects > 30, "{n_objects} objects");
}

#[test]
fn every_word_of_every_list_is_told_and_no_other() {
    let manual = manual();
    let sections = sections(&manual);
    let mut n_lists = 0;
    for (name, definition) in &definitions() {
        let words: BTreeSet<&str> = definition["anyOf"]
            .as_array()
            .into_iter()
            .flatten()
            .filter_map(|choice| choice["const"].as_str())
            .collect();
        if words.is_empty() {
            continue;
        }
        let section = sections.get(name.as_str()).unwrap_or_else(|| panic!("no section \"### {name}\""));
        assert_eq!(first_column(section), words, "{name}");
        n_lists += 1;
    }
    assert!(n_lists > 20, "{n_lists} lists");
    let units: BTreeSet<&str> = Unit::ALL.iter().map(Unit::code).collect();
    assert_eq!(first_column(sections["Unit"]), units);
}

#[test]
fn the_limits_are_told_in_numbers() {
    let manual = manual();
    assert_eq!([MOST_STEPS, MOST_THINGS, MOST_IMAGES, MOST_CHARACTERS], [5_000, 2_000, 2_000, 20_000]);
    assert_eq!(MOST_ANSWERS, 5_000);
    assert!(manual.contains("of answers at most 5,000"));
    for told in ["50 MB", "5,000 steps", "2,000 things", "2,000 images", "20,000 characters", "127"] {
        assert!(manual.contains(told), "{told}");
    }
}

#[test]
fn the_example_of_answers_is_read_and_laid_out_as_it_stands() {
    let manual = manual();
    let section = manual.split("\n## Answers found on a job\n").nth(1).expect("the section");
    let text =
        section.split("```json\n").nth(1).and_then(|rest| rest.split("```").next()).expect("an example");
    let found = format::read_found(text.as_bytes()).expect("answers");
    assert_eq!(format::write_found(&found), text);
    let validator = jsonschema::draft202012::new(&format::found_schema()).expect("a schema");
    let value: Value = serde_json::from_str(text).expect("JSON");
    assert!(validator.is_valid(&value));
    let nameless = text.replace("\"procedure\": \"p\",", "");
    assert!(!validator.is_valid(&serde_json::from_str(&nameless).expect("JSON")));
}

#[test]
fn the_example_is_a_whole_job_that_the_checker_accepts() {
    let manual = manual();
    let section = manual.split("\n## A complete example\n").nth(1).expect("the section");
    let text =
        section.split("```json\n").nth(1).and_then(|rest| rest.split("```").next()).expect("an example");
    let procedure = read("the example", text);
    assert_eq!(format::write(&procedure), text, "it is laid out as files are");
    assert_eq!(faults_by_schema(&validator(), text), Vec::<String>::new());
    let report = check(&procedure, Date::parse("2026-11-25").expect("a date"));
    let titles: Vec<&str> = report.findings.iter().map(|finding| finding.title.as_str()).collect();
    assert_eq!(titles, Vec::<&str>::new());
    assert_eq!(report.verdict, Verdict::Accepted);
    // The example shows a link, and it points at a step.
    let links: Vec<&str> =
        procedure.steps.iter().flat_map(|step| step_links(&step.words)).map(|link| link.step).collect();
    assert!(links.iter().all(|id| procedure.position(&(*id).into()).is_some()) && !links.is_empty());
}

#[test]
fn every_small_example_of_the_manual_is_json() {
    let manual = manual();
    let mut n_examples = 0;
    for block in manual.split("```json\n").skip(1) {
        let text = block.split("```").next().expect("an end");
        serde_json::from_str::<Value>(text).unwrap_or_else(|error| panic!("{error}\n{text}"));
        n_examples += 1;
    }
    assert!(n_examples >= 10, "{n_examples}");
}
