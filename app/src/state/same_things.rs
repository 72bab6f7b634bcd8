//! Two things of the map made one, one made two, and other names for one: each is one entry of undo.

use super::editor_store::EditorStore;
use super::ids::RandomIds;
use leptos::prelude::{GetValue, Set, SetValue};
use procedures_schema::edit::{Choice, Edit};
use procedures_schema::model::{Id, IdSource};
use std::sync::Arc;

/// A thing whose sheet is to be open when Appliance is shown next.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wanted {
    /// Which.
    pub thing: Id,
    /// Whether it is to be made one with another.
    pub merges: bool,
}

impl EditorStore {
    /// Gives a thing a further name; says so if it cannot be. Words with that name are then read as it.
    pub fn add_other_name(self, thing: &Id, name: &str) -> bool {
        let name = name.trim();
        let document = self.document_now();
        let of = document.map.name_of(thing).to_owned();
        let is_called = |known: &str, others: &[String]| {
            known.eq_ignore_ascii_case(name) || others.iter().any(|other| other.eq_ignore_ascii_case(name))
        };
        if let Some((_, holder, ..)) =
            document.map.things().find(|(_, _, known, others)| is_called(known, others))
        {
            let words = if holder == thing {
                format!("The {of} is called so already.")
            } else {
                format!(
                    "Another thing is called {name}. If it is the {of}, say so with \u{201c}Same as \u{2026}\u{201d}."
                )
            };
            self.notice().set(Some(words));
            return false;
        }
        let mut map = (*document.map).clone();
        let Some(names) = map.aliases_mut(thing).filter(|_| !name.is_empty()) else { return false };
        names.push(name.to_owned());
        self.edit(&[Edit::SetMap(Arc::new(map))], &format!("call the {of} {name} too"), None)
    }

    /// Has the sheet of a thing open when Appliance is shown next.
    pub fn want_thing(self, thing: &Id, merges: bool) {
        self.wanted().set_value(Some(Wanted { thing: thing.clone(), merges }));
    }

    /// The thing whose sheet is wanted, once.
    pub fn take_wanted(self) -> Option<Wanted> {
        let wanted = self.wanted().get_value();
        self.wanted().set_value(None);
        wanted
    }

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
