//! Why an action is done to this thing and not to another that its words can name, in words.

use super::doubts::step_of;
use super::editor_store::EditorStore;
use super::rereading;
use leptos::prelude::With;
use procedures_schema::capture::{Here, Reason, reason};
use procedures_schema::derive::stands::how_it_stands;
use procedures_schema::model::Id;

impl EditorStore {
    /// The reason for the thing of an action, if its words leave any choice; follows the document.
    pub fn reason_of(self, step: &Id, action: usize) -> Option<String> {
        self.judged().with(|judged| {
            let (position, step) = step_of(&judged.document, step)?;
            let action = step.actions.get(action)?;
            let thing = action.on.first()?;
            let map = &judged.document.map;
            let here = Here::clone(&rereading::here(judged, position));
            let found = reason(&step.words, map, here, &step.stage, action)?;
            let stands = how_it_stands(&judged.trace, rereading::place_before(position), thing);
            Some(in_words(map.name_of(thing), found, stands.as_deref()))
        })
    }
}

fn in_words(name: &str, reason: Reason, stands: Option<&str>) -> String {
    match (reason, stands) {
        (Reason::OnlyPossible { of }, Some(stands)) => {
            format!("{name}: of {of} that the words can mean the only one that is {stands}")
        }
        (Reason::OnlyPossible { of }, None) => {
            format!("{name}: of {of} that the words can mean the only one to which it can be done here")
        }
        (Reason::TouchedLast { of }, _) => {
            format!("{name}: of {of} that the words can mean the one that was touched last")
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Reason, in_words};
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test]
    fn a_reason_says_how_the_thing_stands() {
        let words = in_words("rear cover", Reason::OnlyPossible { of: 2 }, Some("off here"));
        assert_eq!(words, "rear cover: of 2 that the words can mean the only one that is off here");
    }
}
