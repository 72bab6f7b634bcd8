//! Edits: the only way to change a document.
//!
//! [`apply`] makes a new document from an old one and an [`Edit`]; what the edit does not touch is shared
//! between the two. A [`Session`] keeps the documents before and after, so undo goes back to the very same
//! document and nothing has to be inverted.

mod apply;
mod change;
mod follow;
mod in_words;
mod joined;
mod kept_undo;
mod merge;
mod part;
pub mod questions;
mod rename;
mod replace;
mod say;
mod scope;
mod session;
mod split;

pub use apply::{Applied, EditError, apply};
pub use change::Edit;
pub use follow::follow;
pub use joined::joined;
pub use kept_undo::{KeptUndo, UndoRewriter};
pub use merge::{Choice, Difference, differences};
pub use part::part;
pub use rename::occurrences;
pub use say::{insert, put, say_behind, take_out};
pub use scope::Scope;
pub use session::{Session, Undone};

#[cfg(test)]
mod tests;
