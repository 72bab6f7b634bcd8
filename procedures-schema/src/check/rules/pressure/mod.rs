//! Water and everything else under pressure.

pub(in crate::check) mod energised_dry;
pub(in crate::check) mod hot;
pub(in crate::check) mod no_inert_flow;
pub(in crate::check) mod no_vent;
pub(in crate::check) mod not_bled;
pub(in crate::check) mod not_filled;
pub(in crate::check) mod not_locked;
pub(in crate::check) mod not_proved;
pub(in crate::check) mod not_released;
pub(in crate::check) mod nowhere_to_go;
pub(in crate::check) mod open_end;
pub(in crate::check) mod proof_incomplete;
pub(in crate::check) mod proof_lapsed;
pub(in crate::check) mod restored_open;
pub(in crate::check) mod running;
pub(in crate::check) mod still_fed;
pub(in crate::check) mod wrong_contents;
