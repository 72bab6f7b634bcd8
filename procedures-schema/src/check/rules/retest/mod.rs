//! Tests after the work.

pub(in crate::check) mod missing;
