//! Findings: what is wrong, where, why, and what mends it.

use crate::model::{Id, Span};

/// How serious a finding is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Level {
    /// Rejects the document.
    Reject,
    /// Must be mended or waived with a reason.
    Warn,
    /// A hint.
    Advise,
}

impl Level {
    /// The level as a word.
    pub fn word(self) -> &'static str {
        match self {
            Self::Reject => "reject",
            Self::Warn => "warn",
            Self::Advise => "advise",
        }
    }
}

/// One state that led to a finding.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Because {
    /// The state in words.
    pub text: String,
    /// The step since which it is so; none if it was so from the start.
    pub step: Option<Id>,
}

/// One thing that is wrong.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Finding {
    /// The code of the rule.
    pub code: &'static str,
    /// How serious it is.
    pub level: Level,
    /// The step where it shows first, or where an omission is to be mended.
    pub step: Option<Id>,
    /// The action of that step, by position.
    pub action: Option<usize>,
    /// The words concerned.
    pub span: Option<Span>,
    /// The circuit whose lane shows it.
    pub circuit: Option<Id>,
    /// The thing of the map that says too little, or something wrong, where that is mended on the map and not in a step.
    pub thing: Option<Id>,
    /// What is wrong: one clause that names step and thing.
    pub title: String,
    /// States that led to it.
    pub because: Vec<Because>,
    /// What to do.
    pub remedy: Vec<String>,
    /// Codes of other findings with the same cause.
    pub also: Vec<String>,
    /// Later steps that meet the same cause.
    pub again: Vec<Id>,
    /// The answers that lead to it, in words; none if it is so on every way.
    pub answers: Vec<String>,
}

impl Finding {
    /// The same, mended at a thing of the map.
    pub(super) fn of_thing(mut self, thing: &Id) -> Self {
        self.thing = Some(thing.clone());
        self
    }
}
