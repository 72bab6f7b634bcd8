//! Many lines pasted at once: a text in pieces, and the pieces as steps.
//!
//! A text is cut at line ends, numbers, bullets and the cells of a table; wrapped lines are joined again;
//! headings, leading words and sentences are told apart. Every piece keeps its line and its exact text, and
//! together the pieces hold every character of the text that is not blank. It guesses nothing: a line that
//! is not understood stays a step with words alone. The words are English.

mod cells;
mod cut;
mod english;
mod heading;
mod marker;
mod plain;
mod sentences;
mod steps;
#[cfg(test)]
mod tests;
mod title;

pub use cut::block;
pub use steps::{BlockReading, Counts, LineDoubt, NotUnderstood, Pasted, SourceLine, steps_of_block};

use super::Leading;
use crate::model::Stage;

/// Whoever pastes more lines than this is asked first whether they are to be read.
pub const MANY_LINES: usize = 2_000;

/// A pasted text in its pieces.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Block {
    /// The pieces, in the order of the text.
    pub pieces: Vec<Piece>,
    /// How many lines with text there were.
    pub n_lines: usize,
}

/// One piece of a text.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// The line on which it begins, from 1.
    pub line: usize,
    /// The text as it was pasted, with its number or bullet.
    pub source: String,
    /// The words, without number or bullet, plain blanks between them.
    pub words: String,
    /// What it is.
    pub kind: PieceKind,
}

/// What a piece is.
#[derive(Clone, Debug, PartialEq)]
pub enum PieceKind {
    /// An instruction, or a sentence that nothing else is known of.
    Step,
    /// A heading, with the stage that it names; without one it stays text.
    Heading(Option<Stage>),
    /// A line with a leading word.
    Leading(Leading),
    /// A rule, a lone mark, the heads of a table's columns: nothing to do.
    Ornament,
}
