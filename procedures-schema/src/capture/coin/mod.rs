//! Things made from a sentence.
//!
//! Where the words name a thing that the map does not know, [`line_making`] adds it to a copy of the map and
//! then reads the line against that copy, so that the actions refer to the new thing. What a thing is follows
//! from its noun and the verb said of it: what is closed is an isolator, what is undone a connection, what
//! comes off a component. A thing mentioned again is the same one. Nothing that was in the map is changed, with
//! one exception: the unnamed way in by which a new circuit is fed goes when the words name what shuts it.
//!
//! It does not guess. Where the words and the map leave open which circuit a joint or valve belongs to, nothing
//! is made and a [`Question`] is asked; an [`Answer`] settles it.

mod another;
mod bench;
mod circuits;
mod clauses;
mod colours;
mod counted;
mod isolators;
mod items;
mod joints;
mod label;
mod later;
mod leads;
mod loose;
mod noun_words;
mod nouns;
mod one_more;
mod one_or_each;
mod other_names;
mod owners;
mod particles;
mod parts;
mod phrase;
mod phrase_words;
mod phrased;
mod relief;
mod seals;
mod shared;
mod told_apart;
mod unheard_of;
mod unread_before;
mod wanted;

pub use another::{Another, another};
pub(super) use circuits::named_kind;
pub(super) use counted::counted_thread;
pub(super) use items::PLACES;
pub(super) use joints::is_joint_each;
pub(super) use label::{counts, is_code, is_label, is_label_behind_owner, is_numbered_place, number_behind};
pub(super) use nouns::{Noun, count, is_open_end, noun, opens, tells_apart};
pub(super) use one_more::is_bare_item;
pub(super) use owners::owner_of_its;
pub(super) use particles::{is_adverb, is_particle};
pub(super) use phrase::{Lead, Phrase, phrases_between};
pub(super) use phrase_words::{CONDITIONS, ENDS, PREPOSITIONS};
pub(super) use phrased::{Phrased, phrases};
pub(super) use seals::seal_said;
pub(super) use shared::list_in_plural;
pub(super) use wanted::is_appliance;

use self::unread_before::{Rivalled, doubting};
use super::reader::Reader;
use super::{Here, LineReading, Unknown};
use crate::lexicon::Lexicon;
use crate::model::{ApplianceMap, CensusEntry, CircuitKind, Id, IdSource, Span, Stage, Step, ThingKind};
use crate::simulate::{Place, Trace};
use std::sync::Arc;

/// A line that was read, with what it made.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Making {
    /// The line as it is read against [`Making::map`].
    pub reading: LineReading,
    /// The map with the new things; the map as it was if `made` is empty.
    pub map: Arc<ApplianceMap>,
    /// The new things, in the order in which they were made.
    pub made: Vec<Made>,
    /// The things that an answer gave a further name, in [`Making::map`].
    pub renamed: Vec<Id>,
    /// The things of which the words leave a value for later, in [`Making::map`].
    pub left: Vec<Id>,
    /// What the words leave open.
    pub asked: Vec<Question>,
}

impl Making {
    /// Whether [`Making::map`] is another than the map before.
    pub fn changes_map(&self) -> bool {
        !self.made.is_empty() || !self.renamed.is_empty() || !self.left.is_empty()
    }

    /// What is asked, each question once: two valves of one circuit are open together.
    pub fn questions(&self) -> Vec<&str> {
        let doubts = self.reading.doubts.iter().map(|doubt| doubt.question.as_str());
        let mut all: Vec<&str> = Vec::new();
        for question in doubts.chain(self.asked.iter().map(|asked| asked.question.as_str())) {
            if !all.contains(&question) {
                all.push(question);
            }
        }
        all
    }

    /// The verbs of which nothing is read, and nothing is asked about what they act on either.
    pub fn unread(&self) -> impl Iterator<Item = &Unknown> {
        let first_behind = |spans: &mut dyn Iterator<Item = Span>, begin: u32| {
            spans.map(|span| span.0).filter(|from| *from > begin).min()
        };
        self.reading.unknown.iter().filter(move |unknown| {
            let begin = unknown.span.0;
            let asked = first_behind(&mut self.asked.iter().map(|asked| asked.span), begin);
            let said = self.reading.actions.iter().flat_map(|action| action.says.iter().copied());
            let others = self.reading.unknown.iter().map(|other| other.span);
            let next = first_behind(&mut said.chain(others), begin);
            asked.is_none_or(|asked| next.is_some_and(|next| next < asked))
        })
    }

    /// Whether something is asked that an answer settles.
    pub fn has_answers(&self) -> bool {
        self.asked.iter().any(|asked| !asked.choices.is_empty())
    }
}

/// A thing that a sentence made.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Made {
    /// The new thing.
    pub thing: Id,
    /// What it is.
    pub kind: ThingKind,
    /// Its name.
    pub name: String,
    /// The words that name it; none for what had to come with it, such as the circuit of a valve.
    pub span: Option<Span>,
}

/// Something that the words leave open.
#[derive(Clone, Debug, PartialEq)]
pub struct Question {
    /// The words that it is about.
    pub span: Span,
    /// What to ask.
    pub question: String,
    /// The answers that come into question; none if only other words can say it.
    pub choices: Vec<Meaning>,
    /// The thing that was made all the same and whose details are open.
    pub thing: Option<Id>,
}

