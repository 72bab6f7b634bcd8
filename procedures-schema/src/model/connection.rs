//! Connections: what is undone and made.

use super::words::words;
use super::{Id, Known, Rest};
use crate::units::{Measured, Range};
use serde::{Deserialize, Serialize};

words! {
    /// What a connection does.
    Family {
        /// Carries a medium or, as terminals, mains current.
        Joint = "joint",
        /// Only holds.
        Fixing = "fixing",
        /// Electrical plug or sensing tube; "unplug" is undo.
        Connector = "connector",
    }
}

words! {
    /// How several fasteners belong together.
    Grouping {
        /// One joint with several fasteners: one slack fastener opens it.
        Together = "together",
        /// Several like joints, each with its own seal.
        Each = "each",
    }
}

words! {
    /// When a connection lets go of what it holds.
    FreesWhen {
        /// When it is open.
        Open = "open",
        /// Already when it is slack: slots, keyholes.
        Slack = "slack",
    }
}

words! {
    /// A connection that is opened to drain, vent, test or sample, and holds no component.
    Port {
        /// Lets the medium out at the bottom.
        Drain = "drain",
        /// Lets air in or out at the top.
        Vent = "vent",
        /// A tap of the system.
        Outlet = "outlet",
        /// A pressure test nipple.
        Test = "test",
        /// A sampling hole of a flue or air duct.
        Sample = "sample",
        /// A filling connection.
        Fill = "fill",
        /// A service valve of a refrigerant circuit.
        Service = "service",
    }
}

/// Size of a connection and of the tool it takes.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Size {
    /// Thread as the trade writes it: `M6`, `M10 x 1`, `G 1 1/2` (ISO 228-1).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thread: Option<String>,
    /// Outside diameter of a tube (EN 1057).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tube: Option<Measured>,
    /// Width across flats.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub across_flats: Option<Measured>,
    /// Terminal or plug, for example `6.3 mm blade`, `ferrule 2.5 mm²`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub terminal: Option<String>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

impl std::fmt::Display for Size {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let tube = self.tube.as_ref().map(|tube| format!("{tube} tube"));
        let flats = self.across_flats.as_ref().map(ToString::to_string);
        let parts: Vec<String> =
            self.thread.clone().into_iter().chain(tube).chain(flats).chain(self.terminal.clone()).collect();
        f.write_str(&parts.join(" · "))
    }
}

/// How tight a connection is made.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Tight {
    /// Torque range.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub torque: Option<Range>,
    /// Torques of the passes before the last one, rising.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub passes: Vec<Measured>,
    /// Pattern of several fasteners, for example `cross`.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub pattern: String,
    /// What is put on the thread, for example `dry`, `copper paste`.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub lubrication: String,
    /// When it is tightened again after the first making: `hot` or `cold`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub again: Option<String>,
    /// Another method in words, for example `hand tight and a quarter turn`, `clip`, `finger`.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub method: String,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

/// A seal in a connection and how many of it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct SealUse {
    /// The seal.
    pub seal: Id,
    /// How many: for the whole connection if its fasteners belong together, per one if each.
    #[serde(default = "one", skip_serializing_if = "is_one")]
    pub quantity: u32,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

/// What is undone and made: a joint, a fixing, a connector.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Connection {
    /// Identity.
    pub id: Id,
    /// Name.
    pub name: String,
    /// Other names that writers use.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub aliases: Vec<String>,
    /// What it does.
    pub family: Family,
    /// The components that it joins; one end outside the map is simply absent.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub joins: Vec<Id>,
    /// The section whose medium or current goes through it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub section: Option<Id>,
    /// How many fasteners, or like joints.
    #[serde(default = "one", skip_serializing_if = "is_one")]
    pub count: u32,
    /// How several belong together.
    #[serde(default = "together", skip_serializing_if = "is_together")]
    pub grouping: Grouping,
    /// Size.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub size: Option<Known<Size>>,
    /// Seals.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub seals: Vec<SealUse>,
    /// How tight it is made.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tight: Option<Known<Tight>>,
    /// When it lets go.
    #[serde(default = "when_open", skip_serializing_if = "is_when_open")]
    pub frees_when: FreesWhen,
    /// Whether it may stay made while its part is moved aside; the family decides if absent.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub flexible: Option<bool>,
    /// What it is opened for, if it is a port.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub port: Option<Port>,
    /// Whether its two sides must be bonded electrically before it opens.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub bond: bool,
    /// Connections with which it may be confused.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub looks_like: Vec<Id>,
    /// What must be out of the way to reach it, if that is not what its parts are behind.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reached_after: Option<Vec<Id>>,
    /// Images that show it, by id.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub images: Vec<Id>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

impl Connection {
    /// A single connection with defaults everywhere.
    pub fn new(id: Id, name: &str, family: Family) -> Self {
        Self {
            id,
            name: name.to_owned(),
            aliases: Vec::new(),
            family,
            joins: Vec::new(),
            section: None,
            count: one(),
            grouping: together(),
            size: None,
            seals: Vec::new(),
            tight: None,
            frees_when: when_open(),
            flexible: None,
            port: None,
            bond: false,
            looks_like: Vec::new(),
            reached_after: None,
            images: Vec::new(),
            rest: Rest::default(),
        }
    }
}

fn one() -> u32 {
    1
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "serde asks for a reference")]
fn is_one(count: &u32) -> bool {
    *count == 1
}

fn together() -> Grouping {
    Grouping::Together
}

fn is_together(grouping: &Grouping) -> bool {
    *grouping == Grouping::Together
}

fn when_open() -> FreesWhen {
    FreesWhen::Open
}

fn is_when_open(frees: &FreesWhen) -> bool {
    *frees == FreesWhen::Open
}
