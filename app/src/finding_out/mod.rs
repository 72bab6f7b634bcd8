//! The Later screen: everything that is still to be found out as one narrow form. It reads memos and sends
//! answers; what becomes of an answer is the core's business.

pub mod brought;
pub mod open_row;
pub mod page;
