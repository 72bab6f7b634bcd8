//! Good files are read, are laid out already, and fit the schema; bad ones are refused by whom their name says.

use super::{faults_by_schema, read, validator};
use procedures_schema::format::{self, Category};
use procedures_schema::model::{Country, FORMAT_VERSION};
use putback_tests::{TextFile, repository, suite, text_files};
use serde_json::Value;
use std::collections::BTreeMap;

/// Every procedure of the repository in the present version.
pub(super) fn good() -> Vec<TextFile> {
    let mut files = suite("format/valid", ".putback.json").expect("valid samples");
    for folder in ["public/demo", "tests/suite/accepted", "tests/suite/maps"] {
        let more = text_files(folder).expect(folder);
        files.extend(more.into_iter().filter(|file| file.is(".putback.json")));
    }
    files
}

#[test]
fn good_files_fit_the_schema_and_opening_and_saving_changes_no_byte() {
    let validator = validator();
    for file in good() {
        assert_eq!(faults_by_schema(&validator, &file.text), Vec::<String>::new(), "{}", file.path);
        assert_eq!(format::write(&read(&file.path, &file.text)), file.text, "{}", file.path);
    }
}

/// Where each bad sample is at fault: what sort of fault, line, column.
const FAULTS: &[(&str, Category, usize, usize)] = &[
    ("both-count-is-a-fraction", Category::Content, 55, 22),
    ("both-count-is-negative", Category::Content, 55, 21),
    ("both-count-is-too-large", Category::Content, 55, 29),
    ("both-day-in-another-order", Category::Content, 8, 25),
    ("both-figure-is-a-number", Category::Content, 23, 26),
    ("both-figure-with-a-comma", Category::Content, 23, 28),
    ("both-figure-with-an-exponent", Category::Content, 23, 28),
    ("both-kit-is-a-list", Category::Content, 47, 9),
    ("both-later-is-a-number", Category::Content, 42, 30),
    ("both-list-instead-of-object", Category::Content, 1, 1),
    ("both-newer-version", Category::Newer, 0, 0),
    ("both-no-mark", Category::Content, 62, 1),
    ("both-no-title", Category::Content, 62, 1),
    ("both-only-one-side", Category::Content, 34, 29),
    ("both-size-is-a-number", Category::Content, 42, 17),
    ("both-span-of-one", Category::Content, 57, 22),
    ("both-span-of-three", Category::Content, 57, 27),
    ("both-step-is-null", Category::Content, 53, 8),
    ("both-step-without-id", Category::Content, 59, 5),
    ("both-text-too-long", Category::Limit, 51, 20_021),
    ("both-unattended-is-a-word", Category::Content, 56, 29),
    ("both-value-without-unit", Category::Content, 24, 13),
    ("both-version-is-a-text", Category::Content, 2, 16),
    ("both-words-are-a-number", Category::Content, 51, 16),
    ("reader-bad-utf8", Category::Text, 4, 16),
    ("reader-byte-order-mark", Category::Text, 1, 1),
    ("reader-comma-too-many", Category::Syntax, 56, 30),
    ("reader-comment", Category::Syntax, 47, 3),
    ("reader-cut-short", Category::Syntax, 43, 8),
    ("reader-day-that-does-not-exist", Category::Content, 8, 26),
    ("reader-later-is-a-list", Category::Content, 54, 7),
    ("reader-line-break-in-a-text", Category::Syntax, 52, 1),
    ("reader-lone-surrogate", Category::Syntax, 51, 27),
    ("reader-nested-too-deep", Category::Limit, 62, 156),
    ("reader-not-a-number", Category::Syntax, 62, 33),
    ("reader-number-with-leading-zero", Category::Syntax, 62, 34),
    ("reader-same-key-twice", Category::Content, 52, 13),
    ("reader-same-key-twice-by-escape", Category::Content, 52, 18),
    ("reader-same-key-twice-in-unknown", Category::Content, 62, 46),
    ("reader-same-mark-twice", Category::Content, 3, 11),
    ("reader-text-after-the-end", Category::Syntax, 64, 1),
];

/// Every bad sample as bytes: some are no text.
fn bad() -> BTreeMap<String, Vec<u8>> {
    let folder = repository().join("tests/suite/format/invalid");
    let mut files = BTreeMap::new();
    for entry in std::fs::read_dir(folder).expect("bad samples") {
        let entry = entry.expect("an entry");
        let name = entry.file_name().to_string_lossy().replace(".putback.json", "");
        files.insert(name, std::fs::read(entry.path()).expect("readable bytes"));
    }
    files
}

#[test]
fn bad_files_are_refused_at_their_line_and_column_by_whom_their_name_says() {
    let validator = validator();
    let bad = bad();
    assert_eq!(bad.keys().collect::<Vec<_>>(), FAULTS.iter().map(|(name, ..)| name).collect::<Vec<_>>());
    for (name, category, line, column) in FAULTS {
        let bytes = &bad[*name];
        let error = format::read(bytes).expect_err(name);
        assert_eq!((error.category(), error.line(), error.column()), (*category, *line, *column), "{error}");
        assert!(error.to_string().ends_with(". Nothing was changed."), "{error}");
        let by_schema = match serde_json::from_slice::<Value>(bytes) {
            Ok(value) => !validator.is_valid(&value),
            // A schema judges JSON and nothing else.
            Err(_) => false,
        };
        assert_eq!(by_schema, name.starts_with("both-"), "{name} by the schema");
    }
}

fn old(name: &str) -> TextFile {
    let files = suite("format/old-versions", ".putback.json").expect("old samples");
    files.into_iter().find(|file| file.path.ends_with(&format!("/{name}.putback.json"))).expect(name)
}

#[test]
fn a_file_of_version_0_becomes_one_of_the_present_version_and_loses_nothing() {
    let old = old("0-circulation-pump");
    let procedure = read(&old.path, &old.text);
    assert_eq!(procedure.putback, FORMAT_VERSION);
    assert_eq!(procedure.country, Some(Country::UnitedKingdom));
    let written = format::write(&procedure);
    assert_eq!(written, old.text.replacen("\"putback\": 0", "\"putback\": 1", 1));
    assert_eq!(faults_by_schema(&validator(), &written), Vec::<String>::new());
}

#[test]
fn the_free_country_of_version_0_becomes_a_word_of_the_list() {
    let text = old("0-free-country").text;
    let free = |typed: &str| {
        let text = text.replacen("\"uk\"", typed, 1);
        read(typed, &text).country.map(|country| country.word().to_owned())
    };
    for (typed, word) in [
        ("\"uk\"", Some("GB")),
        ("\" de \"", Some("DE")),
        ("\"Other\"", Some("other")),
        ("\"\"", None),
        ("\"Atlantis\"", Some("Atlantis")),
    ] {
        assert_eq!(free(typed).as_deref(), word, "{typed}");
    }
}

#[test]
fn the_samples_show_every_field_of_the_schema() {
    let schema = format::schema();
    let mut seen = String::new();
    for file in suite("format/valid", ".putback.json").expect("valid samples") {
        seen.push_str(&file.text);
    }
    let definitions = schema["$defs"].as_object().expect("definitions").values().chain([&schema]);
    let keys = definitions
        .filter_map(|definition| definition["properties"].as_object())
        .flat_map(|keys| keys.keys());
    let missing: Vec<&String> = keys.filter(|key| !seen.contains(&format!("\"{key}\":"))).collect();
    assert_eq!(missing, Vec::<&String>::new());
}
