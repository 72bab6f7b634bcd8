//! What differs between two states of a procedure, by identity: a step that was moved and reworded is still
//! that step.
//!
//! Nothing is merged here, and nothing is judged: whether a difference matters is the reader's business.

mod changes;
mod parts;
mod places;
mod words;

pub use changes::{Changes, changes};
pub use parts::{Named, Parts};
pub use places::{Place, Places, places};

#[cfg(test)]
mod tests;
