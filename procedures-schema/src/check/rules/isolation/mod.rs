//! Electricity, movement, air and flue.

pub(in crate::check) mod already_open;
pub(in crate::check) mod can_start;
pub(in crate::check) mod cannot_lock;
pub(in crate::check) mod drained_live;
pub(in crate::check) mod guard_off_live;
pub(in crate::check) mod left_unsafe;
pub(in crate::check) mod locked_open;
pub(in crate::check) mod no_handle;
pub(in crate::check) mod not_locked;
pub(in crate::check) mod not_proved;
pub(in crate::check) mod not_shut_down;
pub(in crate::check) mod proof_incomplete;
pub(in crate::check) mod proof_lapsed;
pub(in crate::check) mod proved_elsewhere;
pub(in crate::check) mod restored_guard_off;
pub(in crate::check) mod restored_open;
pub(in crate::check) mod started_dead;
pub(in crate::check) mod still_fed;
pub(in crate::check) mod wait_too_short;
