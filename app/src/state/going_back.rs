//! Undo and redo, and where what they change is seen.

use super::editor_store::EditorStore;
use leptos::prelude::{GetUntracked, RwSignal, Set};
use procedures_schema::compare::{Place, Places, places};
use procedures_schema::derive::uses::Uses;
use procedures_schema::edit::{Session, Undone};
use procedures_schema::model::{Id, Procedure};

impl EditorStore {
    /// Takes the last edit back and goes where it was.
    pub fn undo(self) {
        self.travel(Session::undo);
    }

    /// Does again what was undone.
    pub fn redo(self) {
        self.travel(Session::redo);
    }

    /// Where what was undone or done again last is seen, for the screen that leads there.
    pub fn went(self) -> RwSignal<Option<Places>> {
        self.parts().went
    }

    fn travel(self, way: fn(&mut Session) -> Option<Undone>) {
        if self.refuses() {
            return;
        }
        self.drop_held();
        self.ask_nothing();
        let before = self.document_now();
        let mut next = self.parts().session.get_untracked();
        let Some(undone) = way(&mut next) else { return };
        self.parts().session.set(next);
        self.spread();
        self.follow_up(false);
        self.let_go_of_notice();
        let now = self.document_now();
        self.begin_anew(&now);
        let went = places(&before, &now);
        let is_typing_there = self.parts().is_editing.get_untracked() && undone.step == self.selected_now();
        if let Some(step) = undone.step.filter(|_| !is_typing_there) {
            self.select(heir(&step, &before, &now));
        } else if let Some(thing) = went.thing.as_ref().filter(|_| !went.has(Place::Steps)) {
            self.select_user_of(thing, &now);
        }
        self.went().set(Some(went));
    }

    /// Selects a step that names a thing, unless the selected one does: beside its words stands what the thing is.
    fn select_user_of(self, thing: &Id, now: &Procedure) {
        let selected = self.selected_now().and_then(|step| now.position(&step));
        let users = Uses::of(now, thing).steps;
        if selected.is_none_or(|at| !users.contains(&(at + 1)))
            && let Some(step) = users.first().and_then(|number| now.steps.get(number - 1))
        {
            self.select(Some(step.id.clone()));
        }
    }
}

/// A step, or if it has gone, the one that now stands in its place.
fn heir(step: &Id, before: &Procedure, now: &Procedure) -> Option<Id> {
    if now.position(step).is_some() {
        return Some(step.clone());
    }
    let place = before.position(step)?.min(now.steps.len().checked_sub(1)?);
    now.steps.get(place).map(|step| step.id.clone())
}
