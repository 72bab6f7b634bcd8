//! The state of the editor: edits in, one session, memos out.
//!
//! [`EditorStore`] holds the only [`Session`](procedures_schema::edit::Session); views read memos and send
//! [`Command`]s, never edits. Clock and identities live here, because the core has neither. Follow uses
//! [`clock`], [`ids`] and [`offline`] and nothing else of this.

pub mod accepting;
pub mod alike;
pub mod all_findings;
pub mod another;
pub mod attention;
pub mod branch;
pub mod bringing;
pub mod carried;
pub mod clock;
pub mod commands;
mod cutting;
pub mod doubts;
pub mod editor_store;
mod figures;
mod file_names;
pub mod files;
pub mod filing;
pub mod finding_out;
pub mod found;
mod going_back;
pub mod heard;
pub mod held;
pub mod ids;
pub mod judged;
pub mod keeping;
pub mod kit_edits;
mod known_here;
mod lane_rows;
pub mod last_read;
pub mod lines;
mod links;
pub mod making;
pub mod map_edits;
pub mod next_finding;
mod notices;
pub mod offline;
pub mod on_shelf;
mod opened_over;
pub mod opening;
pub mod pasted_text;
pub mod pasting;
pub mod phrases;
mod plain_rows;
pub mod question_edits;
pub mod readings;
mod reasons;
pub mod records;
pub mod remedies;
pub mod reminders;
pub mod rereading;
mod retyped;
pub mod review;
pub mod same_things;
pub mod seat;
pub mod selection;
mod settling;
pub mod shelf;
pub mod shown;
mod spread;
pub mod step_edits;
pub mod taken_out;
mod together;
pub mod told;
pub mod typed_measure;
pub mod versions;
mod written;

pub use commands::Command;
pub use editor_store::EditorStore;
pub use known_here::KnownHere;
