//! Isolation: electricity, movement, air and flue.

pub(in crate::check) mod not_locked;
pub(in crate::check) mod not_proved;
pub(in crate::check) mod still_fed;
