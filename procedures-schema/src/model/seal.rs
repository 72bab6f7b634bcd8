//! Seals: washers, O-rings, gaskets, rope, thread sealant.

use super::words::words;
use super::{Id, Known, Rest};
use serde::{Deserialize, Serialize};

words! {
    /// What becomes of a seal when its joint has been open.
    SealPolicy {
        /// A new one every time.
        AlwaysRenew = "always renew",
        /// A new one unless the old one was inspected and found sound.
        RenewUnlessSound = "renew unless sound",
        /// There is none by design.
        NoneByDesign = "no seal by design",
    }
}

/// A seal of a joint or door.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Seal {
    /// Identity.
    pub id: Id,
    /// Name, for example `flat washer`.
    pub name: String,
    /// Other names that writers use.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub aliases: Vec<String>,
    /// Size in words of the trade.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub size: Option<Known<String>>,
    /// Material.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub material: String,
    /// What becomes of it.
    pub policy: SealPolicy,
    /// The number under which a new one is ordered.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub number: Option<Known<String>>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}
