//! Steps: one instruction in plain words, with the typed reading of it.

use super::words::words;
use super::{Action, Id, Rest, SafetyMessage};
use serde::{Deserialize, Serialize};

words! {
    /// Part of a job.
    Stage {
        /// Papers, parts, tools, people.
        Prepare = "prepare",
        /// From running to proved safe to touch.
        MakeSafe = "make safe",
        /// Taking apart.
        Strip = "strip",
        /// Work on what is off.
        BenchWork = "bench work",
        /// Putting back.
        Refit = "refit",
        /// Bringing back energy and media, and testing.
        Recommission = "recommission",
        /// Giving the appliance back.
        HandOver = "hand over",
    }
}

/// Something found out on the job, with its possible answers.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Question {
    /// Identity.
    pub id: Id,
    /// The question in words.
    pub words: String,
    /// Two to five answers. Where an inspection puts the question, the first says that all is well.
    #[serde(default = "yes_or_no", skip_serializing_if = "is_yes_or_no")]
    pub answers: Vec<String>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

fn yes_or_no() -> Vec<String> {
    vec!["yes".to_owned(), "no".to_owned()]
}

fn is_yes_or_no(answers: &Vec<String>) -> bool {
    *answers == yes_or_no()
}

/// One answer to a question.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Answer {
    /// The question.
    pub question: Id,
    /// The answer to it.
    pub answer: String,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

impl Answer {
    /// This answer to this question.
    pub fn new(question: Id, answer: &str) -> Self {
        Self { question, answer: answer.to_owned(), rest: Rest::default() }
    }
}

/// One instruction.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Step {
    /// Identity.
    pub id: Id,
    /// The part of the job that it belongs to.
    pub stage: Stage,
    /// The instruction as plain text; `{step:ID}` in it stands for the number of that step.
    pub words: String,
    /// Why it is done, if that helps.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub why: String,
    /// Safety messages, read before the step is done.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub messages: Vec<SafetyMessage>,
    /// What the words mean, in order.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub actions: Vec<Action>,
    /// The answers on which this step is done; always, if empty.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub when: Vec<Answer>,
    /// How many people it takes, if more than one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub people: Option<u32>,
    /// The variants for which it is done, by id; for all, if empty.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub variants: Vec<Id>,
    /// Images that show it, by id.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub images: Vec<Id>,
    /// Readings of the words that the writer has declined.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub declined: Vec<String>,
    /// What to remember when what it takes apart goes back.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub back: String,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

impl Step {
    /// A step with words and nothing else.
    pub fn new(id: Id, stage: Stage, words: &str) -> Self {
        Self {
            id,
            stage,
            words: words.to_owned(),
            why: String::new(),
            messages: Vec::new(),
            actions: Vec::new(),
            when: Vec::new(),
            people: None,
            variants: Vec::new(),
            images: Vec::new(),
            declined: Vec::new(),
            back: String::new(),
            rest: Rest::default(),
        }
    }

    /// The steps that follow its failed tests, those that follow theirs left out.
    pub fn after_failures(&self) -> impl Iterator<Item = &Self> {
        self.actions.iter().filter_map(|action| action.on_fail.as_ref()).flat_map(|on_fail| &on_fail.steps)
    }

    /// As [`Step::after_failures`], to be changed.
    pub fn after_failures_mut(&mut self) -> impl Iterator<Item = &mut Self> {
        let on_fail = self.actions.iter_mut().filter_map(|action| action.on_fail.as_mut());
        on_fail.flat_map(|on_fail| &mut on_fail.steps)
    }

    /// The step itself, then every step that follows a failed test of it, those that follow theirs among them.
    pub fn with_after_failures(&self) -> Vec<&Self> {
        let mut found = vec![self];
        let mut next = 0;
        while let Some(step) = found.get(next).copied() {
            found.extend(step.after_failures());
            next += 1;
        }
        found
    }
}
