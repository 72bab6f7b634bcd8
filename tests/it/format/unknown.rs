//! Fields that this version does not know stay where they were, in every object, through files, edits and undo.
//!
//! Random extra fields are put at the end of random objects of the samples, from a fixed seed.

use super::samples::good;
use super::{faults_by_schema, read, validator};
use crate::laws::Dice;
use procedures_schema::edit::{Edit, Scope, Session, apply};
use procedures_schema::format;
use procedures_schema::model::{ApplianceMap, Id, Procedure, Step};
use serde_json::{Map, Value, json};
use std::sync::Arc;

/// Numbers whose digits a floating-point figure would change.
const NUMBERS: &[&str] =
    &["1.0", "0.10", "1e+5", "-0", "123456789012345678901234567890", "1e-400", "-9223372036854775809", "7"];

fn cases() -> usize {
    std::env::var("PUTBACK_CASES").ok().and_then(|text| text.parse().ok()).unwrap_or(300)
}

fn random_value(dice: &mut Dice, depth: usize) -> Value {
    match dice.roll(if depth < 3 { 7 } else { 5 }) {
        0 => Value::Null,
        1 => Value::Bool(dice.roll(2) == 0),
        2 => serde_json::from_str(NUMBERS[dice.roll(NUMBERS.len())]).expect("a number"),
        3 => json!("ü \"\\\n\u{1}\u{2028}🔧"),
        4 => json!(["a", "b"]),
        5 => Value::Array((0..dice.roll(3)).map(|_| random_value(dice, depth + 1)).collect()),
        _ => Value::Object(
            (0..dice.roll(3)).map(|i| (format!("k{i}"), random_value(dice, depth + 1))).collect(),
        ),
    }
}

/// Puts extra fields at the end of objects; `one_in` 1 takes every object.
fn extend(dice: &mut Dice, one_in: usize, value: &mut Value) -> usize {
    match value {
        Value::Array(list) => list.iter_mut().map(|item| extend(dice, one_in, item)).sum(),
        Value::Object(fields) => {
            let inside: usize = fields.values_mut().map(|item| extend(dice, one_in, item)).sum();
            if dice.roll(one_in) > 0 {
                return inside;
            }
            for i in 0..=dice.roll(2) {
                fields.insert(format!("new {i}"), random_value(dice, 0));
            }
            inside + 1
        }
        _ => 0,
    }
}

/// The samples with extra fields, as what a file says and as the document read from it.
fn extended(n: usize, one_in: usize) -> impl Iterator<Item = (Value, Procedure)> {
    let good: Vec<Value> = good().iter().map(|f| serde_json::from_str(&f.text).expect("JSON")).collect();
    let mut dice = Dice(0x9E37_79B9_7F4A_7C15);
    (0..n).map(move |i| {
        let mut value = good[i % good.len()].clone();
        while extend(&mut dice, one_in, &mut value) == 0 {}
        let procedure = read("extended", &value.to_string());
        (value, procedure)
    })
}

/// Compares also the order of keys and the digits of numbers.
fn assert_says(procedure: &Procedure, value: &Value, what: &str) {
    let written: Value = serde_json::from_str(&format::write(procedure)).expect("JSON");
    assert_eq!(written.to_string(), value.to_string(), "{what}");
}

#[test]
fn a_field_more_in_every_object_comes_back_where_it_was() {
    let n_samples = good().len();
    let validator = validator();
    for (value, procedure) in extended(n_samples, 1) {
        assert_says(&procedure, &value, "all objects");
        assert_eq!(faults_by_schema(&validator, &value.to_string()), Vec::<String>::new());
    }
    for (value, procedure) in extended(cases(), 4) {
        assert_says(&procedure, &value, "some objects");
    }
}

fn list<'a>(value: &'a mut Value, name: &str) -> &'a mut Vec<Value> {
    value[name].as_array_mut().expect("a list")
}

