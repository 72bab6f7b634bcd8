//! Water and everything else under pressure.

pub(in crate::check) mod not_proved;
pub(in crate::check) mod not_released;
pub(in crate::check) mod still_fed;
