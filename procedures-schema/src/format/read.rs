//! Reading a file.

use super::limits::{check_bytes, check_document};
use super::{Category, FormatError};
use crate::model::{FORMAT_VERSION, Procedure};
use serde::Deserialize;
use serde_json::error::Category as JsonCategory;

/// Reads a procedure from the bytes of a file.
///
/// # Errors
/// If the bytes are not UTF-8 or begin with a byte order mark, are no JSON, are nested deeper than 128,
/// are not a procedure, come from a newer version, or exceed a limit ([`super::MOST_BYTES`] and its
/// neighbours). The error names line and column where there is one.
pub fn read(bytes: &[u8]) -> Result<Procedure, FormatError> {
    check_bytes(bytes)?;
    let text = as_text(bytes)?;
    refuse_newer(text)?;
    let mut json = serde_json::Deserializer::from_str(text);
    let procedure: Procedure = serde_path_to_error::deserialize(&mut json).map_err(|error| {
        // The library writes "?" for a field whose name it does not know yet.
        let path = error.path().to_string().replace(".?", "");
        from_json(error.inner(), if path == "." || path == "?" { String::new() } else { path })
    })?;
    json.end().map_err(|error| from_json(&error, String::new()))?;
    check_document(&procedure)?;
    Ok(procedure)
}

fn as_text(bytes: &[u8]) -> Result<&str, FormatError> {
    if bytes.starts_with(&[0xEF, 0xBB, 0xBF]) {
        return Err(FormatError {
            category: Category::Text,
            line: 1,
            column: 1,
            path: String::new(),
            message: "The file begins with a byte order mark; save it as UTF-8 without one".to_owned(),
        });
    }
    std::str::from_utf8(bytes).map_err(|error| {
        let good = bytes.get(..error.valid_up_to()).unwrap_or_default();
        let line = good.split(|b| *b == b'\n').count();
        let column = good.iter().rev().take_while(|b| **b != b'\n').count() + 1;
        FormatError {
            category: Category::Text,
            line,
            column,
            path: String::new(),
            message: "This byte is no UTF-8 text; save the file as UTF-8".to_owned(),
        }
    })
}

/// The version is looked at first, so that a newer file gets the true reason and not a strange one.
fn refuse_newer(text: &str) -> Result<(), FormatError> {
    #[derive(Deserialize)]
    struct Mark {
        putback: u32,
    }
    match serde_json::from_str::<Mark>(text) {
        Ok(mark) if mark.putback > FORMAT_VERSION => Err(FormatError::whole(
            Category::Newer,
            format!(
                "This file has format version {}; this program knows versions up to {FORMAT_VERSION}. \
                 Open it with a newer version of the program",
                mark.putback
            ),
        )),
        // Every other fault is found, with its place, by the full reading.
        Ok(_) | Err(_) => Ok(()),
    }
}

fn from_json(error: &serde_json::Error, path: String) -> FormatError {
    let whole = error.to_string();
    // The library appends the place; ours stands before the message.
    let message = whole.rfind(" at line ").and_then(|at| whole.get(..at)).unwrap_or(&whole);
    let (category, message) = match error.classify() {
        JsonCategory::Eof => {
            (Category::Syntax, "The file ends in the middle; it was probably cut short".to_owned())
        }
        JsonCategory::Syntax => (Category::Syntax, format!("This is no JSON here: {message}")),
        JsonCategory::Data | JsonCategory::Io if message.contains("missing field `putback`") => (
            Category::Content,
            "This is no procedure file: its first field should be \"putback\", the format version".to_owned(),
        ),
        JsonCategory::Data | JsonCategory::Io => {
            (Category::Content, format!("This does not fit a procedure: {message}"))
        }
    };
    FormatError { category, line: error.line(), column: error.column(), path, message }
}
