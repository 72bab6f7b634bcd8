//! Seals.

pub(in crate::check) mod not_renewed;
