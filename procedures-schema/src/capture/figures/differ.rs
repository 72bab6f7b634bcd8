//! Where words and map state different figures of a connection: both stand until somebody says which holds.

use super::value::Value;
use super::{SaidOtherwise, Stated};
use crate::lexicon::{Amount, Lexicon, Token, number_like, tokens};
use crate::model::{ApplianceMap, Id, Procedure, Span, Step};
use std::sync::Arc;

/// A figure that the words of a step state otherwise than the map.
#[derive(Clone, Debug, PartialEq)]
pub struct Differing {
    /// The connection.
    pub thing: Id,
    /// Where the words state it.
    pub span: Span,
    /// What the words state.
    pub said: Value,
    /// What the map holds.
    pub held: Value,
    /// Whether several of it are several joints.
    is_each: bool,
}

/// What the words of a step state otherwise than the map, of the connections that its actions name.
pub fn differing(step: &Step, map: &ApplianceMap) -> Vec<Differing> {
    SaidOtherwise::of(&step.words, step.actions.iter(), map, &step.stage).all
}

impl Stated {
    /// The difference to the map, if there is one that has to be decided: two of four screws may be meant as two.
    pub(super) fn differing(self, map: &ApplianceMap) -> Option<Differing> {
        // A washer of another size is no other thread.
        let span = self.span.filter(|_| !self.of_seal)?;
        let held = self.value.held(map, map.connection(&self.thing)?)?;
        let is_part = match (&self.value, &held) {
            (Value::Count(part), Value::Count(all)) => self.in_part && part <= all,
            _ => false,
        };
        let differs = !self.value.agrees(&held) && !is_part;
        let Self { thing, value: said, is_each, .. } = self;
        differs.then_some(Differing { thing, span, said, held, is_each })
    }
}

/// Whether words hold a figure or a number word at all: most sentences do not, and each is asked at each key.
pub(super) fn may_state(words: &str) -> bool {
    let is_amount = |token: &Token<'_>| {
        let lexicon = Lexicon::for_language("en");
        lexicon.is_some_and(|lexicon| matches!(lexicon.amount_of(token), Some(Amount::Exactly(_))))
    };
    words.bytes().any(|byte| byte.is_ascii_digit()) || tokens(words).iter().any(is_amount)
}

pub(super) fn put(map: &mut ApplianceMap, one: &Differing) {
    if let Some(connection) = map.connections.iter_mut().find(|known| known.id == one.thing) {
        one.said.put(connection, one.is_each);
    }
}

/// The map of a document with the figure that words state.
pub fn take_words(document: &Procedure, one: &Differing) -> Arc<ApplianceMap> {
    let mut map = ApplianceMap::clone(&document.map);
    put(&mut map, one);
    Arc::new(map)
}

/// The words of a step with the figure that the map holds.
pub fn write_value(step: &Step, one: &Differing) -> String {
    let end = u32::try_from(step.words.chars().count()).unwrap_or(u32::MAX);
    let was = one.span.of(&step.words);
    let text = match &one.held {
        Value::Count(n) => number_like(*n, was),
        held => held.to_string(),
    };
    [Span(0, one.span.0).of(&step.words), &text, Span(one.span.1, end).of(&step.words)].concat()
}
