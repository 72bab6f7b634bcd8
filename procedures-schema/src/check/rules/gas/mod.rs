//! Fuel gas.

pub(in crate::check) mod not_proved;
pub(in crate::check) mod still_fed;
