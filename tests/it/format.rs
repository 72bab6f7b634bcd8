//! The file format as strangers meet it: samples, the printed schema, the manual, what is kept, what is refused.
//!
//! The schema is judged by a library that is not ours; the manual's example is taken out of the manual.

mod manual;
mod samples;
mod sizes;
mod unknown;

use procedures_schema::format;
use procedures_schema::model::Procedure;
use serde_json::Value;

fn read(name: &str, text: &str) -> Procedure {
    format::read(text.as_bytes()).unwrap_or_else(|error| panic!("{name}: {error}"))
}

/// What the printed schema has against a text; empty if nothing.
fn faults_by_schema(validator: &jsonschema::Validator, text: &str) -> Vec<String> {
    let value: Value = serde_json::from_str(text).expect("JSON");
    validator.iter_errors(&value).map(|fault| format!("{}: {fault}", fault.instance_path())).collect()
}

fn validator() -> jsonschema::Validator {
    jsonschema::draft202012::new(&format::schema()).expect("a schema")
}

#[test]
fn the_printed_schema_is_a_schema_of_2020_12() {
    let schema = format::schema();
    assert_eq!(schema["$schema"], "https://json-schema.org/draft/2020-12/schema");
    jsonschema::draft202012::meta::validate(&schema).expect("it fits the schema of schemas");
}

#[test]
fn one_identity_for_two_is_refused_with_both_places() {
    let path = putback_tests::repository().join("public/demo/circulation-pump.putback.json");
    let sound: Value = serde_json::from_str(&std::fs::read_to_string(path).expect("a demo")).expect("JSON");
    for (pointer, list, places) in [
        ("/steps", "steps", ["steps[5].id", "steps[4].id"]),
        ("/map/connections", "map.connections", ["map.connections[5].id", "map.connections[4].id"]),
    ] {
        let mut document = sound.clone();
        let all = document.pointer_mut(pointer).and_then(Value::as_array_mut).expect(list);
        all[5]["id"] = all[4]["id"].clone();
        let error = format::read(document.to_string().as_bytes()).expect_err(list).to_string();
        assert!(places.iter().all(|place| error.contains(place)), "{error}");
    }
}
