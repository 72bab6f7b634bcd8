//! Whose a figure or a count is by what it stands beside: where one of several equal ones is stated otherwise, nothing
//! is left over of the actions that could tell.
//!
//! It is certain only if each has one of its own: as many stand in the words as are held, each action or reading is
//! named at one place, and from there up to the next of them stands just one figure.

use super::held::{Held, each_held};
use super::reading::Stated;
use super::{only, word};
use crate::check::context::Context;
use crate::lexicon::{Token, tokens};
use crate::model::Step;
use crate::simulate::default_readings;
use crate::units::{Quantity, Range};

/// What is held where the only one of some figures stands that does not agree with it.
pub(super) fn holding(
    context: &Context<'_>,
    step: &Step,
    words: &[Token<'_>],
    stated: &[&Stated],
    is_met: fn(&Stated, &Held) -> bool,
) -> Option<Held> {
    let kind = stated.first().filter(|_| stated.len() > 1)?.unit.quantity();
    let mut held: Vec<Held> = Vec::new();
    each_held(context, step, kind, &mut |holder, range| held.push(Held::of_range(holder, range)));
    if held.len() != stated.len() {
        return None;
    }
    let mut begins: Vec<usize> = Vec::new();
    for (at, one) in held.iter().enumerate() {
        let k = one.holder.action();
        let nth = held.iter().take(at).filter(|other| other.holder.action() == k).count();
        let is_alone = held.iter().filter(|other| other.holder.action() == k).count() == 1;
        begins.push(if is_alone {
            first_said(step, words, k)?
        } else {
            named_at(words, &limited(context, step, k, nth, kind)?)?
        });
    }
    let at: Vec<usize> = stated.iter().map(|stated| stated.from).collect();
    let owners = owners(&at, &begins)?;
    let mut differing = owners.iter().zip(stated).filter_map(|(owner, stated)| {
        let held = held.get(*owner)?;
        (!is_met(stated, held)).then_some(*owner)
    });
    let (first, None) = (differing.next()?, differing.next()) else { return None };
    Some(held.swap_remove(first))
}

/// For places in the words, in order, the positions of what they belong to: of what begins last before each. None
/// unless each belongs to another.
pub(super) fn owners(places: &[usize], begins: &[usize]) -> Option<Vec<usize>> {
    let mut owners: Vec<usize> = Vec::new();
    for place in places {
        let before = begins.iter().enumerate().filter(|(_, begin)| *begin <= place);
        let (owner, begin) = before.max_by_key(|(_, begin)| **begin)?;
        let is_shared = begins.iter().filter(|other| *other == begin).count() > 1;
        if is_shared || owners.contains(&owner) {
            return None;
        }
        owners.push(owner);
    }
    Some(owners)
}

/// The token at which the words of an action begin.
pub(super) fn first_said(step: &Step, words: &[Token<'_>], action: usize) -> Option<usize> {
    let first = step.actions.get(action)?.says.iter().map(|span| span.0).min()?;
    words.iter().position(|token| token.span.1 > first)
}

/// What the readings of an action that has several limits of one quantity are of: the one at a position among them.
fn limited(context: &Context<'_>, step: &Step, action: usize, nth: usize, kind: Quantity) -> Option<String> {
    let action = step.actions.get(action)?;
    let readings = default_readings(context.procedure, action);
    let is_of_kind = |limits: &Range| limits.unit.quantity() == kind;
    let mut limited = readings.into_iter().filter(|reading| reading.limits.as_ref().is_some_and(is_of_kind));
    limited.nth(nth).map(|reading| reading.what)
}

/// The token at which a text stands in the words, if it stands there once: "L to N" in "L-N 0 V to 5 V" too.
fn named_at(words: &[Token<'_>], text: &str) -> Option<usize> {
    let plain = |all: &mut dyn Iterator<Item = &str>| {
        let words = all.filter(|word| *word != "to");
        words.flat_map(str::chars).filter(|c| *c != '-').collect::<String>()
    };
    let named = tokens(text);
    let name = plain(&mut named.iter().map(|token| token.text.as_ref()));
    let is_here = |at: &usize| {
        let ends = *at + 1..=words.len().min(*at + named.len());
        let is_name = |end: usize| {
            let here = words.get(*at..end).unwrap_or_default();
            plain(&mut here.iter().map(|token| token.text.as_ref())) == name
        };
        word(words, *at) != "to" && ends.into_iter().any(is_name)
    };
    only((0..words.len()).filter(is_here)).filter(|_| !name.is_empty())
}
