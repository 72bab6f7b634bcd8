//! What the words say.

pub(in crate::check) mod not_said;
