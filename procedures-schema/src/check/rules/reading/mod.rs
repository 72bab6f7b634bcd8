//! Readings and tests.

pub(in crate::check) mod looser_than_default;
pub(in crate::check) mod no_criterion;
pub(in crate::check) mod no_limits;
pub(in crate::check) mod no_on_fail;
pub(in crate::check) mod no_source;
pub(in crate::check) mod not_settled;
pub(in crate::check) mod nothing_read;
pub(in crate::check) mod range_inverted;
pub(in crate::check) mod unit_unfit;
pub(in crate::check) mod wrong_state;
