//! The way to the field at which a reading of JSON failed.
//!
//! Following the way of every field while reading would make the code of reading half as large again. So it is
//! looked for when something is wrong: the text up to the fault is walked once more, as plain JSON.

use serde::Deserialize;
use serde_json::Value;

/// The path of the field that an error of the JSON library is about: `steps[3].words`, or `.` for the whole.
pub(crate) fn fault_path(text: &str, error: &serde_json::Error) -> String {
    let head = text.get(..end_of(text, error)).unwrap_or(text);
    let head = if error.to_string().starts_with("missing field") {
        // A fault of the object, which goes on behind its last field.
        head.strip_suffix('}').unwrap_or(head)
    } else {
        // A fault of the value that was read last.
        without_last(head)
    };
    // No value begins so, hence the walk ends in the field where one would.
    let broken = format!("{head}?");
    let mut track = serde_path_to_error::Track::new();
    let mut json = serde_json::Deserializer::from_str(&broken);
    let walked = Value::deserialize(serde_path_to_error::Deserializer::new(&mut json, &mut track));
    walked.map_or_else(|_| track.path().to_string(), |_| ".".to_owned())
}

/// How many bytes had been read.
fn end_of(text: &str, error: &serde_json::Error) -> usize {
    let before = text.split_inclusive('\n').take(error.line().saturating_sub(1));
    (before.map(str::len).sum::<usize>() + error.column()).min(text.len())
}

/// A text without the end of the value that ends it, so that it ends within that value or before it.
fn without_last(head: &str) -> &str {
    match head.as_bytes().last() {
        Some(b'"' | b'}' | b']') => head.get(..head.len() - 1).unwrap_or(head),
        _ => head.trim_end_matches(|c: char| c.is_ascii_alphanumeric() || matches!(c, '+' | '-' | '.')),
    }
}

#[cfg(test)]
mod tests {
    use super::fault_path;
    use crate::model::Step;

    /// The path as the library tells it that follows every field while reading.
    fn followed(text: &str) -> String {
        let mut json = serde_json::Deserializer::from_str(text);
        let read = serde_path_to_error::deserialize::<_, Step>(&mut json);
        plain(&read.expect_err(text).path().to_string())
    }

    /// Without the sign for a field whose name is not known yet, as messages have it.
    fn plain(path: &str) -> String {
        path.replace(".?", "").trim_matches(['.', '?']).to_owned()
    }

    #[test]
    fn the_path_is_that_of_the_field_at_fault() {
        let good = r#"{"id": "s1", "stage": "strip", "words": "Lift \"it\" off.", "people": 2, "actions":
            [{"do": "undo", "on": ["a", "b"], "count": 4, "says": [[0, 4]]}], "when": []}"#;
        assert_eq!(serde_json::from_str::<Step>(good).err().map(|error| error.to_string()), None);
        for (part, fault) in [
            ("\"s1\"", "7"),
            ("\"id\": \"s1\", ", ""),
            ("\"Lift \\\"it\\\" off.\"", "[1]"),
            ("2", "\"two\""),
            ("2", "2.5"),
            ("2", "-2"),
            ("2", "{\"n\": 2}"),
            ("\"do\": \"undo\", ", ""),
            ("\"do\": \"undo\"", "\"do\": null"),
            ("\"b\"", "true"),
            ("\"a\"", "3"),
            ("4,", "\"four\","),
            ("[0, 4]", "[0]"),
            ("[0, 4]", "[0, \"4\"]"),
            ("[0, 4]", "7"),
            ("[]", "\"\""),
            ("[]", "[{\"question\": \"q\"}]"),
        ] {
            for compact in [false, true] {
                let mut text = good.replacen(part, fault, 1);
                if compact {
                    text = text.replace(": ", ":").replace(", ", ",").replace("\n            ", "");
                }
                let error = serde_json::from_str::<Step>(&text).expect_err(&text);
                assert_eq!(plain(&fault_path(&text, &error)), followed(&text), "{text}: {error}");
            }
        }
    }
}
