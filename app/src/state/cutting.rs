//! Leaving words otherwise than by keeping them: taking back what was typed, and cutting a step in two.

use super::editor_store::EditorStore;
use super::ids::RandomIds;
use leptos::prelude::{GetValue, SetValue};
use procedures_schema::edit::{Edit, part};
use procedures_schema::model::{Id, IdSource, typed_over};
use std::sync::Arc;

impl EditorStore {
    /// Puts back what a step was before the keyboard went into its words, and leaves them. Undo has it again.
    pub(super) fn take_back_typing(self, step: &Id) {
        let before = self.retyped().get_value().filter(|before| before.id == *step);
        let now = self.document_now();
        let position = now.position(step);
        if let (Some(before), Some(position)) = (before, position)
            && now.steps.get(position).is_some_and(|now| now.words != before.words)
        {
            self.close_group();
            let label = format!("take back the words typed in step {}", position + 1);
            self.retyped().set_value(None);
            self.edit(&[Edit::SetStep { step: before }], &label, None);
        }
        self.stop_editing();
    }

    /// Makes two steps of one, where the words as people read them begin with `head`; each part of what they
    /// mean goes with its words. Where nothing would stand on one side the words are left as they are.
    pub(super) fn cut_step(self, step: &Id, head: &str) {
        self.typing(false);
        let document = self.document_now();
        let position = document.position(step);
        let Some((position, before)) = position.and_then(|at| Some((at, document.steps.get(at)?))) else {
            return;
        };
        let head = typed_over(&before.words, head, |step| document.link_name(step));
        let at = u32::try_from(head.chars().count()).unwrap_or(u32::MAX);
        let is_inside = before.words.starts_with(&head);
        let id = RandomIds.next_id("step");
        let parts = is_inside.then(|| part(before, at, id.clone())).flatten();
        let Some((one, two)) = parts else {
            self.stop_editing();
            return;
        };
        let edits = [
            Edit::SetStep { step: Arc::new(one) },
            Edit::InsertStep { at: position + 1, step: Arc::new(two) },
        ];
        if self.edit(&edits, &format!("cut step {} in two", position + 1), None) {
            self.edit_words(id, Some(0));
        }
    }
}
