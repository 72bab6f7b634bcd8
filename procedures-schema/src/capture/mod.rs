//! Capture: the words of a line become typed actions.
//!
//! A deterministic recogniser of plain instructions, without a model and without guessing: what it does not
//! understand stays text. Words are cut into clauses at verb phrases; things are found by name or alias; the
//! state at this place of the run picks which one is meant ("refit the cover" can only be a cover that is off
//! here). If two remain there is a [`Doubt`] instead of an action. Every action carries the spans of the
//! words that say it.
//!
//! [`line()`] makes no new things: a verb whose thing the map does not know is reported as [`Unknown`].
//! [`line_making`] adds what the words name for the first time to a copy of the map. The words are read as
//! English.

mod abbreviated;
mod agreement;
mod before_and_after;
mod block;
mod both_sorts;
mod by_hand;
mod by_part;
mod by_place;
mod by_verb;
mod clause;
mod coin;
mod condition;
mod figures;
mod found_out;
mod heads;
mod here;
mod joined;
mod joins;
mod leading;
mod led;
mod left_of_several;
mod left_out;
mod listed;
mod made_last;
mod meant;
mod mention;
mod nearer;
mod no_order;
mod no_section;
mod objects;
mod one_at_a_place;
mod other;
mod other_side;
mod others;
mod own_phrase;
mod owned;
mod pasted_title;
mod placed;
mod preposition;
mod pronoun;
mod proof;
mod quantity;
mod read_several;
mod read_value;
mod reader;
mod readings;
mod reason;
mod refer;
mod renewing;
mod restate;
mod restate_seal;
mod section;
mod seeming;
mod shortened;
mod stage;
mod supply;
mod switched_to;
mod test_kind;
#[cfg(test)]
mod tests;
mod then;
mod thing;
mod threads;
mod together;
mod told;
mod topic;
mod twins;
mod two_owners;
mod two_sides;
mod unknown;
mod unsure;

pub use block::{
    Block, BlockReading, Counts, LineDoubt, MANY_LINES, NotUnderstood, Pasted, Piece, PieceKind, SourceLine,
    block, steps_of_block,
};
pub use coin::{
    Another, Answer, Given, Made, Making, Meaning, Question, another, line_making, line_making_here,
    line_with_making,
};
pub use figures::{
    Differing, SaidOtherwise, Value, as_was, differing, follow_words, line_as_said, take_words, write_value,
};
pub use found_out::{NoAnswer, Several, found_out, one_range, one_value, several_found_out};
pub use here::Here;
pub use leading::{
    Applied, Beside, Gap, Leading, NotHeld, StepParts, apply_leading, leading, number_of_step, parts_of_step,
    question_of, question_with_answers, with_gap_filled,
};
pub use left_out::{begins_with_a_seal, begins_with_a_thing, left_out, may_leave_out};
pub use own_phrase::own_phrase;
pub use pasted_title::take_title;
pub(crate) use quantity::is_label_of_owner;
pub use quantity::{Figures, Quantity};
pub use readings::{Readings, called, readings_at};
pub use reason::{Reason, reason};
pub use restate::restate;
pub use restate_seal::restate_seal;
pub use stage::stage_between;
pub use together::told_together;

use crate::model::{Action, ApplianceMap, Id, Span, Stage, Verb};
use crate::simulate::{Place, Trace};

/// What a line was read as.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LineReading {
    /// The actions, in the order of the words.
    pub actions: Vec<Action>,
    /// Places where more than one thing can be meant.
    pub doubts: Vec<Doubt>,
    /// Verbs whose thing is not in the map.
    pub unknown: Vec<Unknown>,
    /// Figures with units and sizes in the words.
    pub quantities: Vec<Quantity>,
    /// What is named as if it were acted on too, and is in no action and no doubt.
    pub left_out: Vec<Span>,
}

/// A place in the words where more than one thing can be meant.
#[derive(Clone, Debug, PartialEq)]
pub struct Doubt {
    /// The words in doubt.
    pub span: Span,
    /// What to ask.
    pub question: String,
    /// The possible readings: several, or one that the words say so weakly that it is asked for.
    pub choices: Vec<Choice>,
}

/// One possible reading.
#[derive(Clone, Debug, PartialEq)]
pub struct Choice {
    /// The thing that would be meant.
    pub thing: Id,
    /// Its name.
    pub name: String,
    /// The action that would follow.
    pub action: Action,
    /// What the same words do to it besides, in order: "change the sensor" takes the old one out and fits a new one.
    pub also: Vec<Action>,
}

impl Choice {
    /// All that would follow, in order.
    pub fn actions(&self) -> impl Iterator<Item = &Action> {
        std::iter::once(&self.action).chain(&self.also)
    }
}

/// A verb whose thing is not in the map.
#[derive(Clone, Debug, PartialEq)]
pub struct Unknown {
    /// The words of the verb.
    pub span: Span,
    /// The verb.
    pub verb: Verb,
}

/// Reads a line as it would stand right after `place` of the run.
pub fn line(words: &str, map: &ApplianceMap, trace: &Trace, place: Place, stage: &Stage) -> LineReading {
    line_here(words, map, Here::from_trace(map, trace, place), stage)
}

/// Reads a line in a given state.
pub fn line_here(words: &str, map: &ApplianceMap, here: Here, stage: &Stage) -> LineReading {
    match crate::lexicon::Lexicon::for_language("en") {
        Some(lexicon) => reader::Reader::new(words, map, here, stage, lexicon).read(),
        None => LineReading::default(),
    }
}
