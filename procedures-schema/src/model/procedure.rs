//! The document: scope, appliance map, steps.

use super::words::words;
use super::{
    Circuit, CircuitKind, Component, Connection, Id, Isolator, Question, Rest, Seal, Section, Setting, Step, Temporary,
};
use serde::{Deserialize, Serialize};
use std::sync::Arc;

/// The version of the format that this program writes.
pub const FORMAT_VERSION: u32 = 0;

words! {
    /// Whether a kind of circuit is on the appliance.
    CensusAnswer {
        /// It is here and the job touches it.
        Touched = "here, touched",
        /// It is here and the job leaves it alone.
        NotTouched = "here, not touched",
        /// The appliance has none.
        Absent = "not on this appliance",
    }
}

/// One line of the census of circuits.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CensusEntry {
    /// The kind asked for.
    pub kind: CircuitKind,
    /// The answer.
    pub answer: CensusAnswer,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

/// Everything of the appliance that the procedure touches.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct ApplianceMap {
    /// Circuits.
    #[serde(default)]
    pub circuits: Vec<Circuit>,
    /// Isolators.
    #[serde(default)]
    pub isolators: Vec<Isolator>,
    /// Components.
    #[serde(default)]
    pub components: Vec<Component>,
    /// Connections.
    #[serde(default)]
    pub connections: Vec<Connection>,
    /// Seals.
    #[serde(default)]
    pub seals: Vec<Seal>,
    /// Temporary items.
    #[serde(default)]
    pub temporary: Vec<Temporary>,
    /// Settings.
    #[serde(default)]
    pub settings: Vec<Setting>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

/// What the job is for.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Goal {
    /// What is to happen to it.
    pub aim: Aim,
    /// The component or seal.
    pub thing: Id,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

words! {
    /// What is to happen to the thing of a goal.
    Aim {
        /// A new one goes in.
        Renew = "renew",
        /// It is cleaned.
        Clean = "clean",
        /// It is inspected.
        Inspect = "inspect",
        /// It is reached.
        Reach = "reach",
    }
}

/// A warning that somebody has decided to accept.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Waiver {
    /// The code of the rule.
    pub code: String,
    /// The step, if it concerns one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub step: Option<Id>,
    /// Why.
    pub reason: String,
    /// Who.
    pub by: String,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

/// What sort of thing an id names.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ThingKind {
    /// A circuit.
    Circuit,
    /// A section of a circuit.
    Section,
    /// An isolator.
    Isolator,
    /// A component.
    Component,
    /// A connection.
    Connection,
    /// A seal.
    Seal,
    /// A temporary item.
    Temporary,
    /// A setting.
    Setting,
}

impl ApplianceMap {
    /// Everything that has a name, in the order of the file: kind, id, name, other names.
    pub fn things(&self) -> impl Iterator<Item = (ThingKind, &Id, &str, &[String])> {
        let none: &[String] = &[];
        self.circuits
            .iter()
            .map(move |c| (ThingKind::Circuit, &c.id, c.name.as_str(), none))
            .chain(self.sections().map(move |(_, s)| (ThingKind::Section, &s.id, s.name.as_str(), none)))
            .chain(
                self.isolators
                    .iter()
                    .map(|i| (ThingKind::Isolator, &i.id, i.name.as_str(), i.aliases.as_slice())),
            )
            .chain(
                self.components
                    .iter()
                    .map(|c| (ThingKind::Component, &c.id, c.name.as_str(), c.aliases.as_slice())),
            )
            .chain(
                self.connections
                    .iter()
                    .map(|c| (ThingKind::Connection, &c.id, c.name.as_str(), c.aliases.as_slice())),
            )
            .chain(self.seals.iter().map(|s| (ThingKind::Seal, &s.id, s.name.as_str(), s.aliases.as_slice())))
            .chain(
                self.temporary
                    .iter()
                    .map(|t| (ThingKind::Temporary, &t.id, t.name.as_str(), t.aliases.as_slice())),
            )
            .chain(
                self.settings
                    .iter()
                    .map(|s| (ThingKind::Setting, &s.id, s.name.as_str(), s.aliases.as_slice())),
            )
    }

    /// Every section with its circuit.
    pub fn sections(&self) -> impl Iterator<Item = (&Circuit, &Section)> {
        self.circuits.iter().flat_map(|c| c.sections.iter().map(move |s| (c, s)))
    }

    /// The name of a thing; its id where the map does not know it.
    pub fn name_of<'a>(&'a self, id: &'a Id) -> &'a str {
        self.things().find(|(_, known, ..)| *known == id).map_or(id.as_str(), |(_, _, name, _)| name)
    }

    /// The connection with this id.
    pub fn connection(&self, id: &Id) -> Option<&Connection> {
        self.connections.iter().find(|c| c.id == *id)
    }
}

/// One procedure.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Procedure {
    /// Version of the format; also the mark by which a file is known as ours.
    pub putback: u32,
    /// Identity.
    pub id: Id,
    /// Title.
    pub title: String,
    /// What the job is for.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub purpose: String,
    /// What the rating plate of the right appliance says.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub applies_to: String,
    /// Country whose practice the limits follow: `GB`, `IE`, `DE`, `US`, or `other`.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub country: String,
    /// Language of the words (BCP 47).
    #[serde(default = "english")]
    pub language: String,
    /// A remark on the whole document, for example that it is invented.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// The census of circuits.
    #[serde(default)]
    pub census: Vec<CensusEntry>,
    /// The appliance map.
    #[serde(default)]
    pub map: Arc<ApplianceMap>,
    /// What the job is for.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub goals: Vec<Goal>,
    /// Questions that are answered on the job.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub questions: Vec<Question>,
    /// Warnings that somebody has decided to accept.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub waivers: Vec<Waiver>,
    /// The steps in order.
    #[serde(default)]
    pub steps: Vec<Arc<Step>>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

fn english() -> String {
    "en".to_owned()
}

impl Procedure {
    /// An empty procedure.
    pub fn new(id: Id, title: &str) -> Self {
        Self {
            putback: FORMAT_VERSION,
            id,
            title: title.to_owned(),
            purpose: String::new(),
            applies_to: String::new(),
            country: String::new(),
            language: english(),
            note: String::new(),
            census: Vec::new(),
            map: Arc::default(),
            goals: Vec::new(),
            questions: Vec::new(),
            waivers: Vec::new(),
            steps: Vec::new(),
            rest: Rest::default(),
        }
    }

    /// The position of a step.
    pub fn position(&self, step: &Id) -> Option<usize> {
        self.steps.iter().position(|s| s.id == *step)
    }
}
