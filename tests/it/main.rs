//! The native tests of Putback, in one binary: each module tests one thing through public interfaces.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::print_stdout,
    clippy::print_stderr,
    unreachable_pub,
    reason = "a test fails by panicking and may say what it saw"
)]

mod again;
mod bring;
mod cases;
mod census;
mod coin;
mod differs;
mod fixes;
mod fixture;
mod format;
mod heard;
mod house;
mod judge;
mod kit;
mod later;
mod laws;
mod links;
mod mended;
mod naive;
mod phrases;
mod rows;
mod rules;
mod spoiled;
mod suite;
mod undo;
mod units;
mod unread;
mod ways;
