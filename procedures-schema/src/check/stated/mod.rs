//! What words state beside what is done: figures with units, sizes, counts and names, held against what the
//! actions of the step and the appliance map say.
//!
//! Words speak of more than one action holds: a spanner has a size, a valve a pressure, and a sentence may tell
//! how long something else takes. So words and actions differ here only where something of each is left over when
//! all that agree have been put together: of figures as many as both have, of anything else one of each. Where one of
//! several equal ones is stated otherwise, nothing is left over of the actions; then what it stands beside tells whose
//! it is, if that is certain.

mod beside;
mod counted_beside;
mod counts;
mod figures;
mod held;
mod holder;
mod names;
mod reading;
mod sizes;

pub(super) use self::holder::{Holder, Text};
pub(super) use self::names::Rivals;
pub(super) use self::reading::End;
use self::reading::{Stated, stated_by};
use super::context::Context;
use super::lower::Lower;
use crate::lexicon::{Few, Lexicon, Token, tokens_into};
use crate::model::{Span, Step};
use crate::units::{Measured, Range, Unit};

/// Words that state something else than the action or the map.
#[derive(Debug, PartialEq)]
pub(super) struct Difference {
    /// The words.
    pub(super) span: Span,
    /// What they state: "90 N·m", "two bolts", "the discharge flange".
    pub(super) stated: String,
    /// What holds instead: "its action makes the suction flange to 40 N·m to 45 N·m".
    pub(super) held: String,
    /// Where that is held.
    pub(super) holder: Holder,
    /// The same as a value.
    pub(super) value: Value,
}

/// What holds instead of what the words state.
#[derive(Debug, PartialEq)]
pub(super) enum Value {
    /// A range of figures.
    Range {
        /// The range.
        held: Range,
        /// The unit of the words.
        unit: Unit,
        /// Which end of what is accepted they name.
        end: End,
    },
    /// A figure in a text.
    Text(String),
    /// A number of fasteners.
    Count(u32),
    /// A thread.
    Thread(String),
    /// A width across flats, and the unit of the words.
    Flats(Measured, Unit),
    /// A thing.
    Thing,
}

/// What some words state, found once while they are read and kept from one check to the next.
#[derive(Debug)]
pub(super) struct Stating {
    figures: Few<Stated>,
    /// How many fasteners, and between which tokens that is said.
    counts: Vec<(u32, usize, usize)>,
    /// The tokens of the only thread.
    thread: Option<(usize, usize)>,
    /// The figure that may be a width across flats.
    apart: Option<usize>,
}

impl Stating {
    /// What some words state; nothing, as most words do.
    pub(super) fn of(lexicon: Option<&Lexicon>, tokens: &[Token<'_>]) -> Option<Self> {
        let (numbers, thread) = (Lexicon::numbers(tokens), sizes::thread(tokens));
        if numbers.is_empty() && thread.is_none() {
            return None;
        }
        let figures = stated_by(lexicon, tokens, &numbers);
        let counts = counts::stated(lexicon, tokens, &numbers);
        let states = !figures.is_empty() || !counts.is_empty() || thread.is_some();
        let apart = sizes::apart(&figures, tokens);
        states.then_some(Self { figures, counts, thread, apart })
    }
}

/// The words of a step with what they state.
struct Words<'w> {
    text: &'w str,
    lower: &'w Lower<'w>,
    stating: &'w Stating,
}

impl<'w> Words<'w> {
    /// The words once more in tokens: only where something seems to differ.
    fn tokens(&self) -> Vec<Token<'w>> {
        let mut tokens = Vec::new();
        tokens_into(self.text, self.lower.0, &mut tokens);
        tokens
    }
}

/// What the words of a step state otherwise than its actions, at the position of a step.
pub(super) fn differences(context: &Context<'_>, position: usize, step: &Step) -> Vec<Difference> {
    let mut found = Vec::new();
    let Some(lower) = context.heard.lower_at(position).filter(|_| !step.actions.is_empty()) else {
        return found;
    };
    names::differ(context, &lower, step, &mut found);
    if let Some(stating) = context.heard.stating(position) {
        let words = Words { text: &step.words, lower: &lower, stating };
        if !stating.figures.is_empty() {
            figures::differ(context, step, &words, &mut found);
        }
        if stating.thread.is_some() || stating.apart.is_some() {
            sizes::differ(context, step, &words, &mut found);
        }
        if !stating.counts.is_empty() {
            counts::differ(context, step, &words, &mut found);
        }
    }
    found
}

/// The only one of some.
fn only<T>(mut all: impl Iterator<Item = T>) -> Option<T> {
    all.next().filter(|_| all.next().is_none())
}

/// The word at a position, in lower case.
fn word<'t>(tokens: &'t [Token<'_>], at: usize) -> &'t str {
    tokens.get(at).map_or("", |token| token.text.as_ref())
}

/// Whether a token ends its clause.
fn ends_a_clause(tokens: &[Token<'_>], at: usize) -> bool {
    tokens.get(at + 1).is_none_or(|next| next.before != crate::lexicon::Break::None)
}

/// The words from one token to another, that one included, and where they stand.
fn stretch(words: &str, tokens: &[Token<'_>], from: usize, last: usize) -> (Span, String) {
    let at = |at: usize| tokens.get(at).map_or(Span(0, 0), |token| token.span);
    let span = Span(at(from).0, at(last).1);
    (span, span.of(words).to_owned())
}
