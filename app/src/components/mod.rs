//! Small pieces of screen that Write and Follow share.
//!
//! They draw what they are given and send nothing but what a person did; none of them reads the state of
//! the editor or of a job.

pub mod apart_curve;
pub mod capital;
pub mod caution;
pub mod drawn;
pub mod fields;
pub mod in_one_piece;
pub mod keypad;
pub mod keys_dialog;
pub mod lane;
pub mod lane_patterns;
pub mod limits_bar;
pub mod notation_line;
pub mod one_stop;
pub mod safety_band;
pub mod step_asides;
