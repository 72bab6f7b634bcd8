//! Files: reading and writing `NAME.putback.json`, as `FORMAT.md` beside this crate says for strangers.
//!
//! Reading refuses a file only if it cannot be understood: no JSON, not ours, newer than we know, beyond
//! the limits. What a document says wrongly is the checker's business. Older files become the present
//! version in memory. Writing is canonical: stable key order, two spaces, short lists of plain values on
//! one line, a final newline; so edits to different steps merge as text, and opening and saving changes
//! nothing.

mod error;
mod found;
mod head;
mod limits;
mod migrate;
mod part;
mod read;
mod rewriter;
mod room;
#[cfg(feature = "cli")]
mod schema;
mod sound;
mod unique;
mod write;

pub use error::{Category, FormatError};
pub use found::{is_found, read_found, write_found};
pub use head::{Head, read_head};
pub use limits::{
    MOST_ANSWERS, MOST_BYTES, MOST_CHARACTERS, MOST_DEPTH, MOST_IMAGES, MOST_STEPS, MOST_THINGS,
};
pub use part::{read_part, write_part};
pub use read::read;
pub use rewriter::Rewriter;
pub use room::{TooMuch, fits, has_room, have_room};
#[cfg(feature = "cli")]
pub use schema::{found_schema, schema};
pub use write::write;

#[cfg(test)]
mod tests;
