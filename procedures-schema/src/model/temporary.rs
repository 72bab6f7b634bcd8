//! Temporary items: hoses, caps, bonds, restraints, notices.

use super::{Id, Rest};
use serde::{Deserialize, Serialize};

#[expect(clippy::struct_excessive_bools, reason = "independent facts, each a field of the file")]
/// Something that is placed for the job and taken away again.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Temporary {
    /// Identity.
    pub id: Id,
    /// Name.
    pub name: String,
    /// Other names that writers use.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub aliases: Vec<String>,
    /// The connection on which it sits.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub on: Option<Id>,
    /// Whether it closes the open end on which it sits.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub closes: bool,
    /// The connection whose two sides it bonds electrically.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bonds: Option<Id>,
    /// The circuit whose movement it restrains.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub restrains: Option<Id>,
    /// The section through which it keeps inert gas flowing.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub flow: Option<Id>,
    /// The component with which it arrives, as transport protection.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub arrives_with: Option<Id>,
    /// Whether it warns others not to switch on or open.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub notice: bool,
    /// Whether it is a gauge.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub gauge: bool,
    /// Whether it is there when the job begins.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub initially: bool,
    /// Why it stays after the job, if it does.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stays: Option<String>,
    /// Images that show it, by id.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub images: Vec<Id>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

impl Temporary {
    /// An item of which nothing but its name is said.
    pub fn new(id: Id, name: &str) -> Self {
        Self {
            id,
            name: name.to_owned(),
            aliases: Vec::new(),
            on: None,
            closes: false,
            bonds: None,
            restrains: None,
            flow: None,
            arrives_with: None,
            notice: false,
            gauge: false,
            initially: false,
            stays: None,
            images: Vec::new(),
            rest: Rest::default(),
        }
    }
}
