//! The map follows figures that are mended in the sentence which made a thing.

use super::value::{SealNamed, Value, only_seal};
use super::{Stated, named, stated};
use crate::lexicon::tokens;
use crate::model::{ApplianceMap, Connection, Id, Known, Procedure, Step};
use std::sync::Arc;

/// The map of a document in which a step gets other words, with what follows them; none, if it stays as it is.
///
/// `first` is the step with which typing began and `before` the map at that time: whatever the map says by then as the
/// words did follows them, as often as they change, and comes back where they say nothing any more.
pub fn follow_words(
    document: &Procedure,
    position: usize,
    first: &Step,
    before: &Arc<ApplianceMap>,
    words: &str,
) -> Option<Arc<ApplianceMap>> {
    if Arc::ptr_eq(before, &document.map) && figures(&first.words) == figures(words) {
        return None;
    }
    let named = named(first.actions.iter(), before);
    let was = stated(&first.words, &named, before, &first.stage);
    if was.is_empty() {
        return None;
    }
    let is = stated(words, &named, before, &first.stage);
    let mut map = ApplianceMap::clone(&document.map);
    for id in named {
        let old = before.connection(id).filter(|_| was.iter().any(|stated| stated.thing == *id));
        if let Some(old) = old {
            Follower { document, position, before, old, was: &was, is: &is }.follow(&mut map);
        }
    }
    (map != *document.map).then(|| Arc::new(map))
}

/// A connection that follows the words of a step.
struct Follower<'a> {
    document: &'a Procedure,
    position: usize,
    before: &'a ApplianceMap,
    /// As it was when typing began.
    old: &'a Connection,
    was: &'a [Stated],
    is: &'a [Stated],
}

impl Follower<'_> {
    fn follow(&self, map: &mut ApplianceMap) {
        let Some(at) = map.connections.iter().position(|known| known.id == self.old.id) else { return };
        let mut changed = match map.connections.get(at) {
            Some(known) => Connection {
                count: self.old.count,
                grouping: self.old.grouping.clone(),
                size: self.old.size.clone(),
                tight: self.old.tight.clone(),
                ..known.clone()
            },
            None => return,
        };
        for new in self.mended() {
            new.value.put(&mut changed, new.is_each);
        }
        if let Some(known) = map.connections.get_mut(at) {
            *known = changed;
        }
        self.seal(map);
    }

    /// What the words state otherwise than before and the map does not hold otherwise.
    fn mended(&self) -> Vec<Stated> {
        let own = self.is.iter().filter(|is| is.thing == self.old.id && is.span.is_some());
        own.filter(|is| self.may_follow(is)).cloned().collect()
    }

    fn may_follow(&self, is: &Stated) -> bool {
        let held = is.value.held(self.before, self.old);
        let own = |was: &&Stated| was.thing == self.old.id && was.value.is_sort_of(&is.value);
        let was = self.was.iter().find(own).map(|was| &was.value);
        // A torque that words state belongs to their action, unless the map has taken it over.
        let is_of_map = match (&held, was) {
            (Some(held), Some(was)) => held.agrees(was),
            (None, None) => !matches!(is.value, Value::Torque(_)),
            _ => false,
        };
        let differs = held.is_none_or(|held| !held.agrees(&is.value));
        is_of_map && differs && !self.is_denied(is)
    }

    /// Whether another step states another figure.
    fn is_denied(&self, is: &Stated) -> bool {
        let id = &self.old.id;
        let steps = self.document.steps.iter().enumerate().filter(|(at, _)| *at != self.position);
        let mut others = steps.filter(|(_, step)| on(step, id));
        others.any(|(_, step)| {
            let told = stated(&step.words, &[id], &self.document.map, &step.stage);
            told.iter().any(|told| {
                let is_part = match (&told.value, &is.value) {
                    (Value::Count(part), Value::Count(all)) => told.in_part && part <= all,
                    _ => false,
                };
                told.span.is_some()
                    && !told.of_seal
                    && told.value.is_sort_of(&is.value)
                    && !told.value.agrees(&is.value)
                    && !is_part
            })
        })
    }

    /// The seal that the words gave the joint gets the name and measures that they give it now; if it is the seal of
    /// others too, the joint takes the one of that name, if there is one.
    fn seal(&self, map: &mut ApplianceMap) {
        let of = |all: &[Stated]| -> Option<SealNamed> {
            all.iter().find_map(|stated| match &stated.value {
                Value::Seal(seal) if stated.thing == self.old.id => Some(seal.clone()),
                _ => None,
            })
        };
        let Some(old) = only_seal(self.before, self.old) else { return };
        let was = of(self.was).filter(|was| was.name == old.name);
        let (Some(was), Some(now)) = (was, of(self.is)) else { return };
        let is_shared = map
            .connections
            .iter()
            .any(|other| other.id != self.old.id && other.seals.iter().any(|used| used.seal == old.id));
        let other = map.seals.iter().find(|seal| seal.name == now.name && seal.id != old.id);
        let other = other.map(|seal| seal.id.clone());
        if let Some(used) = map
            .connections
            .iter_mut()
            .find(|known| known.id == self.old.id)
            .and_then(|known| known.seals.first_mut())
        {
            used.seal = other.clone().unwrap_or_else(|| old.id.clone());
        }
        if is_shared || other.is_some() {
            return;
        }
        if let Some(seal) = map.seals.iter_mut().find(|seal| seal.id == old.id) {
            seal.name.clone_from(&now.name);
            if old.size.as_ref().and_then(Known::value) == was.measured.as_ref()
                && now.measured != was.measured
            {
                seal.size = now.measured.map(Known::Value);
            } else {
                seal.size.clone_from(&old.size);
            }
        }
    }
}

/// Whether a step does something to a thing.
fn on(step: &Step, id: &Id) -> bool {
    step.actions.iter().any(|action| action.on.contains(id))
}

/// What of words can be a figure: whoever changes nothing of it mends no figure.
fn figures(words: &str) -> Vec<String> {
    let cut = tokens(words);
    let lexicon = crate::lexicon::Lexicon::for_language("en");
    let is_figure = |text: &str| {
        text.bytes().any(|byte| byte.is_ascii_digit())
            || lexicon.is_some_and(|lexicon| lexicon.amount(text).is_some())
            || matches!(text, "half" | "quarter" | "inch" | "inches" | "in" | "mm" | "nm" | "m" | "g" | "r")
    };
    cut.iter().filter(|token| is_figure(&token.text)).map(|token| token.raw.to_owned()).collect()
}
