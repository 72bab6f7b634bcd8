//! What the line would mean as a step: read once a key, for the lines under the words and for the text below.

use super::leading_words::leading_words;
use crate::components::notation_line::Notation;
use crate::state::heard::{Piece, pieces_of_line, plain};
use crate::state::{EditorStore, KnownHere};
use leptos::prelude::*;
use procedures_schema::capture::{Made, Making, leading};
use procedures_schema::model::Id;

/// What words are read as that are to go below a step, or at the end.
#[derive(Clone, Copy)]
pub struct LineMeaning {
    store: EditorStore,
    words: ReadSignal<String>,
    read: Memo<Option<Making>>,
    below: Memo<Option<Below>>,
}

/// What stands below the line: hardly a key changes it, and to draw it takes as long as to read the line.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Below {
    notation: Notation,
    /// What it would make.
    fresh: Vec<String>,
    /// What is open about it.
    open: Vec<String>,
}

impl LineMeaning {
    /// Of what is typed in a line.
    pub fn new(store: EditorStore, after: Option<Id>, words: ReadSignal<String>) -> Self {
        let known = KnownHere::default();
        let read =
            move |_: Option<&Option<Making>>| words.with(|words| read(store, after.as_ref(), words, known));
        let read = Memo::new_with_compare(read, |_, _| true);
        Self {
            store,
            words,
            read,
            below: Memo::new(move |_| read.with(|making| making.as_ref().map(Below::of))),
        }
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
    pub fn view(self) -> impl Fn() -> Option<AnyView> + Clone + Send + 'static {
        let leading = Memo::new(move |_| self.words.with(|words| leading(words.trim())));
        move || match leading.get() {
            Some(leading) => {
                Some(view! { <p class="notation leading">{leading_words(&leading)}</p> }.into_any())
            }
            None => self.below.get().map(|below| below.view().into_any()),
        }
    }
}

/// What the line reads from words; nothing from none, and nothing where a leading word says what they are.
fn read(store: EditorStore, after: Option<&Id>, words: &str, known: KnownHere) -> Option<Making> {
    let is_sentence = !words.trim().is_empty() && leading(words.trim()).is_none();
    is_sentence.then(|| store.read_line(after, words, known))
}

impl Below {
    /// What the line would mean as a step, what it would make, and what is open about it.
    fn of(making: &Making) -> Self {
        let Making { reading, map, made, .. } = making;
        let unread = making.unread();
        let unread = unread.map(|unknown| format!("{} what? Nothing on the map has that name", unknown.verb));
        let open = making.questions().into_iter().map(str::to_owned).chain(unread).collect();
        let stands = |thing: &Id| match made.iter().find(|made| made.thing == *thing) {
            Some(Made { span: Some(_), .. }) => "new",
            Some(_) => "practice",
            None => "",
        };
        let fresh = made.iter().map(|made| made.name.clone()).collect();
        Self { notation: Notation::of(&reading.actions, map, &stands), fresh, open }
    }

    fn view(self) -> impl IntoView {
        let Self { notation, fresh, open } = self;
        let open: Vec<_> =
            open.into_iter().map(|words| view! { <span class="doubt">{words}</span> }).collect();
        let new =
            (!fresh.is_empty()).then(|| view! { <span class="fresh">"new: " {fresh.join(", ")}</span> });
        view! { {notation.line()}<p class="notation doubts">{new}{open}</p> }
    }
}
