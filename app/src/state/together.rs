//! What a step that is kept and its neighbours tell together: proofs over several lines, readings that prove or test
//! something. It is one entry of undo with the step.

use procedures_schema::capture::told_together;
use procedures_schema::edit::{Edit, apply};
use procedures_schema::model::{Id, Procedure};
use std::sync::Arc;

/// Edits that keep a step, and those of the steps that change with it.
pub(super) fn with_neighbours(document: &Arc<Procedure>, mut edits: Vec<Edit>, step: &Id) -> Vec<Edit> {
    let mut kept = document.clone();
    for edit in &edits {
        match apply(&kept, edit) {
            Ok(applied) => kept = applied.document,
            // Whoever makes the edits is told why they cannot be made.
            Err(_) => return edits,
        }
    }
    if let Some(at) = kept.position(step) {
        let changed = told_together(&kept, at).into_iter();
        edits.extend(changed.map(|step| Edit::SetStep { step: Arc::new(step) }));
    }
    edits
}
