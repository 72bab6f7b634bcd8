//! Applying an edit.

use super::Edit;
use super::merge::merge;
use super::rename::rename;
use super::replace::replace;
use super::split::{Splitting, split};
use crate::model::{Id, Procedure};
use std::sync::Arc;

/// A document after an edit, and the steps that the edit touched.
#[derive(Clone, Debug, PartialEq)]
pub struct Applied {
    /// The new document.
    pub document: Arc<Procedure>,
    /// Steps that were added, changed, moved or taken out.
    pub touched: Vec<Id>,
}

/// Why an edit cannot be applied. The document stays as it was.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum EditError {
    /// There is no step with this id.
    NoSuchStep(Id),
    /// There is a step with this id already.
    StepThereAlready(Id),
    /// The position is beyond the end.
    NoSuchPosition {
        /// The position asked for.
        at: usize,
        /// How many steps there are.
        n_steps: usize,
    },
    /// The map holds no thing with this id.
    NoSuchThing(Id),
    /// The new name is empty.
    NameEmpty,
    /// Another thing of the map goes by this name already.
    NameTaken {
        /// The name asked for.
        name: String,
        /// The name of the other thing; the one asked for may be an alias of it.
        by: String,
    },
    /// There is a thing with this id already.
    ThingThereAlready(Id),
    /// Two things cannot be one, or one cannot be two.
    CannotBe(String),
    /// What is to replace the document is not a state of it; its title.
    AnotherDocument(String),
    /// Two things differ, and nobody has said which of the two holds; the fields.
    Undecided(Vec<&'static str>),
}

impl std::fmt::Display for EditError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::NoSuchStep(id) => write!(f, "there is no step \"{id}\" any more"),
            Self::StepThereAlready(id) => write!(f, "there is a step \"{id}\" already"),
            Self::NoSuchPosition { at, n_steps } => {
                write!(f, "position {} is beyond the {n_steps} steps there are", at + 1)
            }
            Self::NoSuchThing(id) => write!(f, "the appliance map has no \"{id}\" any more"),
            Self::NameEmpty => write!(f, "the name is empty: type what the trade calls the thing"),
            Self::NameTaken { name, by } if name.eq_ignore_ascii_case(by) => {
                write!(f, "another thing is called \"{by}\" already: choose a name that tells them apart")
            }
            Self::ThingThereAlready(id) => write!(f, "the appliance map has a \"{id}\" already"),
            Self::CannotBe(reason) => f.write_str(reason),
            Self::AnotherDocument(title) => write!(f, "\"{title}\" is another procedure"),
            Self::Undecided(fields) => {
                write!(f, "the two differ: choose what holds for {}", fields.join(", "))
            }
            Self::NameTaken { name, by } => {
                write!(f, "\"{name}\" is another name of the {by} already: choose one that tells them apart")
            }
        }
    }
}

impl std::error::Error for EditError {}

/// Applies one edit.
///
/// # Errors
/// If the edit names a step or thing that is not there, adds a step that is, names a position beyond the
/// end, gives a thing no name or that of another, makes one of two things that cannot be one, or replaces the
/// document by another one.
pub fn apply(document: &Arc<Procedure>, edit: &Edit) -> Result<Applied, EditError> {
    let mut next = (**document).clone();
    let find = |id: &Id| document.position(id).ok_or_else(|| EditError::NoSuchStep(id.clone()));
    let touched = match edit {
        Edit::SetTitle(title) => {
            next.title.clone_from(title);
            Vec::new()
        }
        Edit::InsertStep { at, step } => {
            if document.position(&step.id).is_some() {
                return Err(EditError::StepThereAlready(step.id.clone()));
            }
            within(*at, next.steps.len())?;
            next.steps.insert(*at, step.clone());
            vec![step.id.clone()]
        }
        Edit::RemoveStep { step } => {
            next.steps.remove(find(step)?);
            vec![step.clone()]
        }
        Edit::MoveStep { step, to } => {
            let from = find(step)?;
            within(*to, next.steps.len().saturating_sub(1))?;
            let moved = next.steps.remove(from);
            next.steps.insert(*to, moved);
            vec![step.clone()]
        }
        Edit::SetStep { step } => {
            let at = find(&step.id)?;
            if let Some(place) = next.steps.get_mut(at) {
                *place = step.clone();
            }
            vec![step.id.clone()]
        }
        Edit::SetScope(scope) => {
            scope.write(&mut next);
            Vec::new()
        }
        Edit::SetMap(map) => {
            next.map = map.clone();
            Vec::new()
        }
        Edit::Replace(other) => replace(&mut next, other)?,
        Edit::Rename { thing, name, in_words } => rename(&mut next, thing, name, *in_words)?,
        Edit::Merge { keep, gone, choices } => merge(&mut next, keep, gone, choices)?,
        Edit::Split { thing, new, name, steps, in_words } => {
            split(&mut next, &Splitting { thing, new, name, steps, in_words: *in_words })?
        }
    };
    Ok(Applied { document: Arc::new(next), touched })
}

fn within(at: usize, last: usize) -> Result<(), EditError> {
    if at <= last { Ok(()) } else { Err(EditError::NoSuchPosition { at, n_steps: last }) }
}
