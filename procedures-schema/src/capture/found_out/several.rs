//! Answers that come back from a job, taken one after the other as if they were typed.

use super::{NoAnswer, found_out};
use crate::edit::{Edit, apply};
use crate::model::{Found, Procedure};
use std::sync::Arc;

/// What comes of several answers.
#[derive(Clone, Debug, Default)]
pub struct Several {
    /// The edits of those that are taken, in their order: each is made for the state after the one before.
    pub edits: Vec<Edit>,
    /// Those that are not taken, and why.
    pub refused: Vec<(Found, NoAnswer)>,
}

/// Puts each answer where it was missing. One that is refused changes nothing for the others.
pub fn several_found_out(document: &Arc<Procedure>, found: &[Found]) -> Several {
    let mut several = Several::default();
    let mut now = document.clone();
    for found in found {
        let edit = found.place(&now).map_err(|reason| NoAnswer(reason.to_string()));
        let edit = edit.and_then(|place| found_out(&now, &place, &found.answer));
        let applied = edit.and_then(|edit| match apply(&now, &edit) {
            Ok(applied) => Ok((edit, applied.document)),
            Err(error) => Err(NoAnswer(error.to_string())),
        });
        match applied {
            Ok((edit, document)) => {
                several.edits.push(edit);
                now = document;
            }
            Err(reason) => several.refused.push((found.clone(), reason)),
        }
    }
    several
}
