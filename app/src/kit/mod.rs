//! The Kit screen: what to bring, as far as the writer says it. It reads memos and changes the kit by named
//! edits.

pub mod columns;
pub mod list;
pub mod page;
