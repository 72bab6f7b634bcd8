//! What the words say.

pub(in crate::check) mod avoidance_vague;
pub(in crate::check) mod comma_figure;
pub(in crate::check) mod dangling_link;
pub(in crate::check) mod differs;
pub(in crate::check) mod empty;
pub(in crate::check) mod left_out;
pub(in crate::check) mod message_incomplete;
pub(in crate::check) mod not_checked;
pub(in crate::check) mod not_said;
pub(in crate::check) mod not_typed;
pub(in crate::check) mod placeholder;
pub(in crate::check) mod reminder_waits;
pub(in crate::check) mod repeat_without_stop;
pub(in crate::check) mod reverse_order;
pub(in crate::check) mod tolerance;
pub(in crate::check) mod too_long;
pub(in crate::check) mod vague;
