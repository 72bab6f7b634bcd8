//! Images that a document refers to. Their bytes live outside the document.

use super::{Id, Rest};
use serde::{Deserialize, Serialize};

/// A photograph or drawing: what it is, never the bytes themselves.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Image {
    /// Identity, by which steps and things show it.
    pub id: Id,
    /// SHA-256 of the bytes, as 64 lower-case hexadecimal digits; finds them and shows that they are whole.
    pub sha256: String,
    /// Media type: `image/jpeg`, `image/png`, `image/webp`.
    pub mime: String,
    /// Width in pixels.
    pub width: u32,
    /// Height in pixels.
    pub height: u32,
    /// What is to be seen, in words; read out to those who do not see it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub caption: String,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}