/// An edit of each kind, and what it makes of the file.
fn each_edit(dice: &mut Dice, value: &Value, procedure: &Procedure) -> Vec<(Edit, Value)> {
    let at = dice.roll(procedure.steps.len());
    let to = dice.roll(procedure.steps.len());
    let id: Id = procedure.steps[at].id.clone();
    let after = |change: &dyn Fn(&mut Value)| {
        let mut value = value.clone();
        change(&mut value);
        value
    };
    let mut added: Step = (*procedure.steps[at]).clone();
    added.id = "added".into();
    let mut changed: Step = (*procedure.steps[at]).clone();
    "Other words.".clone_into(&mut changed.words);
    let mut map: ApplianceMap = (*procedure.map).clone();
    map.components.reverse();
    let mut scope = Scope::of(procedure);
    scope.census.reverse();
    let mut other = procedure.clone();
    other.steps.reverse();
    vec![
        (Edit::SetTitle("New".to_owned()), after(&|v| v["title"] = json!("New"))),
        (
            Edit::InsertStep { at: to, step: Arc::new(added) },
            after(&|v| {
                let mut step = v["steps"][at].clone();
                step["id"] = json!("added");
                list(v, "steps").insert(to, step);
            }),
        ),
        (Edit::RemoveStep { step: id.clone() }, after(&|v| drop(list(v, "steps").remove(at)))),
        (
            Edit::MoveStep { step: id, to },
            after(&|v| {
                let step = list(v, "steps").remove(at);
                list(v, "steps").insert(to, step);
            }),
        ),
        (
            Edit::SetStep { step: Arc::new(changed) },
            after(&|v| v["steps"][at]["words"] = json!("Other words.")),
        ),
        (
            Edit::SetScope(Box::new(scope)),
            after(&|v| {
                if let Some(census) = v.get_mut("census").and_then(Value::as_array_mut) {
                    census.reverse();
                }
            }),
        ),
        (
            Edit::SetMap(Arc::new(map)),
            after(&|v| {
                if let Some(components) = v["map"].get_mut("components").and_then(Value::as_array_mut) {
                    components.reverse();
                }
            }),
        ),
        (
            Edit::Rename {
                thing: procedure.map.circuits[0].id.clone(),
                name: "New".to_owned(),
                in_words: false,
            },
            after(&|v| v["map"]["circuits"][0]["name"] = json!("New")),
        ),
        (Edit::Replace(Arc::new(other)), after(&|v| list(v, "steps").reverse())),
    ]
}

/// A kind of edit without a case in [`each_edit`], or in the test of things made one or two, does not compile
/// here.
fn kind(edit: &Edit) -> usize {
    match edit {
        Edit::SetTitle(_) => 0,
        Edit::InsertStep { .. } => 1,
        Edit::RemoveStep { .. } => 2,
        Edit::MoveStep { .. } => 3,
        Edit::SetStep { .. } => 4,
        Edit::SetScope(_) => 5,
        Edit::SetMap(_) => 6,
        Edit::Rename { .. } => 7,
        Edit::Replace(_) => 8,
        Edit::Merge { .. } => 9,
        Edit::Split { .. } => 10,
    }
}

#[test]
fn edits_and_undo_keep_what_they_do_not_name() {
    let mut dice = Dice(0x2545_F491_4F6C_DD1D);
    for (value, procedure) in extended(cases(), 3).filter(|(_, procedure)| !procedure.steps.is_empty()) {
        let document = Arc::new(procedure);
        let edits = each_edit(&mut dice, &value, &document);
        assert_eq!(edits.iter().map(|(edit, _)| kind(edit)).collect::<Vec<_>>(), [0, 1, 2, 3, 4, 5, 6, 7, 8]);
        for (edit, expected) in edits {
            let applied = apply(&document, &edit).expect("it applies");
            assert_says(&applied.document, &expected, &format!("{edit:?}"));
            let mut session = Session::new(document.clone());
            session.edit(&[edit], "edit", None, 0).expect("it applies");
            assert!(session.undo().is_some());
            assert_says(session.document(), &value, "undone");
            assert!(session.redo().is_some());
            assert_says(session.document(), &expected, "done again");
        }
    }
}

