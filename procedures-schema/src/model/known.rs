//! A value that the writer has, or will have later.

use serde::{Deserialize, Serialize};

/// A value, or the explicit statement that somebody still has to find it out.
///
/// In files a value stands as itself and a missing one as `{"later": "who finds it out"}`. Nothing is
/// ever silently empty.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(untagged)]
pub enum Known<T> {
    /// Not known yet.
    Later {
        /// Who finds it out, in words.
        later: String,
    },
    /// Known.
    Value(T),
}

impl<T> Known<T> {
    /// The value, if it is known.
    pub fn value(&self) -> Option<&T> {
        match self {
            Self::Value(value) => Some(value),
            Self::Later { .. } => None,
        }
    }

    /// Whether somebody still has to find it out.
    pub fn is_later(&self) -> bool {
        matches!(self, Self::Later { .. })
    }
}
