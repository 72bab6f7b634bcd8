//! Components: things that come off or go on.

use super::words::words;
use super::{Id, Rest};
use crate::units::Measured;
use serde::{Deserialize, Serialize};

words! {
    /// What a component does, where tests depend on it.
    Role {
        /// Burns.
        Burner = "burner",
        /// Moves air.
        Fan = "fan",
        /// Meters gas.
        GasValve = "gas valve",
        /// Heats electrically.
        Element = "element",
        /// Relieves pressure.
        Relief = "relief device",
    }
}

/// A thing that comes off or goes on: a cover, a fan, a pump, a pipe, a bracket.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Component {
    /// Identity.
    pub id: Id,
    /// Name.
    pub name: String,
    /// Other names that writers use.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub aliases: Vec<String>,
    /// Where it is.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub location: String,
    /// What it does, where tests depend on it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub role: Option<Role>,
    /// Mass without what it carries.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mass: Option<Measured>,
    /// Components that must be off or aside before this one can be reached.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub behind: Vec<Id>,
    /// The component with which this one comes off.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub carried_by: Option<Id>,
    /// The connection that lets this loose part out when it opens.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub held_in: Option<Id>,
    /// Whether it starts by itself when its supply comes back.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub starts_itself: bool,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}
