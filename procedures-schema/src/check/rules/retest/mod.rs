//! Tests after the work.

pub(in crate::check) mod about_to_be_covered;
pub(in crate::check) mod does_not_load;
pub(in crate::check) mod missing;
pub(in crate::check) mod no_baseline;
pub(in crate::check) mod not_closed;
pub(in crate::check) mod not_visible;
pub(in crate::check) mod order;
pub(in crate::check) mod trap_dry;
pub(in crate::check) mod way_back_differs;
