//! Changing what a step holds beside its words: each change is one edit with a name.

use super::editor_store::EditorStore;
use procedures_schema::edit::Edit;
use procedures_schema::model::{Action, Id, Step};
use std::sync::Arc;

impl EditorStore {
    /// Changes a step as one entry of undo; keys in one field stay one.
    pub fn change_step(self, id: &Id, field: &str, change: impl FnOnce(&mut Step)) {
        let document = self.document_now();
        let Some(position) = document.position(id) else { return };
        let Some(before) = document.steps.get(position) else { return };
        let mut step = (**before).clone();
        change(&mut step);
        if step != **before {
            let label = format!("change step {}", position + 1);
            let group = format!("{field} of {id}");
            self.edit(&[Edit::SetStep { step: Arc::new(step) }], &label, Some(&group));
        }
    }

    /// Changes one action of a step.
    pub fn change_action(self, id: &Id, at: usize, field: &str, change: impl FnOnce(&mut Action)) {
        self.change_step(id, &format!("{field} of action {at}"), |step| {
            if let Some(action) = step.actions.get_mut(at) {
                change(action);
            }
        });
    }
}
