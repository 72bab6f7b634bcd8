//! Torque: how tight a joint is made, and when again.

pub(in crate::check) mod differs;
pub(in crate::check) mod missing;
pub(in crate::check) mod pattern_missing;
pub(in crate::check) mod range_inverted;
pub(in crate::check) mod retorque_missing;
pub(in crate::check) mod wrong_unit;
