//! The Follow screen: one step at a time, on what was really done.
//!
//! It knows no editor, no rules and no capture: it may use the model, units, notation, the simulator and
//! what is derived from its trace, the format for keeping a copy of the procedure, storage, and the clock.
//! The verdict comes in as words ([`standing`]). A tick shows only once it is kept on the device.

pub mod answer_keys;
pub mod apart_line;
pub mod bar;
pub mod current;
pub mod ended;
pub mod foot;
pub mod found_here;
pub mod gate;
pub mod isolators;
pub mod job;
pub mod job_store;
pub mod moment;
pub mod order;
pub mod page;
pub mod proofs;
pub mod reading_panel;
pub mod resume;
pub mod standing;
pub mod stop_sheet;
pub mod strip;
pub mod task;
pub mod to_find;
