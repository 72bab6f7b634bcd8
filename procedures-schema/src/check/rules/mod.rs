//! The rules, one file each, by family.

pub(super) mod control;
pub(super) mod gas;
pub(super) mod isolation;
pub(super) mod people;
pub(super) mod pressure;
pub(super) mod putback;
pub(super) mod reading;
pub(super) mod retest;
pub(super) mod seal;
pub(super) mod torque;
pub(super) mod words;
