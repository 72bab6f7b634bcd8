//! The document as a controlled document.

pub(in crate::check) mod cannot_judge;
pub(in crate::check) mod no_notice;
pub(in crate::check) mod no_reason;
pub(in crate::check) mod no_steps;
