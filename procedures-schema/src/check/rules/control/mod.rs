//! The document as a controlled document.

pub(in crate::check) mod cannot_judge;
