//! Circuits, their sections, and the isolators between them.
//!
//! A *circuit* carries energy or a medium. It is cut into *sections* by *isolators*; state belongs to
//! sections, and whether one is live is worked out from the isolators on the way to a supply. A forgotten
//! second valve therefore has a name.

use super::words::words;
use super::{Id, Rest};
use crate::units::Measured;
use serde::{Deserialize, Serialize};

words! {
    /// What a circuit carries; decides what makes it safe, how that is proved and which tests follow.
    CircuitKind {
        /// Mains electricity.
        MainsElectricity = "mains electricity",
        /// Extra-low voltage or switched control wiring.
        ControlElectricity = "control electricity",
        /// Fuel gas.
        FuelGas = "fuel gas",
        /// Heating water of a closed system.
        HeatingWater = "heating water",
        /// Drinking water, cold or heated.
        DomesticWater = "domestic water",
        /// Flue-gas condensate.
        Condensate = "condensate",
        /// Combustion air and flue gas.
        AirAndFlue = "combustion air and flue",
        /// Heat in a store without a wet joint.
        StoredHeat = "stored heat",
        /// Refrigerant.
        Refrigerant = "refrigerant",
        /// Compressed air.
        CompressedAir = "compressed air",
        /// Steam.
        Steam = "steam",
        /// Fuel oil.
        Oil = "oil",
        /// Springs, weights, fans, rotating parts.
        StoredMotion = "stored mechanical energy",
        /// Primary side of a heat network.
        NetworkPrimary = "heat network primary",
        /// Direct-current bus with stored charge.
        DcBus = "d.c. bus",
    }
}

words! {
    /// What an isolator is worked by.
    Handle {
        /// A valve turned by hand.
        Valve = "valve",
        /// A switch.
        Switch = "switch",
        /// A plug in a socket.
        Plug = "plug",
        /// A fuse.
        Fuse = "fuse",
        /// Opened and shut by the appliance itself; open only while it runs.
        Automatic = "automatic",
        /// A relief device, shut unless it is lifted.
        Relief = "relief",
        /// A supply that cannot be shut here.
        None = "none",
    }
}

words! {
    /// Position of an isolator.
    Position {
        /// Lets through.
        Open = "open",
        /// Holds back.
        Closed = "closed",
    }
}

/// The side of an isolator from which a circuit is fed from outside the map.
pub const SUPPLY: &str = "supply";

/// A stretch of a circuit between isolators.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Section {
    /// Identity.
    pub id: Id,
    /// Name.
    pub name: String,
    /// How much it holds.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub volume: Option<Measured>,
    /// Whether it holds nothing in service, like a discharge pipe.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub normally_empty: bool,
    /// Images that show it, by id.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub images: Vec<Id>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

/// Something that carries energy or a medium.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Circuit {
    /// Identity.
    pub id: Id,
    /// Name.
    pub name: String,
    /// What it carries.
    pub kind: CircuitKind,
    /// Its sections, at least one.
    pub sections: Vec<Section>,
    /// Circuits without which this one is dead.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub fed_by: Vec<Id>,
    /// Nominal values in service, such as pressure or temperature.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub nominal: Vec<Measured>,
    /// Whether its medium burns or explodes with air.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub flammable: bool,
    /// Whether gas is mixed with air ahead of the burner, so that its burner side carries a mixture.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub premix: bool,
    /// How long stored charge takes to go after switching off, as its label says.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub discharge_wait: Option<Measured>,
    /// Images that show it, by id.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub images: Vec<Id>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

/// A valve, switch, plug or fuse between two sections, or between a section and a supply.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Isolator {
    /// Identity.
    pub id: Id,
    /// Name.
    pub name: String,
    /// Other names that writers use.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub aliases: Vec<String>,
    /// The two sides: ids of sections, or `supply` for what feeds from outside the map.
    pub between: (Id, Id),
    /// What it is worked by.
    pub handle: Handle,
    /// Position in service.
    #[serde(default = "open", skip_serializing_if = "is_open")]
    pub normal: Position,
    /// Whether a lock can be put on it, if that is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lockable: Option<bool>,
    /// The port that shows whether it lets by.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bleed: Option<Id>,
    /// Where it is.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub location: String,
    /// Images that show it, by id.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub images: Vec<Id>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

impl Section {
    /// A section of which nothing but its name is said.
    pub fn new(id: Id, name: &str) -> Self {
        Self {
            id,
            name: name.to_owned(),
            volume: None,
            normally_empty: false,
            images: Vec::new(),
            rest: Rest::default(),
        }
    }
}

impl Circuit {
    /// A circuit of one section.
    pub fn new(id: Id, name: &str, kind: CircuitKind, section: Section) -> Self {
        Self {
            id,
            name: name.to_owned(),
            kind,
            sections: vec![section],
            fed_by: Vec::new(),
            nominal: Vec::new(),
            flammable: false,
            premix: false,
            discharge_wait: None,
            images: Vec::new(),
            rest: Rest::default(),
        }
    }
}

impl Isolator {
    /// An isolator that is open in service.
    pub fn new(id: Id, name: &str, between: (Id, Id), handle: Handle) -> Self {
        Self {
            id,
            name: name.to_owned(),
            aliases: Vec::new(),
            between,
            handle,
            normal: Position::Open,
            lockable: None,
            bleed: None,
            location: String::new(),
            images: Vec::new(),
            rest: Rest::default(),
        }
    }
}

fn open() -> Position {
    Position::Open
}

fn is_open(position: &Position) -> bool {
    *position == Position::Open
}
