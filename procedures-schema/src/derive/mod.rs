//! What is worked out from a document and its trace: lanes, what is still apart, ready-made ladders.
//!
//! Nothing here judges, and nothing here changes a document.

pub mod access;
mod along;
pub mod answered;
pub mod apart;
pub mod bring;
pub mod brings;
pub mod carry;
pub mod kit;
pub mod ladder;
pub mod lanes;
pub mod open_at;
pub mod ready;
pub mod reminders;
pub mod rows;
pub mod rungs;
mod sentence;
pub mod stands;
pub mod uses;
pub mod usual_units;
pub mod way_back;
mod worked;
