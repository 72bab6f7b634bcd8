//! Changing what a step holds beside its words: each change is one edit with a name.

use super::editor_store::EditorStore;
use procedures_schema::capture::{restate, restate_seal};
use procedures_schema::edit::Edit;
use procedures_schema::model::{Action, Id, Step};
use procedures_schema::units::Range;
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

    /// Changes one action of a step; where its words say a torque or limits that are set otherwise, they follow, and
    /// what is set of its seal they say too.
    pub fn change_action(self, id: &Id, at: usize, field: &str, change: impl FnOnce(&mut Action)) {
        let map = self.document_now().map.clone();
        self.change_step(id, &format!("{field} of action {at}"), |step| {
            let Some(action) = step.actions.get_mut(at) else { return };
            let before = action.clone();
            change(action);
            let figures = changed_figures(&before, action);
            for (old, new) in figures {
                restate(step, at, &old, &new);
            }
            restate_seal(step, at, before.seal.as_ref(), &map);
        });
    }
}

/// The torque and the limits that an action had and has otherwise now.
fn changed_figures(before: &Action, now: &Action) -> Vec<(Range, Range)> {
    let limits = before.readings.iter().zip(&now.readings).map(|(before, now)| (&before.limits, &now.limits));
    let all = std::iter::once((&before.torque, &now.torque)).chain(limits);
    let both = all.filter_map(|(before, now)| before.clone().zip(now.clone()));
    both.filter(|(before, now)| before != now).collect()
}
