//! What the line hears in words, piece by piece: for the underlines below what is typed, and for what is asked.
//!
//! The words are read once for both. Marks differ by shape: understood, new, filled in by practice, open, declined; that
//! a value is still to be found out is marked beside any of them.

use super::doubts::{Open, step_of, still_open};
use super::editor_store::EditorStore;
use super::judged::Judged;
use super::last_read::{LastRead, Read};
use super::links::{self, LinkOffer};
use super::rereading;
use leptos::prelude::*;
use procedures_schema::capture::{Differing, LineReading, Made, Making, Question, differing};
use procedures_schema::model::{Action, ApplianceMap, Id, Procedure, Span, Step, step_links};
use procedures_schema::notation::{Role, shown};
use procedures_schema::simulate::default_readings;
use std::sync::Arc;

/// How words are understood; the later one wins where two meet.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Mark {
    /// Text.
    #[default]
    None,
    /// The writer has said that it is no action.
    Declined,
    /// It says an action.
    Understood,
    /// It says an action to which practice adds what the words leave out.
    Practice,
    /// It names a thing for the first time.
    New,
    /// It can mean more than one thing, or what it means is not known.
    Open,
}

/// A stretch of words that are marked alike.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Piece {
    /// The words.
    pub text: String,
    /// How they are understood.
    pub mark: Mark,
    /// Whether a value of what they say is still to be found out.
    pub is_pending: bool,
}

/// What the line hears in the words of a step.
#[derive(Clone, Debug, Default)]
pub struct Heard {
    /// Its words in pieces.
    pub pieces: Vec<Piece>,
    /// What is open about them.
    pub open: Vec<Open>,
    /// A number in them that could be a link.
    pub link: Option<LinkOffer>,
    /// Figures that they state otherwise than the map.
    pub differing: Vec<Differing>,
}

impl Heard {
    /// Of a step at a position.
    pub(super) fn of(judged: &Judged, position: usize, step: &Step) -> Self {
        let here = rereading::here(judged, position);
        Self::by(judged, position, step, rereading::read_with_making(judged, here, step, &step.words))
    }

    /// As [`Heard::of`], by a reading of the words.
    fn by(judged: &Judged, position: usize, step: &Step, read: Read) -> Self {
        let Read { reading, making, otherwise, .. } = read;
        // What was set by hand is not read anew, so nothing is made of it and no circuit is asked for.
        let making = making.filter(|_| is_as_read(step, &reading));
        let making =
            making.unwrap_or_else(|| Making { map: judged.document.map.clone(), ..Making::default() });
        let open = still_open(step, reading.doubts, making.asked);
        let mut marks = Marks::over(&step.words);
        marks.declined(&step.words, &step.declined);
        marks.actions(&step.actions, &making.map, &making.made, &judged.document);
        for open in &open {
            marks.put(open.span(), Mark::Open);
        }
        let pieces = marks.pieces(&step.words, |step| judged.document.link_name(step));
        let map = &judged.document.map;
        let known = otherwise.by(step.actions.iter(), map).map(<[Differing]>::to_vec);
        let differing = known.unwrap_or_else(|| differing(step, map));
        Self { pieces, open, link: links::offer(&judged.document, position, step), differing }
    }
}

/// Whether a step does what its words are read as.
fn is_as_read(step: &Step, reading: &LineReading) -> bool {
    step.actions.is_empty() || reading.actions == step.actions
}

/// The words of a line that is nobody's step yet, in pieces.
pub fn pieces_of_line(words: &str, making: &Making, document: &Procedure) -> Vec<Piece> {
    let Making { reading, map, made, asked, .. } = making;
    let LineReading { actions, doubts, unknown, .. } = reading;
    let mut marks = Marks::over(words);
    marks.actions(actions, map, made, document);
    let unknown = unknown.iter().map(|unknown| unknown.span);
    let open = doubts.iter().map(|doubt| doubt.span).chain(asked.iter().map(|asked: &Question| asked.span));
    open.chain(unknown).for_each(|span| marks.put(span, Mark::Open));
    marks.pieces(words, |step| document.link_name(step))
}

/// Words that nothing is known of.
pub fn plain(words: String) -> Vec<Piece> {
    vec![Piece { text: words, ..Piece::default() }]
}

/// A mark for each code point of some words.
struct Marks(Vec<(Mark, bool)>);

impl Marks {
    fn over(words: &str) -> Self {
        Self(words.chars().map(|_| (Mark::None, false)).collect())
    }

    fn within(&mut self, span: Span) -> &mut [(Mark, bool)] {
        let at = |point: u32| usize::try_from(point).unwrap_or(usize::MAX).min(self.0.len());
        let (from, to) = (at(span.0), at(span.1));
        self.0.get_mut(from..to.max(from)).unwrap_or_default()
    }

    fn put(&mut self, span: Span, mark: Mark) {
        for (known, _) in self.within(span) {
            *known = mark.max(*known);
        }
    }

