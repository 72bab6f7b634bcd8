//! The edits there are.

use super::{Choice, Scope};
use crate::model::{ApplianceMap, Id, Procedure, Step};
use std::sync::Arc;

/// One change of a document.
#[derive(Clone, Debug, PartialEq)]
pub enum Edit {
    /// Changes the title.
    SetTitle(String),
    /// Inserts a step before position `at`.
    InsertStep {
        /// Position, 0 to the number of steps.
        at: usize,
        /// The new step; its id must be new.
        step: Arc<Step>,
    },
    /// Takes a step out.
    RemoveStep {
        /// Which.
        step: Id,
    },
    /// Moves a step so that it stands at position `to`.
    MoveStep {
        /// Which.
        step: Id,
        /// Its position afterwards.
        to: usize,
    },
    /// Replaces the step that has the same id.
    SetStep {
        /// The step as it shall be.
        step: Arc<Step>,
    },
    /// Replaces what the document says of itself.
    SetScope(Box<Scope>),
    /// Replaces the appliance map.
    SetMap(Arc<ApplianceMap>),
    /// Brings another state of the same document in its place, such as an earlier version.
    Replace(Arc<Procedure>),
    /// Gives a thing of the map another name.
    Rename {
        /// Which.
        thing: Id,
        /// Its new name; blanks around it are dropped.
        name: String,
        /// Whether the words of the steps follow. Spans go with the words: one that held the old name holds
        /// the new one.
        in_words: bool,
    },
    /// Makes one of two things of a kind: whatever names the second names the first. The words stay, and the
    /// names of the second become other names of the first.
    Merge {
        /// The thing that stays.
        keep: Id,
        /// The thing that goes.
        gone: Id,
        /// What holds where the two differ; see [`differences`](super::differences).
        choices: Vec<Choice>,
    },
    /// Makes two of one thing: some steps name a copy of it. What the map says of other things stays.
    Split {
        /// Which.
        thing: Id,
        /// The identity of the copy.
        new: Id,
        /// The name of the copy; blanks around it are dropped.
        name: String,
        /// The steps that name the copy from now on.
        steps: Vec<Id>,
        /// Whether the words of those steps follow.
        in_words: bool,
    },
}
