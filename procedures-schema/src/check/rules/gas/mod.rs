//! Fuel gas.

pub(in crate::check) mod fired_before_tested;
pub(in crate::check) mod fired_case_open;
pub(in crate::check) mod ignition_near_open;
pub(in crate::check) mod no_bond;
pub(in crate::check) mod not_proved;
pub(in crate::check) mod not_purged;
pub(in crate::check) mod open_end;
pub(in crate::check) mod proof_incomplete;
pub(in crate::check) mod proof_lapsed;
pub(in crate::check) mod purge_dead;
pub(in crate::check) mod purged_before_tested;
pub(in crate::check) mod restored_open;
pub(in crate::check) mod still_fed;
