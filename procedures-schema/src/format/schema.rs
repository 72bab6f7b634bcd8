//! The JSON Schema (2020-12) of the format, generated from the types of the model.
//!
//! A schema says what shape a file has. What it cannot say stands in `FORMAT.md` and is found by the reader
//! (equal keys, the size of the whole) or by the checker (ids that name nothing, spans beyond the words).

use super::limits::{MOST_ANSWERS, MOST_CHARACTERS, MOST_IMAGES, MOST_STEPS};
use crate::model::{FORMAT_VERSION, FOUND_VERSION, FoundOnJob, Procedure};
use schemars::Schema;
use schemars::generate::SchemaSettings;
use schemars::transform::transform_subschemas;
use serde_json::{Value, json};

/// The schema as a value; printed, it is the file.
pub fn schema() -> Value {
    let title = format!("Putback procedure, format version {FORMAT_VERSION}");
    of::<Procedure>(
        &title,
        [
            ("/properties/putback", json!({ "const": FORMAT_VERSION })),
            ("/properties/steps", json!({ "maxItems": MOST_STEPS })),
            ("/properties/images", json!({ "maxItems": MOST_IMAGES })),
        ],
    )
}

/// The schema of a file of answers found on a job.
pub fn found_schema() -> Value {
    let title = format!("Putback answers found on a job, format version {FOUND_VERSION}");
    of::<FoundOnJob>(
        &title,
        [
            ("/properties/putback_found", json!({ "const": FOUND_VERSION })),
            ("/properties/answers", json!({ "maxItems": MOST_ANSWERS })),
        ],
    )
}

/// The schema of a type, with limits at some of its places.
fn of<T: schemars::JsonSchema>(
    title: &str,
    limits: impl IntoIterator<Item = (&'static str, Value)>,
) -> Value {
    let mut generated = SchemaSettings::draft2020_12().into_generator().into_root_schema_for::<T>();
    set_limits(&mut generated);
    let mut schema = json!({ "$schema": SchemaSettings::draft2020_12().meta_schema, "title": title });
    if let (Some(schema), Value::Object(generated)) = (schema.as_object_mut(), generated.to_value()) {
        schema.extend(generated.into_iter().filter(|(key, _)| key != "title" && key != "$schema"));
    }
    for (place, limits) in limits {
        if let (Some(Value::Object(object)), Value::Object(limits)) = (schema.pointer_mut(place), limits) {
            object.extend(limits);
        }
    }
    schema
}

/// Every text has the same limit, and so has every count.
fn set_limits(schema: &mut Schema) {
    if schema.get("format").is_some_and(|format| format == "uint32") {
        schema.remove("format");
        schema.insert("maximum".to_owned(), json!(u32::MAX));
    }
    if schema.get("type").is_some_and(is_text) {
        schema.insert("maxLength".to_owned(), json!(MOST_CHARACTERS));
    }
    transform_subschemas(&mut set_limits, schema);
}

fn is_text(kind: &Value) -> bool {
    match kind {
        Value::String(kind) => kind == "string",
        Value::Array(kinds) => kinds.iter().any(is_text),
        _ => false,
    }
}
