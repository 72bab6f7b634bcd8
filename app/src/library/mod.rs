//! The Procedures screen: what is on this device, beginning a new one, and the invented ones that come with
//! the page.

pub mod page;
pub mod shelf_row;
