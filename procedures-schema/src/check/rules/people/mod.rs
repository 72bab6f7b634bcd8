//! Who does it.

pub(in crate::check) mod too_heavy;
