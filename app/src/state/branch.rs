//! Rows below a question: what is typed behind a row that is done on an answer is done on it too, until Enter on the
//! empty line leaves it.

use super::editor_store::EditorStore;
use super::lines::Line;
use leptos::prelude::*;
use procedures_schema::model::{Answer, Id, Procedure, Step};
use std::sync::Arc;

impl EditorStore {
    /// The answers on which the next step of a line is done; none, if it is always done.
    pub fn branch(self, line: Line, after: StoredValue<Option<Id>>) -> Memo<Vec<Answer>> {
        let (inside, document) = (self.parts().inside, self.document());
        Memo::new(move |_| {
            let Some(step) = inside.get() else { return Vec::new() };
            let after = after.get_value();
            document.with(|document| {
                let is_next = match line {
                    Line::Last => document.steps.last().is_some_and(|last| last.id == step),
                    Line::Below => after.as_ref() == Some(&step),
                };
                if is_next { when_of(document, &step) } else { Vec::new() }
            })
        })
    }

    /// The answers on which a new step at a position is done: those of the step before it, if writing goes on there.
    pub(super) fn branch_at(self, document: &Procedure, at: usize) -> Vec<Answer> {
        let before = at.checked_sub(1).and_then(|before| document.steps.get(before));
        let goes_on = |step: &&Arc<Step>| self.is_inside(step);
        before.filter(goes_on).map(|step| step.when.clone()).unwrap_or_default()
    }

    fn is_inside(self, step: &Step) -> bool {
        self.parts().inside.with_untracked(|inside| inside.as_ref() == Some(&step.id))
    }

    /// Goes on below a step that has just been kept: on its answers, if it is done on any.
    pub(super) fn go_into_branch(self, step: &Id) {
        let is_on_answer = !when_of(&self.document_now(), step).is_empty();
        self.parts().inside.set(is_on_answer.then(|| step.clone()));
    }

    /// Leaves the answer: the next step is done whatever was answered.
    pub fn leave_branch(self) {
        self.parts().inside.set(None);
    }
}

fn when_of(document: &Procedure, step: &Id) -> Vec<Answer> {
    let step = document.position(step).and_then(|at| document.steps.get(at));
    step.map(|step| step.when.clone()).unwrap_or_default()
}
