//! Building a step's sentence together with its actions, so that each action knows its words.

use crate::model::{Action, Id, Span, Stage, Step};

/// A sentence in the making.
pub(super) struct Sentence {
    words: String,
    actions: Vec<Action>,
}

impl Sentence {
    pub(super) fn new() -> Self {
        Self { words: String::new(), actions: Vec::new() }
    }

    /// Adds words that say this action.
    pub(super) fn say(mut self, words: &str, mut action: Action) -> Self {
        let from = self.length();
        self.words.push_str(words);
        action.says = vec![Span(from, self.length())];
        self.actions.push(action);
        self
    }

    /// Adds words that say nothing typed.
    pub(super) fn add(mut self, words: &str) -> Self {
        self.words.push_str(words);
        self
    }

    /// The step.
    pub(super) fn step(self, id: Id, stage: Stage) -> Step {
        Step { actions: self.actions, ..Step::new(id, stage, &self.words) }
    }

    fn length(&self) -> u32 {
        // A ready-made sentence is a line long.
        u32::try_from(self.words.chars().count()).unwrap_or(u32::MAX)
    }
}
