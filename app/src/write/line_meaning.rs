//! What the line would mean as a step: read once a key, for the lines under the words and for the text below.

use super::leading_words::leading_words;
use crate::components::notation_line::notation_line_with;
use crate::state::EditorStore;
use crate::state::heard::{Piece, pieces_of_line, plain};
use leptos::prelude::*;
use procedures_schema::capture::{Made, Making, leading};
use procedures_schema::model::Id;

/// What words are read as that are to go below a step, or at the end.
#[derive(Clone, Copy)]
pub struct LineMeaning {
    store: EditorStore,
    words: ReadSignal<String>,
    read: Memo<Option<Making>>,
}

impl LineMeaning {
    /// Of what is typed in a line.
    pub fn new(store: EditorStore, after: Option<Id>, words: ReadSignal<String>) -> Self {
        let read = move |_: Option<&Option<Making>>| words.with(|words| read(store, after.as_ref(), words));
        Self { store, words, read: Memo::new_with_compare(read, |_, _| true) }
    }

    /// The words in pieces.
    pub fn pieces(self) -> Vec<Piece> {
        let words = self.words.get();
        self.read.with(|making| match making {
            Some(making) => self.store.document().with(|document| pieces_of_line(&words, making, document)),
            None => plain(words),
        })
    }

    /// Whether something is asked in it that has answers.
    pub fn is_asked(self) -> bool {
        self.read.with_untracked(|making| {
            let Some(making) = making else { return false };
            !making.reading.doubts.is_empty() || making.has_answers()
        })
    }

    /// The text below the line; none while nothing is typed.
    pub fn view(self) -> Option<AnyView> {
        match self.words.with(|words| leading(words.trim())) {
            Some(leading) => {
                Some(view! { <p class="notation leading">{leading_words(&leading)}</p> }.into_any())
            }
            None => self.read.with(|making| making.as_ref().map(meaning)),
        }
    }
}

/// What the line reads from words; nothing from none, and nothing where a leading word says what they are.
fn read(store: EditorStore, after: Option<&Id>, words: &str) -> Option<Making> {
    let is_sentence = !words.trim().is_empty() && leading(words.trim()).is_none();
    is_sentence.then(|| store.read_line(after, words))
}

/// What the line would mean as a step, what it would make, and what is open about it.
fn meaning(making: &Making) -> AnyView {
    let Making { reading, map, made, .. } = making;
    let unread = making.unread();
    let unread = unread.map(|unknown| format!("{} what? Nothing on the map has that name", unknown.verb));
    let open: Vec<_> = making
        .questions()
        .into_iter()
        .map(str::to_owned)
        .chain(unread)
        .map(|words| view! { <span class="doubt">{words}</span> })
        .collect();
    let stands = |thing: &Id| match made.iter().find(|made| made.thing == *thing) {
        Some(Made { span: Some(_), .. }) => "new",
        Some(_) => "practice",
        None => "",
    };
    let names: Vec<String> = made.iter().map(|made| made.name.clone()).collect();
    let new = (!names.is_empty()).then(|| view! { <span class="fresh">"new: " {names.join(", ")}</span> });
    view! { {notation_line_with(&reading.actions, map, &stands)}<p class="notation doubts">{new}{open}</p> }
        .into_any()
}
