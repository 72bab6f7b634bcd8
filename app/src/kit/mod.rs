//! The Kit screen: what to bring, as the steps need it and as the writer says it. It reads memos and changes the
//! kit by named edits.

pub mod columns;
pub mod from_steps;
pub mod list;
pub mod page;
