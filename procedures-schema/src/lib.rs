//! Putback's core: a procedure is a program, and the appliance is the machine it runs on.
//!
//! ```text
//! text --format--> Procedure --simulate--> Trace --check--> Report
//!                      ^                      |
//!                     edit                  derive (lanes)
//! ```
//!
//! The core has no browser, clock, randomness or storage; time and identities are arguments. Bad input
//! gives a value with findings, or a typed error; nothing here panics.

pub mod capture;
pub mod check;
pub mod compare;
pub mod derive;
pub mod edit;
pub mod format;
pub mod lexicon;
pub mod model;
pub mod notation;
pub mod simulate;
pub mod units;
pub mod versions;
