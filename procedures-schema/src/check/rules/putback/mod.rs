//! Everything back where it was.

pub(in crate::check) mod left_off;
pub(in crate::check) mod left_open;
pub(in crate::check) mod left_slack;
pub(in crate::check) mod supply_off;
pub(in crate::check) mod temp_left;
