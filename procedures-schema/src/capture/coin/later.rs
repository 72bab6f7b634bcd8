//! Values that words leave for later: "renew the check valve, number later".

use super::super::mention::Mention;
use super::bench::Bench;
use super::seals::FINDS_OUT;
use crate::lexicon::Break;
use crate::model::{Id, Known, ThingKind};

/// What is left for later.
#[derive(Clone, Copy, PartialEq, Eq)]
enum What {
    Number,
    Size,
    Torque,
}

impl Bench<'_> {
    /// Notes what the words leave for later at the thing that they name last before it. What is known stays known.
    pub(super) fn leave_for_later(&mut self) {
        for at in 1..self.line.tokens.len() {
            let what = match self.line.text(at - 1) {
                "number" => What::Number,
                "size" | "thread" => What::Size,
                "torque" => What::Torque,
                _ => continue,
            };
            let is_said = self.line.text(at) == "later"
                && self.line.tokens.get(at).is_some_and(|token| token.before == Break::None);
            if let Some(thing) = self.thing_before(at - 1, what).filter(|_| is_said) {
                self.leave(&thing, what);
            }
        }
    }

    /// The thing named last before a token, in its sentence, that can have such a value.
    fn thing_before(&self, at: usize, what: What) -> Option<Id> {
        let begins =
            |i: &usize| self.line.tokens.get(*i).is_some_and(|token| token.before == Break::Sentence);
        // "Refit the cover: four screws": the colon ends no thought.
        let sentence = (0..=at).rev().find(|i| begins(i) && !self.follows_colon(*i)).unwrap_or(0);
        let before = self.mentions.iter().rev().filter(|m| m.from >= sentence && m.to <= at);
        let mut named = before.map(|mention| self.with_value(mention, what));
        named.find_map(|found| found)
    }

    fn follows_colon(&self, i: usize) -> bool {
        let before = i.checked_sub(1).and_then(|i| self.line.tokens.get(i));
        let (Some(before), Some(token)) = (before, self.line.tokens.get(i)) else { return false };
        crate::model::Span(before.span.1, token.span.0).of(self.line.words).contains(':')
    }

    /// The only thing of a mention that can have such a value; of several the one that this line makes. How tight a
    /// part is made is a matter of what holds it, if that is one thing.
    fn with_value(&self, mention: &Mention, what: What) -> Option<Id> {
        let fits = |kind: ThingKind| match what {
            What::Number => matches!(kind, ThingKind::Component | ThingKind::Seal),
            What::Size => matches!(kind, ThingKind::Connection | ThingKind::Seal),
            What::Torque => kind == ThingKind::Connection,
        };
        let only = |all: &[&Id]| match all {
            [only] => Some(Id::clone(only)),
            _ => None,
        };
        let of_kind = |fits: &dyn Fn(ThingKind) -> bool| -> Vec<&Id> {
            mention.candidates.iter().filter(|one| fits(one.kind)).map(|one| &one.id).collect()
        };
        let named = of_kind(&fits);
        let new: Vec<&Id> =
            named.iter().copied().filter(|id| self.made.iter().any(|made| made.thing == **id)).collect();
        let held = || {
            let part =
                only(&of_kind(&|kind| kind == ThingKind::Component)).filter(|_| what == What::Torque)?;
            let holds = self.map.connections.iter().filter(|known| known.joins.contains(&part));
            only(&holds.map(|known| &known.id).collect::<Vec<_>>())
        };
        only(&named).or_else(|| only(&new)).or_else(held)
    }

    fn leave(&mut self, thing: &Id, what: What) {
        let mut map = crate::model::ApplianceMap::clone(&self.map);
        let is_left = [
            map.components
                .iter_mut()
                .find(|one| one.id == *thing)
                .is_some_and(|part| what == What::Number && later(&mut part.number)),
            map.seals.iter_mut().find(|one| one.id == *thing).is_some_and(|seal| match what {
                What::Number => later(&mut seal.number),
                What::Size => later(&mut seal.size),
                What::Torque => false,
            }),
            map.connections.iter_mut().find(|one| one.id == *thing).is_some_and(|connection| match what {
                What::Size => later(&mut connection.size),
                What::Torque => later(&mut connection.tight),
                What::Number => false,
            }),
        ];
        if is_left.contains(&true) {
            self.map = std::sync::Arc::new(map);
            self.left.push(thing.clone());
        }
    }
}

/// Says that a value of which nothing is known is found out later; says whether nothing was known.
fn later<T>(value: &mut Option<Known<T>>) -> bool {
    let is_open = value.is_none();
    if is_open {
        *value = Some(Known::later(FINDS_OUT));
    }
    is_open
}
