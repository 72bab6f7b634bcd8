//! Writing a file.

use crate::model::Procedure;
use serde_json::Value;

/// Longest list of plain values that stays on one line.
const LONGEST_LINE: usize = 90;

/// The canonical text of a procedure.
// Inline for the same reason as `read`.
#[inline]
pub fn write(procedure: &Procedure) -> String {
    // A procedure has string keys only and no figures but whole ones, so it always becomes a value.
    laid_out(&serde_json::to_value(procedure).unwrap_or(Value::Null))
}

/// The canonical text of a value.
pub(super) fn laid_out(value: &Value) -> String {
    let mut text = String::new();
    put(value, 0, &mut text);
    text.push('\n');
    text
}

pub(super) fn put(value: &Value, depth: usize, text: &mut String) {
    match value {
        Value::Array(items) if items.iter().all(is_flat) => put_flat(items, depth, text),
        Value::Array(items) => put_block('[', ']', items.iter().map(|item| (None, item)), depth, text),
        Value::Object(fields) if fields.is_empty() => text.push_str("{}"),
        Value::Object(fields) => {
            put_block('{', '}', fields.iter().map(|(key, item)| (Some(key), item)), depth, text);
        }
        plain => text.push_str(&plain.to_string()),
    }
}

/// Plain values, and lists of numbers such as spans.
fn is_flat(value: &Value) -> bool {
    match value {
        Value::Array(items) => items.iter().all(Value::is_number),
        Value::Object(_) => false,
        _ => true,
    }
}

/// A list of plain values: on one line if that is short.
fn put_flat(items: &[Value], depth: usize, text: &mut String) {
    let parts: Vec<String> = items.iter().map(one_line).collect();
    let length: usize = parts.iter().map(|part| part.len() + 2).sum();
    if length <= LONGEST_LINE {
        text.push('[');
        text.push_str(&parts.join(", "));
        text.push(']');
    } else {
        text.push('[');
        for (i, part) in parts.iter().enumerate() {
            text.push_str(if i == 0 { "\n" } else { ",\n" });
            text.push_str(&"  ".repeat(depth + 1));
            text.push_str(part);
        }
        text.push('\n');
        text.push_str(&"  ".repeat(depth));
        text.push(']');
    }
}

fn one_line(value: &Value) -> String {
    match value {
        Value::Array(numbers) => {
            let parts: Vec<String> = numbers.iter().map(Value::to_string).collect();
            format!("[{}]", parts.join(", "))
        }
        plain => plain.to_string(),
    }
}

fn put_block<'a>(
    open: char,
    close: char,
    items: impl Iterator<Item = (Option<&'a String>, &'a Value)>,
    depth: usize,
    text: &mut String,
) {
    put_items(open, close, items, depth, text, |(key, item), text| {
        if let Some(key) = key {
            put_key(key, text);
        }
        put(item, depth + 1, text);
    });
}

/// What begins a field.
pub(super) fn put_key(key: &str, text: &mut String) {
    text.push_str(&Value::String(key.to_owned()).to_string());
    text.push_str(": ");
}

/// Items on a line each, as `put_one` writes them.
pub(super) fn put_items<T>(
    open: char,
    close: char,
    items: impl Iterator<Item = T>,
    depth: usize,
    text: &mut String,
    mut put_one: impl FnMut(T, &mut String),
) {
    text.push(open);
    for (i, item) in items.enumerate() {
        text.push_str(if i == 0 { "\n" } else { ",\n" });
        text.push_str(&"  ".repeat(depth + 1));
        put_one(item, text);
    }
    text.push('\n');
    text.push_str(&"  ".repeat(depth));
    text.push(close);
}
