//! Two things of the map made one, and one made two: each is one entry of undo.

use super::editor_store::EditorStore;
use super::ids::RandomIds;
use procedures_schema::edit::{Choice, Edit};
use procedures_schema::model::{Id, IdSource};

impl EditorStore {
    /// Makes one of two things; says whether it was done.
    pub fn merge_things(self, keep: &Id, gone: &Id, choices: Vec<Choice>) -> bool {
        let map = self.document_now().map.clone();
        let label = format!("make one of the {} and the {}", map.name_of(keep), map.name_of(gone));
        let edit = Edit::Merge { keep: keep.clone(), gone: gone.clone(), choices };
        self.edit(&[edit], &label, None)
    }

    /// Makes two of one thing; gives the id of the second, if it was done.
    pub fn split_thing(self, thing: &Id, name: &str, steps: Vec<Id>, in_words: bool) -> Option<Id> {
        let map = self.document_now().map.clone();
        let (kind, _, old, _) = map.things().find(|(_, id, ..)| *id == thing)?;
        let new = RandomIds.next_id(kind.hint());
        let edit =
            Edit::Split { thing: thing.clone(), new: new.clone(), name: name.to_owned(), steps, in_words };
        self.edit(&[edit], &format!("make two of the {old}"), None).then_some(new)
    }
}
