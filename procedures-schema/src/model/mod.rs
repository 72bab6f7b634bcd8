//! The document as plain data: a procedure, the map of the appliance, its steps and their actions.
//!
//! Fields are public and nothing derived is stored. Objects keep the fields that this version does not
//! know ([`Rest`]); words of closed lists keep values that this version does not know (their `Other`).
//! Whether what a document says makes sense is the checker's business, never an error here.

mod action;
mod circuit;
mod component;
mod connection;
mod country;
mod date;
mod fault_path;
mod found;
mod id;
mod image;
mod kit;
mod known;
mod link;
mod listed;
mod message;
mod moment;
mod open_value;
mod own_phrase;
mod procedure;
mod references;
mod revision;
mod seal;
mod setting;
mod source;
mod span;
mod step;
mod temporary;
mod verb;
mod words;

pub use crate::units::Rest;
pub use action::{Action, Energy, Input, Means, Mode, OnFail, Reading, ReadingKind, Renewal, TestKind};
pub use circuit::{Circuit, CircuitKind, Handle, Isolator, Position, SUPPLY, Section};
pub use component::{Component, Material, Role};
pub use connection::{Connection, Family, FreesWhen, Grouping, Port, SealUse, Size, Tight};
pub use country::Country;
pub use date::{Date, DateError};
pub(crate) use fault_path::fault_path;
pub use found::{FOUND_VERSION, Found, FoundOnJob, FoundValue, NoPlace};
pub use id::{Id, IdSource, NumberedIds};
pub use image::Image;
pub use kit::{Consumable, Instrument, Kit, KitList, Protection, Spare, Tool};
pub use known::Known;
pub use link::{Relinked, StepLink, link_to, step_links, typed_over, with_links_named};
pub use listed::listed;
pub(crate) use listed::{a_new, is_plural};
pub use message::{SafetyMessage, SignalWord};
pub use moment::{Moment, MomentError};
pub use open_value::{OpenPlace, OpenValue, each_reading, open_values, readings};
pub use own_phrase::OwnPhrase;
pub use procedure::{
    Aim, ApplianceMap, CensusAnswer, CensusEntry, FORMAT_VERSION, Goal, Later, Procedure, ThingKind, Variant,
    Waiver,
};
pub use references::{Beside, References, names};
pub use revision::{Revision, SignOff, SignOffMeaning, SignedStep};
pub use seal::{Seal, SealPolicy};
pub use setting::Setting;
pub use source::{Demand, DemandOverride, Source};
pub use span::Span;
pub use step::{Answer, Question, Stage, Step};
pub use temporary::Temporary;
pub use verb::Verb;
