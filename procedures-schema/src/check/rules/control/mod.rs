//! The document as a controlled document.

pub(in crate::check) mod cannot_judge;
pub(in crate::check) mod census_contradicts;
pub(in crate::check) mod census_unanswered;
pub(in crate::check) mod hold_incomplete;
pub(in crate::check) mod no_notice;
pub(in crate::check) mod no_reason;
pub(in crate::check) mod no_steps;
pub(in crate::check) mod not_asked;
pub(in crate::check) mod not_fed;
pub(in crate::check) mod override_unsupported;
pub(in crate::check) mod scope_missing;
