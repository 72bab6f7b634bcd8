//! The Procedures screen: what is on this device, the bin, beginning a new one, and the invented ones
//! that come with the page.

pub mod bin;
pub mod page;
pub mod shelf_row;
pub mod undo_bar;
