//! The document: scope, appliance map, steps.

use super::link::with_links_named;
use super::words::words;
use super::{
    Circuit, CircuitKind, Component, Connection, Country, Date, DemandOverride, Id, Image, Isolator, Kit,
    OwnPhrase, Question, Rest, Revision, Seal, Section, Setting, SignOff, Source, Step, Temporary,
};
use serde::{Deserialize, Serialize};
use std::sync::Arc;

/// The version of the format that this program writes.
pub const FORMAT_VERSION: u32 = 1;

/// A variant of the appliance that some steps are for.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Variant {
    /// Identity.
    pub id: Id,
    /// Name.
    pub name: String,
    /// What its rating plate says.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub applies_to: String,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

/// Something that somebody still has to find out and that has no field of its own.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Later {
    /// What is missing.
    pub what: String,
    /// Who finds it out, in words.
    pub who: String,
    /// The thing of the map that it concerns, if it concerns one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thing: Option<Id>,
    /// The step that it concerns, if it concerns one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub step: Option<Id>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

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
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
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
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct ApplianceMap {
    /// Circuits.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub circuits: Vec<Circuit>,
    /// Isolators.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub isolators: Vec<Isolator>,
    /// Components.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub components: Vec<Component>,
    /// Connections.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub connections: Vec<Connection>,
    /// Seals.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub seals: Vec<Seal>,
    /// Temporary items.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub temporary: Vec<Temporary>,
    /// Settings.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub settings: Vec<Setting>,
    /// Words by which this procedure says a verb.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub phrases: Vec<OwnPhrase>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

/// What the job is for.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
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
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
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
    /// When.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub date: Option<Date>,
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

impl ThingKind {
    /// What a kind is called.
    pub fn word(self) -> &'static str {
        match self {
            Self::Circuit => "circuit",
            Self::Section => "section",
            Self::Isolator => "isolator",
            Self::Component => "component",
            Self::Connection => "connection",
            Self::Seal => "seal",
            Self::Temporary => "temporary item",
            Self::Setting => "setting",
        }
    }

    /// What the identity of one begins with: a single word, since identities stand in notation.
    pub fn hint(self) -> &'static str {
        self.word().split(' ').next().unwrap_or_default()
    }
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

    /// What sort of thing an id names, if the map knows it.
    pub fn thing_kind(&self, id: &Id) -> Option<ThingKind> {
        self.things().find(|(_, known, ..)| *known == id).map(|(kind, ..)| kind)
    }

    /// The name of a thing; its id where the map does not know it.
    pub fn name_of<'a>(&'a self, id: &'a Id) -> &'a str {
        self.things().find(|(_, known, ..)| *known == id).map_or(id.as_str(), |(_, _, name, _)| name)
    }

    /// The other names of a thing, to be changed; none for circuits and sections, which have one name each.
    pub fn aliases_mut(&mut self, id: &Id) -> Option<&mut Vec<String>> {
        macro_rules! of_lists {
            ($($list:ident)*) => {$(
                if let Some(thing) = self.$list.iter_mut().find(|thing| thing.id == *id) {
                    return Some(&mut thing.aliases);
                }
            )*};
        }
        of_lists!(isolators components connections seals temporary settings);
        None
    }

    /// The connection with this id.
    pub fn connection(&self, id: &Id) -> Option<&Connection> {
        self.connections.iter().find(|c| c.id == *id)
    }
}

/// One procedure.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
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
    /// The gases for which it holds, for example `G20`; not a question of gas, if empty.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub gases: Vec<String>,
    /// The country that it is written for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub country: Option<Country>,
    /// Language of the words (BCP 47).
    #[serde(default = "english")]
    pub language: String,
    /// A remark on the whole document, for example that it is invented.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// What whoever follows it must be competent or registered for, in words of the country.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub competence: Vec<String>,
    /// Variants of the appliance that some steps are for.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub variants: Vec<Variant>,
    /// The issues of the document, the latest last.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub revisions: Vec<Revision>,
    /// What limits and demands rest on.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub sources: Vec<Source>,
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
    /// What to bring, as far as the writer says it.
    #[serde(default, skip_serializing_if = "Kit::is_empty")]
    pub kit: Kit,
    /// Images that steps and things show.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub images: Vec<Image>,
    /// Demands of the tables that this document replaces.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub overrides: Vec<DemandOverride>,
    /// Warnings that somebody has decided to accept.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub waivers: Vec<Waiver>,
    /// What somebody still has to find out and that has no field of its own.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub later: Vec<Later>,
    /// The steps in order.
    #[serde(default)]
    pub steps: Vec<Arc<Step>>,
    /// Signatures over the document without this list.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub sign_offs: Vec<SignOff>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

fn english() -> String {
    "en".to_owned()
}

impl Procedure {
    /// The document without its steps and its map.
    pub(crate) fn head(&self) -> Self {
        Self { steps: Vec::new(), map: Arc::default(), ..self.clone() }
    }

    /// Whether everything but steps and map is the same.
    pub(crate) fn has_head_of(&self, other: &Self) -> bool {
        let Self {
            putback,
            id,
            title,
            purpose,
            applies_to,
            gases,
            country,
            language,
            note,
            competence,
            variants,
            revisions,
            sources,
            census,
            map: _,
            goals,
            questions,
            kit,
            images,
            overrides,
            waivers,
            later,
            steps: _,
            sign_offs,
            rest,
        } = self;
        let is_same_scope = *putback == other.putback
            && *id == other.id
            && *title == other.title
            && *purpose == other.purpose
            && *applies_to == other.applies_to
            && *gases == other.gases
            && *country == other.country
            && *language == other.language
            && *note == other.note
            && *competence == other.competence
            && *variants == other.variants;
        is_same_scope
            && *revisions == other.revisions
            && *sources == other.sources
            && *census == other.census
            && *goals == other.goals
            && *questions == other.questions
            && *kit == other.kit
            && *images == other.images
            && *overrides == other.overrides
            && *waivers == other.waivers
            && *later == other.later
            && *sign_offs == other.sign_offs
            && *rest == other.rest
    }

    /// An empty procedure.
    pub fn new(id: Id, title: &str) -> Self {
        Self {
            putback: FORMAT_VERSION,
            id,
            title: title.to_owned(),
            purpose: String::new(),
            applies_to: String::new(),
            gases: Vec::new(),
            country: None,
            language: english(),
            note: String::new(),
            competence: Vec::new(),
            variants: Vec::new(),
            revisions: Vec::new(),
            sources: Vec::new(),
            census: Vec::new(),
            map: Arc::default(),
            goals: Vec::new(),
            questions: Vec::new(),
            kit: Kit::default(),
            images: Vec::new(),
            overrides: Vec::new(),
            waivers: Vec::new(),
            later: Vec::new(),
            steps: Vec::new(),
            sign_offs: Vec::new(),
            rest: Rest::default(),
        }
    }

    /// What a link to a step is called: `step 12`, by the number that the step has now.
    pub fn link_name(&self, step: &str) -> String {
        match self.steps.iter().position(|known| known.id.as_str() == step) {
            Some(position) => format!("step {}", position + 1),
            None => "step ?".to_owned(),
        }
    }

    /// The words of a step as people read them, with its links by their numbers.
    pub fn words_of(&self, step: &Step) -> String {
        with_links_named(&step.words, |step| self.link_name(step))
    }

    /// The position of a step.
    pub fn position(&self, step: &Id) -> Option<usize> {
        self.steps.iter().position(|s| s.id == *step)
    }
}
