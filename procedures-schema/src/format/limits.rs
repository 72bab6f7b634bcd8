//! Limits of a file. They are far above any real job; what exceeds them is refused with both numbers.

use super::{Category, FormatError};
use crate::model::Procedure;

/// Largest file, in bytes.
pub const MOST_BYTES: usize = 50_000_000;
/// Most steps.
pub const MOST_STEPS: usize = 5_000;
/// Most things in the appliance map.
pub const MOST_THINGS: usize = 2_000;
/// Longest text, in characters.
pub const MOST_CHARACTERS: usize = 20_000;

pub(super) fn check_bytes(bytes: &[u8]) -> Result<(), FormatError> {
    within(bytes.len(), MOST_BYTES, "bytes")
}

pub(super) fn check_document(procedure: &Procedure) -> Result<(), FormatError> {
    within(procedure.steps.len(), MOST_STEPS, "steps")?;
    within(procedure.map.things().count(), MOST_THINGS, "things")?;
    for (i, step) in procedure.steps.iter().enumerate() {
        let n_characters = step.words.chars().count().max(step.why.chars().count());
        if n_characters > MOST_CHARACTERS {
            return Err(FormatError::whole(
                Category::Limit,
                format!(
                    "Step {} has a text of {n_characters} characters; {MOST_CHARACTERS} can be opened",
                    i + 1
                ),
            ));
        }
    }
    Ok(())
}

fn within(given: usize, most: usize, what: &str) -> Result<(), FormatError> {
    if given <= most {
        Ok(())
    } else {
        Err(FormatError::whole(
            Category::Limit,
            format!("This file has {given} {what}; {most} can be opened"),
        ))
    }
}
