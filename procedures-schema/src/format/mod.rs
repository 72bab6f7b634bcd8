//! Files: reading and writing `NAME.putback.json`.
//!
//! Reading refuses a file only if it cannot be understood: no JSON, not ours, newer than we know, beyond
//! the limits. What a document says wrongly is the checker's business. Writing is canonical: stable key
//! order, two spaces, short lists of plain values on one line, a final newline; so edits to different
//! steps merge as text, and opening and saving changes nothing.

mod error;
mod limits;
mod read;
mod write;

pub use error::{Category, FormatError};
pub use limits::{MOST_BYTES, MOST_CHARACTERS, MOST_STEPS, MOST_THINGS};
pub use read::read;
pub use write::write;

#[cfg(test)]
mod tests;
