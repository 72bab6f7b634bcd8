//! Seals: renewed when their joint was disturbed.

pub(in crate::check) mod not_renewed;
pub(in crate::check) mod renewed_unopened;
pub(in crate::check) mod reused_uninspected;
pub(in crate::check) mod reused_unsound;
pub(in crate::check) mod size_missing;
