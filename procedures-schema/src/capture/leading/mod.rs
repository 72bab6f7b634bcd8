//! Leading words: what a line such as `warning: …` or `read: …` adds to its step.
//!
//! A line that begins with one of the words and a colon is read as a message, a reading, a wait, a question
//! and so on; a part that is not there stays empty and is told as a [`Gap`]. A line that only looks alike
//! ("Wait for the pump to stop.") is left alone. It reads no actions from sentences, changes no document
//! and drops nothing: what a step cannot hold comes back as [`NotHeld`] with its text. The words are
//! English.

mod apply;
mod english;
mod figures;
mod fill;
mod gap;
mod instruction;
mod parse;
#[cfg(test)]
mod tests;

pub use apply::{Applied, Beside, NotHeld, apply_leading, question_of};
pub(super) use figures::{begins_with_quantity, limits};
pub use fill::with_gap_filled;
pub use gap::Gap;
pub(super) use instruction::{is_instruction, orders_a_thing};
pub(super) use parse::is_signal_alone;
pub use parse::{leading, number_of_step, question_with_answers};

use crate::model::{Id, KitList, SafetyMessage, SignalWord};
use crate::units::{Measured, Range};

/// What a leading word makes of its line.
#[derive(Clone, Debug, PartialEq)]
enum Kind {
    Message(SignalWord),
    Read,
    Wait,
    Start,
    Ask,
    If(&'static str),
    Hold,
    Photo,
    Why,
    Later,
    Bring,
    Back,
}

/// A line with a leading word, in its parts; a part that is not said is empty.
#[derive(Clone, Debug, PartialEq)]
pub enum Leading {
    /// `warning: hazard; consequence; avoidance`.
    Message(SafetyMessage),
    /// `read: quantity limits (out: what then)`.
    Read {
        /// What is read.
        what: String,
        /// The accepted values.
        limits: Option<Range>,
        /// What to do when the value is out of them.
        out: String,
        /// What is done next: "read: 0 V, then shut the flap".
        then: String,
    },
    /// `wait 10 min`: nothing else is done meanwhile.
    Wait {
        /// How long at least.
        duration: Option<Measured>,
        /// How long at most.
        at_most: Option<Measured>,
        /// What else is said: `until it is cold`.
        words: String,
    },
    /// `start 10 min, before …`: other steps are done meanwhile.
    Start {
        /// How long.
        duration: Option<Measured>,
        /// Before what it must be over, in words.
        before: String,
        /// The step before which it must be over, where the words name one as `{step:ID}`.
        until: Option<Id>,
    },
    /// `ask: … ?`.
    Ask {
        /// The question.
        question: String,
    },
    /// `if yes: …` or `if no: …` below a question.
    If {
        /// The answer.
        answer: String,
        /// What is done on it.
        words: String,
    },
    /// `hold: role, what`.
    Hold {
        /// Who lifts it.
        role: String,
        /// What that person looks at.
        what: String,
    },
    /// `photo: …`.
    Photo {
        /// What is photographed.
        of: String,
    },
    /// `why: …`.
    Why {
        /// The reason for the step.
        reason: String,
    },
    /// `later: what, who`.
    Later {
        /// What is missing.
        what: String,
        /// Who finds it out.
        who: String,
    },
    /// `bring: …`.
    Bring {
        /// The list on which it stands, where its name tells.
        list: Option<KitList>,
        /// How many.
        quantity: u32,
        /// What is brought.
        name: String,
    },
    /// `back: …`: to be remembered for the way back.
    Back {
        /// What to remember.
        what: String,
    },
}

/// The text of one step: its sentence, and the lines with leading words below it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StepParts {
    /// The sentence; lines without a leading word are joined to it.
    pub sentence: String,
    /// The lines with leading words, in order.
    pub leading: Vec<Leading>,
}

/// Whether a line begins with a leading word by which it stays words if no step holds it: what it says is no
/// sentence. A wait says the same as a sentence, and a question that was put begins its step.
pub(super) fn stays_words(line: &str) -> bool {
    leading(line).is_some_and(|leading| !matches!(leading, Leading::Wait { .. } | Leading::Ask { .. }))
}

/// Splits the text of one step, typed or pasted over several lines.
pub fn parts_of_step(text: &str) -> StepParts {
    let mut parts = StepParts::default();
    for line in text.lines().map(str::trim).filter(|line| !line.is_empty()) {
        match leading(line) {
            Some(leading) => parts.leading.push(leading),
            None if parts.sentence.is_empty() => line.clone_into(&mut parts.sentence),
            None => {
                parts.sentence.push(' ');
                parts.sentence.push_str(line);
            }
        }
    }
    parts
}
