//! What every screen of the editor shows around its own: notices, and which tab writes.

pub mod notice;
pub mod other_tab;
