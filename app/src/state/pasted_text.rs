//! A pasted text of several lines: read at once if it is short, in slices if it takes a while, and asked about first
//! if it is very long. What a procedure has no room for is refused with its number.
//!
//! While a long text is read nothing else can be done on the page, for the text is read where it stands.

use super::clock;
use super::editor_store::EditorStore;
use super::ids::RandomIds;
use super::pasting::with_beside;
use super::review::Review;
use super::shelf::UNTITLED;
use leptos::prelude::*;
use procedures_schema::capture::{Block, BlockReading, MANY_LINES, Pasted, PieceKind, block, take_title};
use procedures_schema::edit::{Edit, Session};
use procedures_schema::format::{TooMuch, has_room, have_room};
use procedures_schema::model::{Id, Procedure};
use std::sync::Arc;
use std::time::Duration;

/// So many pieces are read within the turn of the key.
const AT_ONCE: usize = 150;
/// A slice takes about so long, in milliseconds: the page goes on answering.
const SLICE_MS: u64 = 60;
/// So many rows are drawn in one turn.
const ROWS_AT_ONCE: usize = 80;

/// A text that is asked about, or being read.
#[derive(Clone, Debug)]
pub struct LongText {
    /// The text as it was pasted.
    text: Arc<str>,
    at: usize,
    /// How many lines it has.
    pub n_lines: usize,
    /// What is done with it; none while it is asked about.
    pub done: Option<Done>,
}

/// How far a long text is, and how much of it there is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Done {
    /// So many of its pieces have been read.
    Read(usize, usize),
    /// It is in the procedure, and so many rows have been drawn.
    Drawn(usize, usize),
}

/// What is being read, and for which procedure.
#[derive(Debug)]
pub(super) struct UnderWay {
    reading: BlockReading,
    title: Option<String>,
    document: Arc<Procedure>,
}

impl EditorStore {
    /// Puts a text of several lines at a position.
    pub(super) fn paste_block(self, at: usize, text: &str) {
        let cut = block(text);
        if let Err(why) = fits(&cut, &self.document_now()) {
            self.notice().set(Some(format!("Nothing was pasted: {why}.")));
            return;
        }
        let long = LongText { text: text.into(), at, n_lines: cut.n_lines, done: None };
        if cut.n_lines > MANY_LINES {
            self.long_text().set(Some(long));
        } else {
            self.read_block(long, cut);
        }
    }

    /// Reads the long text that is asked about.
    pub(super) fn read_long_text(self) {
        if let Some(long) = self.long_text().get_untracked().filter(|long| long.done.is_none()) {
            let cut = block(&long.text);
            self.read_block(long, cut);
        }
    }

    /// Takes the long text as rows of words, whether it is being read or asked about.
    pub(super) fn long_text_plain(self) {
        if let Some(long) = self.end_long_text() {
            self.add_plain_at(long.at, &long.text);
        }
    }

    /// Leaves the long text; nothing of it was put anywhere.
    pub(super) fn leave_long_text(self) {
        if self.end_long_text().is_some() {
            self.notice().set(Some("Nothing was pasted.".to_owned()));
        }
    }

    /// Ends the asking or the reading; a text that is in the procedure already is left to be drawn.
    fn end_long_text(self) -> Option<LongText> {
        let is_drawn = |long: &Option<LongText>| {
            long.as_ref().is_some_and(|long| matches!(long.done, Some(Done::Drawn(..))))
        };
        if self.long_text().with_untracked(is_drawn) {
            return None;
        }
        self.under_way().set_value(None);
        self.long_text().try_update(Option::take).flatten()
    }

    fn read_block(self, long: LongText, mut cut: Block) {
        let document = self.document_now();
        // A text that is the whole of a procedure without a name names it too.
        let names = document.title == UNTITLED && document.steps.is_empty();
        let title = if names { take_title(&mut cut) } else { None };
        let mut reading = BlockReading::new(cut, &document, long.at);
        let n = reading.n_pieces();
        if n <= AT_ONCE {
            while reading.read_next(&mut RandomIds).is_some() {}
            self.put_pasted(&long, &reading.finish(&mut RandomIds), title, &document);
            return;
        }
        self.under_way().set_value(Some(UnderWay { reading, title, document }));
        self.long_text().set(Some(LongText { done: Some(Done::Read(0, n)), ..long }));
        self.read_on_soon();
    }

