//! Where limits and demands come from, and demands that a document replaces.

use super::words::words;
use super::{CircuitKind, Date, Id, Rest, TestKind};
use crate::units::{Measured, Range};
use serde::{Deserialize, Serialize};

/// A standard, a maker's instruction or another paper that the document rests on.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Source {
    /// Identity, by which limits cite it.
    pub id: Id,
    /// Title.
    pub title: String,
    /// Who issues it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub publisher: String,
    /// Edition, for example `edition 4, March 2026`.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub edition: String,
    /// The first day on which the edition applies.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub valid_from: Option<Date>,
    /// The last day on which the edition applies.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub valid_to: Option<Date>,
    /// How far the writer trusts it, for example `seen`, `secondary`, `from memory`.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub mark: String,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

words! {
    /// What a kind of circuit or of test demands by default.
    Demand {
        /// The appliance is shut down first.
        ShutDown = "shut down",
        /// Isolators are locked.
        Lock = "lock",
        /// What is stored is released.
        Release = "release",
        /// Zero is proved.
        Prove = "prove",
        /// One reading of the proof.
        ProofReading = "proof reading",
        /// How long a proof holds.
        ProofLife = "life of the proof",
        /// How long to wait after isolating.
        Wait = "wait after isolating",
        /// What the section must hold when it is opened.
        Contents = "contents before opening",
        /// What must be done before the appliance starts.
        BeforeStart = "before start",
        /// A test after making.
        Test = "test",
        /// One limit of a test.
        TestLimit = "limit of a test",
    }
}

/// One demand of the tables that this document replaces, with the source that allows it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct DemandOverride {
    /// The demand that is replaced.
    pub demand: Demand,
    /// The kind of circuit whose demand it is, if it is one of a circuit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub kind: Option<CircuitKind>,
    /// The test that is replaced, or whose limit is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub test: Option<TestKind>,
    /// The reading whose limits are replaced, as its `what` says.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub reading: String,
    /// Circuits, sections, connections, components to which it is confined; all of the kind if empty.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub on: Vec<Id>,
    /// The test that takes its place.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub instead: Option<TestKind>,
    /// The limits that take its place.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub limits: Option<Range>,
    /// The duration that takes its place.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub duration: Option<Measured>,
    /// What takes its place, in words, for whoever approves the document.
    pub words: String,
    /// What allows it, in words.
    pub source: String,
    /// The entry of `sources` that it is in.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cites: Option<Id>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}
