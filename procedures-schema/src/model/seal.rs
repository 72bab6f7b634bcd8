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
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
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
    /// Why it may be used again, or why there is none by design.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub reason: String,
    /// Images that show it, by id.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub images: Vec<Id>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

impl Seal {
    /// A seal of which nothing but its policy is said.
    pub fn new(id: Id, name: &str, policy: SealPolicy) -> Self {
        Self {
            id,
            name: name.to_owned(),
            aliases: Vec::new(),
            size: None,
            material: String::new(),
            policy,
            number: None,
            reason: String::new(),
            images: Vec::new(),
            rest: Rest::default(),
        }
    }
}
