//! The screen Earlier versions: what the open procedure was, a look at each, and the way to bring one back.
//! A look changes nothing.

pub mod found;
pub mod list;
pub mod look;
pub mod page;
