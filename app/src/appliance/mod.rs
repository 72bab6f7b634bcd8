//! The Appliance screen: what the document is about, which circuits the appliance has, the questions
//! of the job, and every thing that
//! the steps name, each with a sheet of its own. It reads memos and changes the map by named edits.

pub mod bring_choice;
pub mod bring_map;
pub mod census;
pub mod circuit_sheet;
pub mod component_sheet;
pub mod connection_sheet;
pub mod drag;
pub mod drag_bar;
pub mod finder;
pub mod isolator_sheet;
pub mod list;
pub mod meetings;
pub mod name_field;
pub mod open_sheet;
pub mod own_phrases;
pub mod page;
pub mod question_sheet;
pub mod questions;
pub mod same_as;
pub mod scope;
pub mod seal_sheet;
pub mod section_sheet;
pub mod setting_sheet;
pub mod temporary_sheet;
pub mod thing_row;
pub mod two_of_it;
pub mod way_to_it;