/// What some words may mean.
#[derive(Clone, Debug, PartialEq)]
pub enum Meaning {
    /// Something of the circuit of this kind.
    Circuit(CircuitKind),
    /// A thing of the map, which the words call by another name from now on.
    Known {
        /// The thing.
        thing: Id,
        /// Its name.
        name: String,
    },
    /// A thing that the map does not have yet.
    New {
        /// Its name.
        name: String,
    },
}

impl std::fmt::Display for Meaning {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Circuit(kind) => f.write_str(kind.word()),
            Self::Known { name, .. } => write!(f, "the {name}"),
            Self::New { name } => write!(f, "a new {name}"),
        }
    }
}

/// What some words mean, given by the writer.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// The words: [`Question::span`].
    pub span: Span,
    /// What they mean: one of [`Question::choices`].
    pub means: Meaning,
}

/// What the writer has said beside the words.
#[derive(Clone, Copy, Debug, Default)]
pub struct Given<'a> {
    /// Answers to what the words leave open.
    pub answers: &'a [Answer],
    /// The census of circuits: what a new thing may belong to.
    pub census: &'a [CensusEntry],
    /// The steps before the line: what their words name may be on no map.
    pub before: &'a [Arc<Step>],
}

/// Reads a line as it would stand right after `place` of the run and makes what it names for the first time.
///
/// Pure and deterministic: the same words, map, trace and identities give the same result. An identity that the
/// map holds already is asked for again; that it is free in the rest of the document is up to `ids`.
pub fn line_making(
    words: &str,
    map: &Arc<ApplianceMap>,
    trace: &Trace,
    place: Place,
    stage: &Stage,
    given: Given<'_>,
    ids: &mut dyn IdSource,
) -> Making {
    line_making_here(words, map, Here::from_trace(map, trace, place), stage, given, ids)
}

/// Reads a line in a given state and makes what it names for the first time.
pub fn line_making_here(
    words: &str,
    map: &Arc<ApplianceMap>,
    here: Here,
    stage: &Stage,
    given: Given<'_>,
    ids: &mut dyn IdSource,
) -> Making {
    let Some(worked) = worked(words, map, here, stage, given, ids) else {
        return Making { map: map.clone(), ..Making::default() };
    };
    let bench::Worked { line, rivalled, mut making } = worked;
    if making.changes_map() {
        return read_again(words, map, stage, line.here, making, &rivalled);
    }
    making.reading = read(line, &rivalled);
    making.asking_of_left_out(words)
}

/// What [`line_here()`](super::line_here()) reads from words, and what [`line_making_here`] makes of them: from one look
/// at the words.
pub fn line_with_making(
    words: &str,
    map: &Arc<ApplianceMap>,
    here: Here,
    stage: &Stage,
    given: Given<'_>,
    ids: &mut dyn IdSource,
) -> (LineReading, Making) {
    let Some(worked) = worked(words, map, here, stage, given, ids) else {
        return (LineReading::default(), Making { map: map.clone(), ..Making::default() });
    };
    let bench::Worked { line, rivalled, mut making } = worked;
    if making.changes_map() {
        let again = read_again(words, map, stage, line.here.clone(), making, &rivalled);
        (read(line, &rivalled), again)
    } else {
        making.reading = read(line, &rivalled);
        (making.reading.clone(), making.asking_of_left_out(words))
    }
}

/// What a line says, with what is asked about things that have a rival.
fn read(line: Reader<'_>, rivalled: &[Rivalled]) -> LineReading {
    let map = line.map;
    let mut reading = line.read();
    doubting(&mut reading, map, rivalled);
    reading
}

/// A line with what it makes, not read yet; none without a lexicon.
fn worked<'a>(
    words: &'a str,
    map: &'a Arc<ApplianceMap>,
    here: Here,
    stage: &'a Stage,
    given: Given<'a>,
    ids: &'a mut dyn IdSource,
) -> Option<bench::Worked<'a>> {
    let line = Reader::new(words, map, here, stage, Lexicon::for_language("en")?);
    Some(bench::Bench::new(line, map.clone(), given, ids).work())
}

/// Reads a line against what was made of it.
fn read_again(
    words: &str,
    map: &Arc<ApplianceMap>,
    stage: &Stage,
    mut here: Here,
    mut making: Making,
    rivalled: &[Rivalled],
) -> Making {
    let Some(lexicon) = Lexicon::for_language("en") else { return making };
    here.meet(&making.map, making.made.iter().map(|made| &made.thing));
    making.reading = Reader::new(words, &making.map, here, stage, lexicon).read();
    doubting(&mut making.reading, &making.map, rivalled);
    let unused = making.made_and_not_used();
    making.reading.left_out.extend(unused);
    let says_nothing = making.reading.actions.is_empty() && making.reading.doubts.is_empty();
    if says_nothing && making.renamed.is_empty() {
        // Words that say nothing to do name nothing either.
        (making.map, making.made, making.left) = (map.clone(), Vec::new(), Vec::new());
    }
    making.asking_of_left_out(words)
}
