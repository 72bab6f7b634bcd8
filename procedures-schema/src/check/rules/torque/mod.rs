//! Torque: how tight a joint is made, and when again.

pub(in crate::check) mod retorque_missing;
