//! Readings and tests.

pub(in crate::check) mod looser_than_default;
pub(in crate::check) mod no_criterion;
pub(in crate::check) mod not_settled;
pub(in crate::check) mod wrong_state;