    fn read_on_soon(self) {
        set_timeout(move || self.read_on(), Duration::ZERO);
    }

    /// Reads one slice.
    fn read_on(self) {
        let Some(mut now) = self.under_way().try_update_value(Option::take).flatten() else { return };
        let until = clock::now_ms() + SLICE_MS;
        let n = now.reading.n_pieces();
        let mut n_read = 0;
        while let Some(n_now) = now.reading.read_next(&mut RandomIds) {
            n_read = n_now;
            if clock::now_ms() >= until {
                break;
            }
        }
        if (1..n).contains(&n_read) {
            self.under_way().set_value(Some(now));
            self.long_text().update(|long| {
                if let Some(long) = long {
                    long.done = Some(Done::Read(n_read, n));
                }
            });
            self.read_on_soon();
            return;
        }
        let Some(long) = self.end_long_text() else { return };
        if Arc::ptr_eq(&now.document, &self.document_now()) {
            self.put_pasted(&long, &now.reading.finish(&mut RandomIds), now.title, &now.document);
        } else {
            // It was read for another state of the procedure: once more, for this one.
            let cut = block(&long.text);
            self.read_block(long, cut);
        }
    }

    /// Puts what came of a text into the procedure, as one entry of undo.
    fn put_pasted(self, long: &LongText, pasted: &Pasted, title: Option<String>, document: &Arc<Procedure>) {
        let n = pasted.steps.len();
        if let Err(why) = has_room(document, n, pasted.made.len()) {
            self.notice().set(Some(format!("Nothing was pasted: {why}.")));
            return;
        }
        let mut edits = edits_of(document, pasted, long.at);
        edits.extend(title.clone().map(Edit::SetTitle));
        let is_long = n > AT_ONCE;
        if is_long {
            self.drawn().set(long.at.saturating_add(ROWS_AT_ONCE));
        }
        if n == 0 || !self.edit(&edits, &format!("paste {n} steps"), None) {
            self.drawn().set(usize::MAX);
            return;
        }
        let n_done = self.parts().session.with_untracked(Session::n_done);
        let before = (document.clone(), long.at);
        let review = Review::of(pasted, title, n_done, &long.text, before);
        let last = pasted.steps.last().map(|step| step.id.clone());
        if is_long {
            self.draw_on(long.clone(), Arc::new((review, last)));
        } else {
            self.begin_review(review, last);
        }
    }

    /// Draws some rows more; once all are there, what wants a look comes.
    fn draw_on(self, long: LongText, then: Arc<(Review, Option<Id>)>) {
        let n = self.document_now().steps.len();
        let drawn = self.drawn().get_untracked().saturating_add(ROWS_AT_ONCE);
        if drawn >= n {
            self.drawn().set(usize::MAX);
            self.long_text().set(None);
            self.begin_review(then.0.clone(), then.1.clone());
            return;
        }
        self.drawn().set(drawn);
        self.long_text().set(Some(LongText { done: Some(Done::Drawn(drawn, n)), ..long.clone() }));
        set_timeout(move || self.draw_on(long, then), Duration::ZERO);
    }

    fn begin_review(self, review: Review, last: Option<Id>) {
        self.review().set(Some(review));
        // The first decision comes by itself; an answer goes on to the next one.
        if !self.ask_first_of_review() && !self.select_first_of_review() {
            self.select(last);
        }
    }
}

/// Whether there is room for a block, as far as that is known before it is read: each sentence is a step.
fn fits(cut: &Block, document: &Procedure) -> Result<(), TooMuch> {
    have_room(&mut cut.pieces.iter().map(|piece| (piece.line, piece.words.as_str())))?;
    let n = cut.pieces.iter().filter(|piece| matches!(piece.kind, PieceKind::Step)).count();
    has_room(document, n, 0)
}

fn edits_of(document: &Procedure, pasted: &Pasted, at: usize) -> Vec<Edit> {
    let map = pasted.map.clone().map(Edit::SetMap);
    let steps = pasted.steps.iter().enumerate();
    let steps =
        steps.map(|(offset, step)| Edit::InsertStep { at: at + offset, step: Arc::new(step.clone()) });
    with_beside(document, &pasted.beside).into_iter().chain(map).chain(steps).collect()
}
