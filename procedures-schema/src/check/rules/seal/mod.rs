//! Seals: renewed when their joint was disturbed.

pub(in crate::check) mod not_renewed;
