//! A value that the writer has, or will have later.

use super::Rest;
use super::fault_path::fault_path;
use serde::de::{DeserializeOwned, Error};
use serde::{Deserialize, Deserializer, Serialize};
use serde_json::Value;

/// A value, or the explicit statement that somebody still has to find it out.
///
/// In files a value stands as itself and a missing one as `{"later": "who finds it out"}`. Nothing is
/// ever silently empty.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema), schemars(rename = "Known{T}"))]
#[serde(untagged)]
pub enum Known<T> {
    /// Not known yet.
    Later {
        /// Who finds it out, in words.
        later: String,
        /// Unknown fields.
        #[serde(flatten)]
        rest: Rest,
    },
    /// Known.
    Value(T),
}

impl<T> Known<T> {
    /// The statement that this person or place will know it.
    pub fn later(who: &str) -> Self {
        Self::Later { later: who.to_owned(), rest: Rest::default() }
    }

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

impl<'de, T: DeserializeOwned> Deserialize<'de> for Known<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        #[derive(Deserialize)]
        struct Later {
            later: String,
            #[serde(flatten)]
            rest: Rest,
        }
        // The key `later` decides, so that a fault inside the value is named and not "fits nothing".
        let value = Value::deserialize(deserializer)?;
        // From text again, because numbers of unknown fields keep their digits only on that way.
        let text = value.to_string();
        if value.get("later").is_some() {
            let Later { later, rest } = inner(&text)?;
            Ok(Self::Later { later, rest })
        } else {
            inner(&text).map(Self::Value)
        }
    }
}

/// Reads what stands inside; a fault says where inside, and the place in the file is added outside.
fn inner<T: DeserializeOwned, E: Error>(text: &str) -> Result<T, E> {
    serde_json::from_str(text).map_err(|error| {
        let whole = error.to_string();
        let message = whole.rfind(" at line ").and_then(|at| whole.get(..at)).unwrap_or(&whole);
        match fault_path(text, &error).as_str() {
            "." => E::custom(message),
            path => E::custom(format_args!("{path}: {message}")),
        }
    })
}
