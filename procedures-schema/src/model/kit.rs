//! What to bring: tools, instruments, consumables, protective equipment, spares.
//!
//! Much of it follows from the map and the steps; here stands what the writer adds or says otherwise.

use super::words::words;
use super::{Id, Known, Rest};
use crate::units::{Measured, Range};
use serde::{Deserialize, Serialize};

/// A tool.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Tool {
    /// Identity.
    pub id: Id,
    /// Name.
    pub name: String,
    /// Size in words of the trade, for example `17 mm`, `T20`.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub size: String,
    /// What it can be set to, for a torque spanner.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub range: Option<Range>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

/// An instrument that readings are taken with.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Instrument {
    /// Identity, by which readings name it.
    pub id: Id,
    /// Name.
    pub name: String,
    /// What it can show.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub range: Option<Range>,
    /// The smallest difference that it shows.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub resolution: Option<Measured>,
    /// Other demands on it, for example `two-pole, IEC 61243-3`, `calibrated within 12 months`.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub demand: String,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

/// Something that is used up.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Consumable {
    /// Identity.
    pub id: Id,
    /// Name.
    pub name: String,
    /// How much.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub amount: Option<Measured>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

/// Protective equipment.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Protection {
    /// Identity.
    pub id: Id,
    /// Name.
    pub name: String,
    /// The class or standard that it must have.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub demand: String,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

/// A part to bring.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Spare {
    /// Identity.
    pub id: Id,
    /// Name.
    pub name: String,
    /// The number under which it is ordered, or who finds it out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub number: Option<Known<String>>,
    /// How many.
    #[serde(default = "one", skip_serializing_if = "is_one")]
    pub quantity: u32,
    /// The component, connection or seal that it is for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thing: Option<Id>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

words! {
    /// The lists of the kit.
    KitList {
        /// Tools.
        Tools = "tools",
        /// Instruments.
        Instruments = "instruments",
        /// Consumables.
        Consumables = "consumables",
        /// Protective equipment.
        Protection = "protection",
        /// Spares.
        Spares = "spares",
    }
}

/// What to bring, as far as the writer says it.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Kit {
    /// Tools.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub tools: Vec<Tool>,
    /// Instruments.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub instruments: Vec<Instrument>,
    /// Consumables.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub consumables: Vec<Consumable>,
    /// Protective equipment.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub protection: Vec<Protection>,
    /// Spares.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub spares: Vec<Spare>,
    /// Lists that are empty because nothing of theirs is needed, and not because nobody has thought of it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub none: Vec<KitList>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

impl Kit {
    /// Whether the writer says nothing about the kit.
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}

fn one() -> u32 {
    1
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "serde asks for a reference")]
fn is_one(count: &u32) -> bool {
    *count == 1
}
