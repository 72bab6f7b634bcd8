//! Who changed a document, when and why, and who has signed it.

use super::words::words;
use super::{Date, Id, Moment, Rest};
use serde::{Deserialize, Serialize};

/// One issue of the document.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Revision {
    /// Its mark: `A`, `3`, `2026-2`.
    pub revision: String,
    /// When it was issued.
    pub date: Date,
    /// Who wrote it.
    pub author: String,
    /// Why the document was changed; for the first issue, why it was written.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub reason: String,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

words! {
    /// What somebody means by signing.
    SignOffMeaning {
        /// They wrote it.
        Written = "written",
        /// They compared it with the sources.
        Reviewed = "reviewed",
        /// They followed it on the appliance.
        WalkedThrough = "walked through",
        /// It may be used.
        Approved = "approved",
        /// It may no longer be used.
        Withdrawn = "withdrawn",
    }
}

/// The hash of one step at the time of signing, so that a later change shows step by step.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct SignedStep {
    /// The step.
    pub step: Id,
    /// SHA-256 of the canonical form (RFC 8785) of its object, as 64 lower-case hexadecimal digits.
    pub sha256: String,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

/// A signature, detached: it covers the document without its sign-offs.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct SignOff {
    /// What is meant by it.
    pub meaning: SignOffMeaning,
    /// Who signs.
    pub name: String,
    /// In which role.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub role: String,
    /// When, by the clock of the device.
    pub time: Moment,
    /// The revision that was signed.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub revision: String,
    /// SHA-256 of the canonical form (RFC 8785) of the document without `sign_offs`.
    pub sha256: String,
    /// The same of each step, in order.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub steps: Vec<SignedStep>,
    /// The public key (Ed25519, RFC 8032), base64url without padding; empty for a name without a key.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub key: String,
    /// The signature over this object without `signature`, base64url without padding.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub signature: String,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}
