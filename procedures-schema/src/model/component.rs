//! Components: things that come off or go on.

use super::words::words;
use super::{Id, Known, Rest};
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

words! {
    /// A material that asks for care.
    Material {
        /// Asbestos, or something old that may hold it.
        Asbestos = "asbestos suspected",
        /// Refractory ceramic fibre.
        CeramicFibre = "ceramic fibre",
        /// Mineral wool and other fibre that irritates.
        MineralFibre = "mineral fibre",
        /// Mercury.
        Mercury = "mercury",
        /// Lead.
        Lead = "lead",
        /// Acid or lye.
        Corrosive = "corrosive",
        /// Oil or grease that must not reach drains.
        Oil = "oil",
        /// Burns easily.
        Flammable = "flammable",
        /// Breaks easily.
        Brittle = "brittle",
        /// Cuts.
        SharpEdges = "sharp edges",
        /// Harmed by static charge.
        StaticSensitive = "static sensitive",
    }
}

/// A thing that comes off or goes on: a cover, a fan, a pump, a pipe, a bracket.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
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
    /// Circuits of stored motion that move it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub moved_by: Vec<Id>,
    /// Which way round it goes, for example `arrow towards the burner`.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub direction: String,
    /// Materials in it that ask for care.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub materials: Vec<Material>,
    /// The number under which a new one is ordered.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub number: Option<Known<String>>,
    /// Images that show it, by id.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub images: Vec<Id>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

impl Component {
    /// A component of which nothing but its name is said.
    pub fn new(id: Id, name: &str) -> Self {
        Self {
            id,
            name: name.to_owned(),
            aliases: Vec::new(),
            location: String::new(),
            role: None,
            mass: None,
            behind: Vec::new(),
            carried_by: None,
            held_in: None,
            starts_itself: false,
            moved_by: Vec::new(),
            direction: String::new(),
            materials: Vec::new(),
            number: None,
            images: Vec::new(),
            rest: Rest::default(),
        }
    }
}
