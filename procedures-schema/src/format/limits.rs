//! Limits of a file. They are far above any real job; what exceeds them is refused with both numbers.

use super::{Category, FormatError};
use crate::model::Procedure;

/// Largest file, in bytes.
pub const MOST_BYTES: usize = 50_000_000;
/// Most steps, those of failure blocks included.
pub const MOST_STEPS: usize = 5_000;
/// Most things in the appliance map.
pub const MOST_THINGS: usize = 2_000;
/// Most images.
pub const MOST_IMAGES: usize = 2_000;
/// Most answers in a file of answers found on a job.
pub const MOST_ANSWERS: usize = 5_000;
/// Longest text and longest key, in characters (code points).
pub const MOST_CHARACTERS: usize = 20_000;
/// Objects and lists inside each other. The reader of JSON itself stops there, before the stack does.
pub const MOST_DEPTH: usize = 127;

pub(super) fn check_bytes(bytes: &[u8]) -> Result<(), FormatError> {
    within(bytes.len(), MOST_BYTES, "bytes")
}

pub(super) fn check_document(procedure: &Procedure) -> Result<(), FormatError> {
    let n_steps = procedure.steps.iter().map(|step| step.with_after_failures().len()).sum();
    within(n_steps, MOST_STEPS, "steps")?;
    within(procedure.map.things().count(), MOST_THINGS, "things")?;
    within(procedure.images.len(), MOST_IMAGES, "images")
}

pub(super) fn within(given: usize, most: usize, what: &str) -> Result<(), FormatError> {
    if given <= most {
        Ok(())
    } else {
        let message = format!("This file has {} {what}; {} can be opened", grouped(given), grouped(most));
        Err(FormatError::whole(Category::Limit, message))
    }
}

/// A number with its thousands set apart.
pub(super) fn grouped(number: usize) -> String {
    let digits = number.to_string();
    let mut shown = String::new();
    for (i, digit) in digits.chars().enumerate() {
        if i > 0 && (digits.len() - i).is_multiple_of(3) {
            shown.push(',');
        }
        shown.push(digit);
    }
    shown
}
