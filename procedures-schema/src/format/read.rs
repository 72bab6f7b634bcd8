//! Reading a file.

use super::found::is_found;
use super::limits::{MOST_DEPTH, check_bytes, check_document};
use super::migrate::migrate;
use super::sound::Sound;
use super::unique::check_identities;
use super::{Category, FormatError};
use crate::model::{FORMAT_VERSION, Procedure, fault_path};
use serde::Deserialize;
use serde::de::DeserializeSeed;
use serde_json::error::Category as JsonCategory;
use std::cell::Cell;

/// Reads a procedure from the bytes of a file.
///
/// # Errors
/// If the bytes are not UTF-8 or begin with a byte order mark, are no JSON, have a key twice in an object,
/// are not a procedure, give two steps or things one identity, come from a newer version, or exceed a limit ([`super::MOST_BYTES`] and its
/// neighbours). The error names line and column where there is one.
// Inline: its many small parts are compiled as the program is that calls it, the page for the least weight.
#[inline]
pub fn read(bytes: &[u8]) -> Result<Procedure, FormatError> {
    check_bytes(bytes)?;
    let text = as_text(bytes)?;
    refuse_newer(text)?;
    refuse_unsound(text)?;
    // The JSON is sound by now, so whatever is wrong here is wrong with what it says.
    let mut procedure: Procedure = serde_json::from_str(text).map_err(|error| {
        if is_found(bytes) {
            let words = "This file holds answers found on a job and no procedure. Open the procedure first, \
                         and then the answers";
            return FormatError::whole(Category::Content, words.to_owned());
        }
        from_json(&error, &fault_path(text, &error), Some(Category::Content), "a procedure")
    })?;
    check_document(&procedure)?;
    check_identities(&procedure)?;
    migrate(&mut procedure);
    Ok(procedure)
}

pub(super) fn as_text(bytes: &[u8]) -> Result<&str, FormatError> {
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
#[inline]
fn refuse_newer(text: &str) -> Result<(), FormatError> {
    #[derive(Deserialize)]
    struct Mark {
        putback: u32,
    }
    // Every other fault is found, with its place, by the full reading.
    serde_json::from_str::<Mark>(text).map_or(Ok(()), |mark| no_newer(mark.putback, FORMAT_VERSION))
}

/// Refuses a version beyond the one that is known.
pub(super) fn no_newer(given: u32, known: u32) -> Result<(), FormatError> {
    if given <= known {
        return Ok(());
    }
    let message = format!(
        "This file has format version {given}; this program knows versions up to {known}. \
         Open it with a newer version of the program"
    );
    Err(FormatError::whole(Category::Newer, message))
}

/// Refuses what no field could be at fault for, in fields that we know and in others.
#[inline]
pub(super) fn refuse_unsound(text: &str) -> Result<(), FormatError> {
    let fault = Cell::new(None);
    let mut track = serde_path_to_error::Track::new();
    let mut json = serde_json::Deserializer::from_str(text);
    let walked = Sound { fault: &fault }
        .deserialize(serde_path_to_error::Deserializer::new(&mut json, &mut track))
        .map_err(|error| from_json(&error, &track.path().to_string(), fault.get(), "a procedure"));
    walked?;
    json.end().map_err(|error| from_json(&error, ".", None, "a procedure"))
}

/// A fault of the JSON library in our words; `what` the file should be.
pub(super) fn from_json(
    error: &serde_json::Error,
    path: &str,
    fault: Option<Category>,
    what: &str,
) -> FormatError {
    let whole = error.to_string();
    // The library appends the place; ours stands before the message.
    let message = whole.rfind(" at line ").and_then(|at| whole.get(..at)).unwrap_or(&whole);
    let (category, message) = match (fault, error.classify()) {
        (Some(Category::Limit), _) => (Category::Limit, message.to_owned()),
        (None, JsonCategory::Eof) => {
            (Category::Syntax, "The file ends in the middle; it was probably cut short".to_owned())
        }
        (None, JsonCategory::Syntax) if message.contains("recursion limit") => {
            (Category::Limit, format!("Objects and lists are nested deeper than {MOST_DEPTH} here"))
        }
        (None, JsonCategory::Syntax) => (Category::Syntax, format!("This is no JSON here: {message}")),
        _ if message.contains("missing field `putback`") => (
            Category::Content,
            "This is no procedure file: its first field should be \"putback\", the format version".to_owned(),
        ),
        _ => (Category::Content, format!("This does not fit {what}: {}", in_plain_words(message))),
    };
    // The library writes "?" for a field whose name it does not know yet.
    let path = path.replace(".?", "");
    let path = match path.as_str() {
        "." | "?" => String::new(),
        long if long.len() > LONGEST_PATH => {
            format!("{}…", long.chars().take(LONGEST_PATH).collect::<String>())
        }
        _ => path,
    };
    // A fault that is seen before the first character of a line is told as at its first.
    FormatError { category, line: error.line(), column: error.column().max(1), path, message }
}

/// A path beyond this length is cut; nobody follows it, and line and column are there.
const LONGEST_PATH: usize = 100;

/// The library speaks of the types of the program; whoever mends a file knows only JSON.
const PLAIN_WORDS: &[(&str, &str)] = &[
    ("expected tuple struct Span with 2 elements", "expected two whole numbers"),
    ("expected tuple struct Span", "expected two whole numbers"),
    ("expected a tuple of size 2", "expected two texts"),
    ("expected u32", "expected a whole number from 0 to 4294967295"),
    ("expected a boolean", "expected true or false"),
    ("expected a string", "expected a text in quotation marks"),
    ("expected a sequence", "expected a list"),
    ("expected a map", "expected an object"),
    ("invalid type: sequence", "this is a list"),
    ("invalid type: map", "this is an object"),
    ("invalid type: ", "this is "),
    ("invalid value: ", "this is "),
    ("invalid length ", "the length is "),
    ("this is integer `", "this is the number `"),
    ("this is floating point `", "this is the number `"),
    ("this is number,", "this is a number,"),
    ("this is string \"", "this is the text \""),
    ("trailing characters", "this list has one value too many"),
];

fn in_plain_words(message: &str) -> String {
    let mut plain = message.to_owned();
    for (theirs, ours) in PLAIN_WORDS {
        plain = plain.replace(theirs, ours);
    }
    let Some((before, after)) = plain.split_once("expected struct ") else { return plain };
    let end = after.find(|c: char| !c.is_alphanumeric()).unwrap_or(after.len());
    format!("{before}expected an object{}", after.get(end..).unwrap_or_default())
}
