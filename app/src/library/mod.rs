//! The Procedures screen: what is on this device, the bin, beginning a new one, and the invented ones
//! that come with the page. It stands before the editor is there, and asks it through a
//! [`Desk`](crate::desk::Desk).

pub mod begin;
pub mod bin;
pub mod fetching;
pub mod first_time;
pub mod page;
pub mod samples;
pub mod shelf_row;
pub mod undo_bar;
