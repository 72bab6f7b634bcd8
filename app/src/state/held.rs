//! Steps that are held: moved on the screen, with lanes and verdict as after the drop, and not yet in the document.
//!
//! While something is held, every view reads the document as it would be. Whatever else is done drops it first,
//! so nothing is ever done to a document that is not there; putting it back leaves no trace in undo.

use super::attention::Focus;
use super::editor_store::EditorStore;
use super::judged::Counts;
use leptos::prelude::*;
use procedures_schema::derive::carry::called;
use procedures_schema::edit::{Edit, apply};
use procedures_schema::model::{Id, Procedure};
use std::sync::Arc;

/// What is held, and where.
#[derive(Clone)]
pub struct Held {
    /// The steps in their order.
    pub steps: Vec<Id>,
    /// The position of the first in the document.
    pub from: usize,
    /// The position it would have.
    pub to: usize,
    /// The document as it would be.
    pub(super) document: Arc<Procedure>,
    /// What is found without the move.
    found: Counts,
}

impl Held {
    /// The edits that move the steps.
    fn edits(&self) -> Vec<Edit> {
        moves(&self.steps, self.from, self.to)
    }
}

/// Moves steps that stand one after the other, from one position of the first to another.
pub(super) fn moves(steps: &[Id], from: usize, to: usize) -> Vec<Edit> {
    let last = to + steps.len().saturating_sub(1);
    let place = |offset: usize| if to > from { last } else { to + offset };
    let moved = steps.iter().enumerate();
    moved.map(|(offset, step)| Edit::MoveStep { step: step.clone(), to: place(offset) }).collect()
}

impl EditorStore {
    /// What is held.
    pub fn held(self) -> ReadSignal<Option<Held>> {
        self.parts().held.read_only()
    }

    /// Whether something is held.
    pub fn is_holding(self) -> bool {
        self.parts().held.with_untracked(Option::is_some)
    }

    /// What the move would change in what is found, as `+1 rejects, +1 doubt`; none while nothing is held.
    pub fn held_change(self) -> Memo<Option<String>> {
        let (held, judged) = (self.parts().held, self.judged());
        Memo::new(move |_| {
            let before = held.with(|held| held.as_ref().map(|held| held.found))?;
            Some(judged.with(|judged| judged.counts()).since(before))
        })
    }

    /// Takes the selected steps in hand, if they are not yet.
    fn take_in_hand(self) -> Option<Held> {
        if let Some(held) = self.parts().held.get_untracked() {
            return Some(held);
        }
        self.typing(false);
        let (document, steps) = (self.document_now(), self.selection().get_untracked());
        let from = steps.first().and_then(|step| document.position(step))?;
        let found = self.judged_now().counts();
        (!self.refuses()).then_some(Held { steps, from, to: from, document, found })
    }

    /// Holds the selected steps one place further up or down.
    pub(super) fn hold_by(self, by: isize) {
        if let Some(held) = self.take_in_hand()
            && let Some(to) = held.to.checked_add_signed(by)
        {
            self.hold(held, to);
            if let Some(selected) = self.selected_now() {
                self.look_at(Focus::Row(selected));
            }
        }
    }

    /// Holds the selected steps at a place, or the step itself, if it is none of them.
    pub(super) fn hold_at(self, step: &Id, to: usize) {
        if !self.is_holding() && !self.selection().get_untracked().contains(step) {
            self.entered(step);
        }
        if let Some(held) = self.take_in_hand() {
            self.hold(held, to);
        }
    }

    fn hold(self, mut held: Held, to: usize) {
        let document = self.session_document();
        let most = document.steps.len().saturating_sub(held.steps.len());
        held.to = to.min(most);
        let is_shown =
            self.parts().held.with_untracked(|shown| shown.as_ref().is_some_and(|s| s.to == held.to));
        if is_shown {
            return;
        }
        let moved = if held.to == held.from { Vec::new() } else { held.edits() };
        let moved =
            moved.iter().try_fold(document, |document, edit| apply(&document, edit).map(|a| a.document));
        // A step that has just gone cannot be held.
        let Ok(document) = moved else { return };
        held.document = document;
        self.parts().held.set(Some(held));
        self.spread();
        self.settle_soon(true);
    }

    /// Drops what is held where it is: now the document says so.
    pub fn drop_held(self) {
        let Some(held) = self.take_held() else { return };
        let label = format!("move {}", called(held.from, held.steps.len()));
        let is_moved = held.to != held.from && self.edit(&held.edits(), &label, None);
        if !is_moved {
            self.spread();
        }
        self.keep_in_sight();
    }

    /// Puts what is held back where it was.
    pub(super) fn put_held_back(self) {
        if self.take_held().is_some() {
            self.spread();
            self.settle_soon(false);
            self.keep_in_sight();
        }
    }

    /// What was held. Every row looks at that, so nothing is written where nothing is held.
    fn take_held(self) -> Option<Held> {
        let held = self.parts().held;
        if held.with_untracked(Option::is_none) { None } else { held.try_update(Option::take).flatten() }
    }

    fn keep_in_sight(self) {
        if let Some(selected) = self.selected_now() {
            self.look_at(Focus::Row(selected));
        }
    }

    /// Moves the selected steps together so that the first has this position.
    pub(super) fn move_selection_to(self, to: usize) {
        let (steps, document) = (self.selection().get_untracked(), self.document_now());
        let Some(from) = steps.first().and_then(|step| document.position(step)) else { return };
        let to = to.min(document.steps.len() - steps.len());
        let label = format!("move {}", called(from, steps.len()));
        if to != from && self.edit(&moves(&steps, from, to), &label, None) {
            self.keep_in_sight();
        }
    }

    /// Moves the selected steps together by one place.
    pub(super) fn move_selection(self, by: isize) {
        let (first, document) = (self.selection().get_untracked().into_iter().next(), self.document_now());
        let from = first.and_then(|first| document.position(&first));
        if let Some(to) = from.and_then(|from| from.checked_add_signed(by)) {
            self.move_selection_to(to);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::moves;
    use procedures_schema::edit::apply;
    use procedures_schema::model::{Id, Procedure, Stage, Step};
    use std::sync::Arc;
    use wasm_bindgen_test::wasm_bindgen_test;

    fn order_after(held: &[&str], from: usize, to: usize) -> String {
        let mut document = Procedure::new("p".into(), "P");
        document.steps =
            ["a", "b", "c", "d", "e"].map(|id| Arc::new(Step::new(id.into(), Stage::Strip, id))).to_vec();
        let steps: Vec<Id> = held.iter().map(|id| Id::new(id)).collect();
        let edits = moves(&steps, from, to);
        let moved = edits.iter().fold(Arc::new(document), |document, edit| {
            apply(&document, edit).expect("the edit applies").document
        });
        moved.steps.iter().map(|step| step.words.as_str()).collect()
    }

    #[wasm_bindgen_test]
    fn steps_that_move_together_keep_their_order() {
        assert_eq!(order_after(&["b", "c"], 1, 3), "adebc");
        assert_eq!(order_after(&["b", "c"], 1, 2), "adbce");
        assert_eq!(order_after(&["c", "d"], 2, 0), "cdabe");
        assert_eq!(order_after(&["e"], 4, 1), "aebcd");
        assert_eq!(order_after(&["a"], 0, 4), "bcdea");
    }
}
