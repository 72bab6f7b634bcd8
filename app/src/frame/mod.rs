//! What every screen of the editor shows around its own: notices, whether it is kept, which tab
//! writes, what is still to be found out, the stamp with the list of all that is found, the head
//! of those beside Write, the fields of things, and how something is dragged.

pub mod all_findings;
pub mod changed_file;
pub mod edge_scroll;
pub mod judged_by;
pub mod later_key;
pub mod level_mark;
pub mod not_kept;
pub mod notice;
pub mod other_tab;
pub mod plain_foot;
pub mod plain_head;
pub mod plain_screen;
pub mod pointer_drag;
pub mod sheet;
pub mod stamp;
pub mod tall_head;
pub mod tight_fields;
pub mod undo_keys;
pub mod versions_line;