    fn actions(&mut self, actions: &[Action], map: &ApplianceMap, made: &[Made], document: &Procedure) {
        for action in actions {
            let by_practice = action.readings.is_empty() && !default_readings(document, action).is_empty();
            let mark = if by_practice { Mark::Practice } else { Mark::Understood };
            action.says.iter().for_each(|span| self.put(*span, mark));
            let is_pending = shown(action, map).iter().any(|token| token.role == Role::Later);
            let named = made.iter().find(|made| action.on.contains(&made.thing)).and_then(|made| made.span);
            if let Some(thing) = named.or(action.says.last().copied()).filter(|_| is_pending) {
                self.within(thing).iter_mut().for_each(|(_, pending)| *pending = true);
            }
        }
        made.iter().filter_map(|made| made.span).for_each(|span| self.put(span, Mark::New));
    }

    /// Marks what the writer has declined, wherever it stands.
    fn declined(&mut self, words: &str, declined: &[String]) {
        let lower: Vec<char> = words.chars().map(|c| c.to_ascii_lowercase()).collect();
        for phrase in declined {
            let phrase: Vec<char> = phrase.chars().map(|c| c.to_ascii_lowercase()).collect();
            if phrase.is_empty() {
                continue;
            }
            for (at, found) in lower.windows(phrase.len()).enumerate() {
                if found == phrase {
                    let point = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
                    self.put(Span(point(at), point(at + phrase.len())), Mark::Declined);
                }
            }
        }
    }

    /// The words in pieces, each link as people read it.
    fn pieces(self, words: &str, name: impl Fn(&str) -> String) -> Vec<Piece> {
        let mut pieces: Vec<Piece> = Vec::new();
        let mut links = step_links(words).into_iter().peekable();
        let mut link_ends = 0;
        for (at, (letter, (mark, is_pending))) in (0_u32..).zip(words.chars().zip(self.0)) {
            if let Some(link) = links.next_if(|link| link.span.0 == at) {
                pieces.push(Piece { text: name(link.step), mark: Mark::Understood, is_pending });
                link_ends = link.span.1;
            }
            if at < link_ends {
                continue;
            }
            match pieces
                .last_mut()
                .filter(|last| at > link_ends && (last.mark, last.is_pending) == (mark, is_pending))
            {
                Some(last) => last.text.push(letter),
                None => pieces.push(Piece { text: letter.to_string(), mark, is_pending }),
            }
        }
        pieces
    }
}

impl EditorStore {
    /// What the line hears in the words of a step.
    pub fn heard(self, step: Id) -> Memo<Arc<Heard>> {
        let judged = self.judged();
        let last_read = self.last_read();
        let heard_of = move |judged: &Judged, at: usize, step: &Arc<Step>| {
            let known = last_read.with_value(|last| last.as_ref()?.of(judged, at, step).cloned());
            let is_enough = |read: &Read| read.making.is_some() || !is_as_read(step, &read.reading);
            let read = known.filter(is_enough).unwrap_or_else(|| {
                let here = rereading::here(judged, at);
                let read = rereading::read_with_making(judged, here, step, &step.words);
                last_read.set_value(Some(LastRead::new(judged, at, step.clone(), read.clone())));
                read
            });
            Heard::by(judged, at, step, read)
        };
        let heard = move |judged: &Arc<Judged>| {
            let found = step_of(&judged.document, &step);
            Arc::new(found.map(|(at, step)| heard_of(judged, at, step)).unwrap_or_default())
        };
        Memo::new_with_compare(move |_| judged.with(&heard), |_, _| true)
    }
}

#[cfg(test)]
mod tests {
    use super::{Mark, Marks, Piece, Span};
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test]
    fn links_stand_as_they_are_read() {
        let pieces = Marks::over("As in {step:a}{step:b}.")
            .pieces("As in {step:a}{step:b}.", |id| format!("step {id}"));
        let texts: Vec<&str> = pieces.iter().map(|piece| piece.text.as_str()).collect();
        assert_eq!(texts, ["As in ", "step a", "step b", "."]);
    }

    #[wasm_bindgen_test]
    fn what_was_declined_is_marked_wherever_it_stands_and_what_is_said_wins() {
        let words = "Take off the lid, take off again.";
        let mut marks = Marks::over(words);
        marks.declined(words, &["take off".to_owned(), String::new(), "not there".to_owned()]);
        marks.put(Span(18, 26), Mark::Understood);
        let pieces = marks.pieces(words, str::to_owned);
        let marked: Vec<_> = pieces.iter().map(|piece| (piece.text.as_str(), piece.mark)).collect();
        let rest = Mark::None;
        assert_eq!(
            marked,
            [
                ("Take off", Mark::Declined),
                (" the lid, ", rest),
                ("take off", Mark::Understood),
                (" again.", rest)
            ]
        );
    }

    #[wasm_bindgen_test]
    fn pieces_are_the_words_and_the_stronger_mark_wins() {
        let words = "Löse die Pumpe.";
        let mut marks = Marks::over(words);
        marks.put(Span(0, 14), Mark::Understood);
        marks.put(Span(9, 14), Mark::New);
        marks.put(Span(5, 99), Mark::Understood);
        let pieces = marks.pieces(words, str::to_owned);
        let texts: Vec<&str> = pieces.iter().map(|piece: &Piece| piece.text.as_str()).collect();
        assert_eq!(texts, ["Löse die ", "Pumpe", "."]);
        assert_eq!(
            pieces.iter().map(|piece| piece.mark).collect::<Vec<_>>(),
            [Mark::Understood, Mark::New, Mark::Understood]
        );
    }
}
