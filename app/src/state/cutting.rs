//! Leaving words otherwise than by keeping them: taking back what was typed, cutting a step in two, joining two.

use super::doubts::step_of;
use super::editor_store::EditorStore;
use super::ids::RandomIds;
use super::making::Act;
use super::rereading;
use super::retyped::Retyped;
use leptos::prelude::{GetValue, Set, SetValue};
use procedures_schema::capture::follow_words;
use procedures_schema::edit::{Edit, joined, part};
use procedures_schema::model::{Id, IdSource, typed_over};
use std::sync::Arc;

impl EditorStore {
    /// Puts back what a step was before the keyboard went into its words, and leaves them. Undo has it again.
    pub(super) fn take_back_typing(self, step: &Id) {
        let typed = self.retyped().get_value().filter(|typed| typed.step.id == *step);
        let now = self.document_now();
        let position = now.position(step);
        if let (Some(Retyped { step: before, map }), Some(position)) = (typed, position)
            && now.steps.get(position).is_some_and(|now| now.words != before.words)
        {
            self.close_group();
            let label = format!("take back the words typed in step {}", position + 1);
            self.retyped().set_value(None);
            let followed = follow_words(&now, position, &before, &map, &before.words).map(Edit::SetMap);
            let edits: Vec<Edit> = followed.into_iter().chain([Edit::SetStep { step: before }]).collect();
            self.edit(&edits, &label, None);
        }
        self.stop_editing();
    }

    /// Makes two steps of one, where the words as people read them begin with `head`; each part of what they
    /// mean goes with its words. Where nothing would stand on one side the words are left as they are.
    pub(super) fn cut_step(self, step: &Id, head: &str) {
        self.typing(false);
        let judged = self.judged_now();
        let document = &judged.document;
        let Some((position, before)) = step_of(document, step) else { return };
        let is_as_read = rereading::is_as_read(&judged, position, before);
        let head = typed_over(&before.words, head, |step| document.link_name(step));
        let at = u32::try_from(head.chars().count()).unwrap_or(u32::MAX);
        let is_inside = before.words.starts_with(&head);
        let id = RandomIds.next_id("step");
        let parts = is_inside.then(|| part(before, at, id.clone())).flatten();
        let Some((mut one, mut two)) = parts else {
            self.stop_editing();
            return;
        };
        if is_as_read {
            // Read anew, each by itself: what the cut goes through belongs to neither as it was.
            (one.actions, two.actions) = (Vec::new(), Vec::new());
        }
        let edits = [
            Edit::SetStep { step: Arc::new(one) },
            Edit::InsertStep { at: position + 1, step: Arc::new(two) },
        ];
        let act = Act::about(step, format!("cut step {} in two", position + 1));
        if self.edit(&edits, &act.label, act.group.as_deref()) {
            if is_as_read {
                self.make_things(step, &[], Some(&act));
                self.make_things(&id, &[], Some(&act));
            }
            self.close_group();
            self.edit_words(id, Some(0));
        }
    }

    /// Makes one step of a step and the one before it, with the caret where they meet.
    pub(super) fn join_to_step_before(self, step: &Id) {
        self.typing(false);
        let document = self.document_now();
        let Some((position, second)) = step_of(&document, step) else { return };
        let Some(first) = position.checked_sub(1).and_then(|before| document.steps.get(before)) else {
            return;
        };
        let Some(both) = joined(first, second) else {
            let words = format!(
                "Steps {position} and {} were not joined: they are done on different answers or for different variants.",
                position + 1
            );
            self.notice().set(Some(words));
            return;
        };
        let meet = self.shown_words(first).encode_utf16().count();
        let at = u32::try_from(meet).unwrap_or(u32::MAX);
        let edits = [Edit::SetStep { step: Arc::new(both) }, Edit::RemoveStep { step: step.clone() }];
        if self.edit(&edits, &format!("join steps {position} and {}", position + 1), None) {
            self.edit_words(first.id.clone(), Some(at));
        }
    }
}
