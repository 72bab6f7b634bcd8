//! The Write screen: steps in plain words, what they mean beneath, the lanes at their left, what is wrong at
//! their right. It reads memos of the editor's state and sends commands; it decides nothing.

pub mod action_fields;
pub mod banner;
pub mod choices;
pub mod details;
pub mod drag;
pub mod finding;
pub mod foot;
pub mod fresh_things;
pub mod handle;
pub mod header;
pub mod heads;
pub mod held_bar;
pub mod keys;
pub mod keys_sheet;
pub mod ladder_keys;
pub mod leading_keys;
pub mod leading_words;
pub mod line_meaning;
pub mod link_offer;
pub mod message_fields;
pub mod mirror;
pub mod move_to;
pub mod new_line;
pub mod one_reading;
pub mod page;
pub mod pressing;
pub mod reading_fields;
pub mod row;
pub mod row_keys;
pub mod row_lanes;
pub mod row_margin;
pub mod tokens;
pub mod why;
pub mod words_field;
