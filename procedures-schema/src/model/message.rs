//! Safety messages.

use super::Rest;
use super::words::words;
use serde::{Deserialize, Serialize};

words! {
    /// Signal words of ANSI Z535.6, most severe first.
    SignalWord {
        /// Will result in death or serious injury if not avoided.
        Danger = "DANGER",
        /// Could result in death or serious injury if not avoided.
        Warning = "WARNING",
        /// Could result in minor or moderate injury if not avoided.
        Caution = "CAUTION",
        /// Concerns damage, not injury.
        Notice = "NOTICE",
    }
}

/// A safety message of a step: hazard, consequence, avoidance.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct SafetyMessage {
    /// The signal word.
    pub word: SignalWord,
    /// What is dangerous.
    pub hazard: String,
    /// What it does to people or things.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub consequence: String,
    /// How to avoid it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub avoidance: String,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}
