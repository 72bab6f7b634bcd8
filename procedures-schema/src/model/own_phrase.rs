//! Words by which one procedure says a verb.

use super::{Rest, Verb};
use serde::{Deserialize, Serialize};

/// Words by which this procedure says a verb, beside those by which every one may say it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct OwnPhrase {
    /// The words; `…` stands where others may come between: `knock … off`.
    pub words: String,
    /// What they say is done.
    #[serde(rename = "do")]
    pub verb: Verb,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

impl OwnPhrase {
    /// These words for this verb.
    pub fn new(words: &str, verb: Verb) -> Self {
        Self { words: words.to_owned(), verb, rest: Rest::default() }
    }

    /// Whether these are the words of it.
    pub fn is_called(&self, words: &str) -> bool {
        self.words.eq_ignore_ascii_case(words)
    }
}
