//! What is read, refused and written.

use super::{Category, MOST_STEPS, read, write};
use crate::model::{Procedure, Stage, Step};
use std::sync::Arc;

const SMALL: &str = r#"{
  "putback": 1,
  "id": "p",
  "title": "Renew the pump",
  "language": "en",
  "census": [],
  "map": {
    "components": [
      {
        "id": "pump",
        "name": "pump",
        "behind": ["cover", "grille"],
        "colour": { "of": ["red", 1, null] }
      }
    ],
    "shelf": "B"
  },
  "steps": [
    {
      "id": "s1",
      "stage": "make safe",
      "words": "Switch off.",
      "actions": [
        {
          "do": "hover over",
          "on": ["pump"],
          "says": [[0, 6], [7, 10]],
          "height": 3
        }
      ]
    }
  ],
  "approved": false
}
"#;

fn canonical(text: &str) -> String {
    write(&read(text.as_bytes()).expect("readable"))
}

#[test]
fn reading_and_writing_a_canonical_file_changes_nothing() {
    let once = canonical(SMALL);
    assert_eq!(canonical(&once), once);
    // Only the one object that we would lay out on several lines differs from the hand-written text.
    assert!(once.contains("\"behind\": [\"cover\", \"grille\"]"));
    assert!(once.contains("\"says\": [[0, 6], [7, 10]]"));
}

#[test]
fn unknown_fields_and_words_are_kept_in_every_object() {
    let once = canonical(SMALL);
    for kept in
        ["\"colour\"", "\"shelf\": \"B\"", "\"do\": \"hover over\"", "\"height\": 3", "\"approved\": false"]
    {
        assert!(once.contains(kept), "{kept}\n{once}");
    }
}

#[test]
fn faults_are_refused_with_their_place() {
    for (text, category, line, path) in [
        ("{", Category::Syntax, 1, ""),
        ("[]", Category::Content, 1, ""),
        ("{\"title\": \"x\"}", Category::Content, 1, ""),
        (&SMALL.replace("\"s1\",", "\"s1\""), Category::Syntax, 21, "steps[0]"),
        (&SMALL.replace("\"Switch off.\"", "7"), Category::Content, 22, "steps[0].words"),
        (&SMALL.replace("\"shelf\": \"B\"", "\"shelf\": 1, \"shelf\": 2"), Category::Content, 16, "map"),
        (&SMALL.replace("\"title\":", "\"id\": \"q\", \"title\":"), Category::Content, 4, "id"),
        (&SMALL.replace("\"putback\": 1", "\"putback\": 7"), Category::Newer, 0, ""),
        (&format!("{SMALL}x"), Category::Syntax, 35, ""),
        (&format!("\u{feff}{SMALL}"), Category::Text, 1, ""),
        (&"[".repeat(200), Category::Limit, 1, "[0]"),
        (&SMALL.replace("null", &"[".repeat(200)), Category::Limit, 13, "map.components[0]"),
    ] {
        let error = read(text.as_bytes()).expect_err(text);
        assert_eq!(error.category(), category, "{error}");
        assert_eq!(error.line(), line, "{error}");
        assert!(error.path().starts_with(path) || path.starts_with(error.path()), "{error}");
        assert!(error.to_string().ends_with("Nothing was changed."), "{error}");
    }
}

#[test]
fn bytes_that_are_no_text_are_refused_with_their_place() {
    let mut bytes = SMALL.as_bytes().to_vec();
    let at = SMALL.find("Renew").expect("there");
    if let Some(byte) = bytes.get_mut(at) {
        *byte = 0xFF;
    }
    let error = read(&bytes).expect_err("no text");
    assert_eq!((error.category(), error.line(), error.column()), (Category::Text, 4, 13));
}

#[test]
fn too_many_steps_are_refused_in_numbers() {
    let mut procedure: Procedure = read(SMALL.as_bytes()).expect("readable");
    let step = Step { words: "Wait.".to_owned(), stage: Stage::Strip, ..(*procedure.steps[0]).clone() };
    procedure.steps = std::iter::repeat_n(Arc::new(step), MOST_STEPS + 1).collect();
    let error = read(write(&procedure).as_bytes()).expect_err("too many");
    assert_eq!(error.to_string(), "This file has 5,001 steps; 5,000 can be opened. Nothing was changed.");
}
