//! The document as plain data: a procedure, the map of the appliance, its steps and their actions.
//!
//! Fields are public and nothing derived is stored. Objects keep the fields that this version does not
//! know ([`Rest`]); words of closed lists keep values that this version does not know (their `Other`).
//! Whether what a document says makes sense is the checker's business, never an error here.

mod action;
mod circuit;
mod component;
mod connection;
mod date;
mod id;
mod known;
mod message;
mod procedure;
mod rest;
mod seal;
mod setting;
mod span;
mod step;
mod temporary;
mod verb;
mod words;

pub use action::{Action, Energy, Means, Mode, OnFail, Reading, Renewal, TestKind};
pub use circuit::{Circuit, CircuitKind, Handle, Isolator, Position, SUPPLY, Section};
pub use component::{Component, Role};
pub use connection::{Connection, Family, FreesWhen, Grouping, Port, SealUse, Size, Tight};
pub use date::{Date, DateError};
pub use id::{Id, IdSource, NumberedIds};
pub use known::Known;
pub use message::{SafetyMessage, SignalWord};
pub use procedure::{
    Aim, ApplianceMap, CensusAnswer, CensusEntry, FORMAT_VERSION, Goal, Procedure, ThingKind, Waiver,
};
pub use rest::Rest;
pub use seal::{Seal, SealPolicy};
pub use setting::Setting;
pub use span::Span;
pub use step::{Answer, Question, Stage, Step};
pub use temporary::Temporary;
pub use verb::Verb;
