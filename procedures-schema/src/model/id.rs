//! Identities of things, steps and documents.
//!
//! Ids never carry meaning and never change; names do both. The core makes none by itself: it asks an
//! [`IdSource`], random in the application, numbered in tests.

use serde::{Deserialize, Serialize};
use std::sync::Arc;

/// An identity: any text. It carries no meaning, never changes and is cheap to clone.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
#[serde(transparent)]
pub struct Id(Arc<str>);

impl Id {
    /// The identity with this text.
    pub fn new(text: &str) -> Self {
        Self(text.into())
    }

    /// Its text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl std::fmt::Display for Id {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.0)
    }
}

impl From<&str> for Id {
    fn from(text: &str) -> Self {
        Self::new(text)
    }
}

/// Where new identities come from.
pub trait IdSource {
    /// A new identity that begins with `hint`, for example `pump` gives `pump-3f9a2c`.
    fn next_id(&mut self, hint: &str) -> Id;
}

/// Numbered identities, for tests and for the command line.
#[derive(Clone, Debug, Default)]
pub struct NumberedIds {
    count: u32,
}

impl IdSource for NumberedIds {
    fn next_id(&mut self, hint: &str) -> Id {
        self.count += 1;
        Id::new(&format!("{hint}-{}", self.count))
    }
}