#[test]
fn things_made_one_or_two_keep_what_they_do_not_name() {
    let seal = |id: &str, rest: &str| {
        format!(r#"{{"id": "{id}", "name": "{id}", "policy": "always renew", {rest}}}"#)
    };
    let (one, other) = (seal("one", r#""a": 1.50"#), seal("other", r#""a": 1.50, "b": {"c": 1e+5}"#));
    let step = |id: &str| {
        let action = r#"{"do": "inspect", "on": ["other"]}"#;
        format!(r#"{{"id": "{id}", "stage": "strip", "words": "", "actions": [{action}], "d": 0.10}}"#)
    };
    let (first, second) = (step("first"), step("second"));
    let text = format!(
        r#"{{"putback": 1, "id": "p", "title": "", "map": {{"seals": [{one}, {other}]}}, "steps": [{first}, {second}]}}"#
    );
    let value: Value = serde_json::from_str(&text).expect("JSON");
    let document = Arc::new(read("seals", &text));
    let written = |edit: &Edit| -> Value {
        let mut session = Session::new(document.clone());
        session.edit(std::slice::from_ref(edit), "edit", None, 0).expect("it applies");
        let after = serde_json::from_str(&format::write(session.document())).expect("JSON");
        assert!(session.undo().is_some());
        let undone: Value = serde_json::from_str(&format::write(session.document())).expect("JSON");
        assert_eq!(undone["map"], value["map"]);
        after
    };
    let merged = written(&Edit::Merge { keep: "one".into(), gone: "other".into(), choices: Vec::new() });
    assert_eq!(merged["map"]["seals"][0]["b"].to_string(), r#"{"c":1e+5}"#);
    assert_eq!(merged["steps"][1]["d"].to_string(), "0.10");
    let split = written(&Edit::Split {
        thing: "other".into(),
        new: "new".into(),
        name: "new".to_owned(),
        steps: vec!["second".into()],
        in_words: false,
    });
    assert_eq!(split["map"]["seals"][2]["b"].to_string(), r#"{"c":1e+5}"#);
    assert_eq!(split["steps"][1]["d"].to_string(), "0.10");
}

#[test]
fn numbers_of_unknown_fields_keep_their_digits() {
    for number in NUMBERS {
        let text = format!("{{\"putback\": 1, \"id\": \"p\", \"title\": \"\", \"x\": {number}}}");
        assert!(format::write(&read(number, &text)).contains(&format!("\"x\": {number}\n")), "{number}");
    }
    // The exponent alone gets one spelling; the value is the same.
    let capital = "{\"putback\": 1, \"id\": \"p\", \"title\": \"\", \"x\": 1E5}";
    assert!(format::write(&read("1E5", capital)).contains("\"x\": 1e+5\n"));
}

#[test]
fn the_key_that_the_reader_itself_uses_for_numbers_is_refused() {
    for key in ["$serde_json::private::Number", "\\u0024serde_json::private::Number"] {
        for value in ["\"5\"", "5", "5.5", "null", "true", "[]", "{}"] {
            let text =
                format!("{{\"putback\": 1, \"id\": \"p\", \"title\": \"\", \"x\": {{\"{key}\": {value}}}}}");
            let error = format::read(text.as_bytes()).expect_err(value);
            assert!(error.to_string().contains("cannot be kept"), "{error}");
        }
    }
}

#[test]
fn an_object_without_room_for_more_would_be_seen_here() {
    // The schema says which objects there are; each lets in more fields.
    let schema = format::schema();
    let closed: Vec<&String> = schema["$defs"]
        .as_object()
        .expect("definitions")
        .iter()
        .filter(|(_, definition)| {
            definition["type"] == "object" && definition["additionalProperties"] != true
        })
        .map(|(name, _)| name)
        .collect();
    assert_eq!(closed, Vec::<&String>::new());
    assert_eq!(schema["additionalProperties"], true);
    let empty: Map<String, Value> = Map::new();
    assert!(!validator().is_valid(&Value::Object(empty)), "and asks for those that must be there");
}
