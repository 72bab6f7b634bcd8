//! Settings of a component, such as a pump's duty point.

use super::{Id, Rest, TestKind};
use serde::{Deserialize, Serialize};

/// A setting that must be as it was found, or as a test asks, at the end.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Setting {
    /// Identity.
    pub id: Id,
    /// Name.
    pub name: String,
    /// Other names that writers use.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub aliases: Vec<String>,
    /// The component that it belongs to.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub of: Option<Id>,
    /// The circuit that must be live to read it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub readable_when: Option<Id>,
    /// The tests that a change of it makes stale.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub affects: Vec<TestKind>,
    /// Whether it is in a menu, so that nothing has to be out of the way to reach it.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub in_menu: bool,
    /// Images that show it, by id.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub images: Vec<Id>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

impl Setting {
    /// A setting of which nothing but its name is said.
    pub fn new(id: Id, name: &str) -> Self {
        Self {
            id,
            name: name.to_owned(),
            aliases: Vec::new(),
            of: None,
            readable_when: None,
            affects: Vec::new(),
            in_menu: false,
            images: Vec::new(),
            rest: Rest::default(),
        }
    }
}
