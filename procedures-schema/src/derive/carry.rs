//! Steps carried to another place or into another procedure, together with the things that they name.
//!
//! A thing that the other map has under the same name and kind is taken for the same, unless somebody says that it is
//! another; every other comes along with what it needs: a section with its circuit, a circuit with its isolators.
//! Questions and kit stay behind, because they belong to the document; what stays behind is told.

use crate::edit::Edit;
use crate::model::{
    ApplianceMap, Component, Connection, Id, IdSource, Isolator, Procedure, References, Relinked, SUPPLY,
    Seal, Setting, Step, Temporary, ThingKind, step_links,
};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// Steps with the map that they speak of.
#[derive(Clone, Debug, PartialEq)]
pub struct Carried {
    /// The document that they come from.
    pub from: Id,
    /// Its map.
    pub map: Arc<ApplianceMap>,
    /// The steps in their order.
    pub steps: Vec<Arc<Step>>,
    /// Their words as people read them where they come from, with the numbers that their links show there.
    pub words: Vec<String>,
}

/// What becomes of carried steps where they are put.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Arrival {
    /// The edits, to be applied in order as one entry of the undo.
    pub edits: Vec<Edit>,
    /// The ids of the new steps.
    pub steps: Vec<Id>,
    /// The names of the things that came along.
    pub things: Vec<String>,
    /// What the steps name and was taken for what is there: its id where it comes from, and its name.
    pub same: Vec<(Id, String)>,
    /// What could not come along, in words.
    pub left_behind: Vec<String>,
}

impl Carried {
    /// These steps of a document; those that it does not have are left out.
    pub fn of(document: &Procedure, steps: &[Id]) -> Self {
        let taken = document.steps.iter().filter(|step| steps.contains(&step.id));
        let words = taken.clone().map(|step| document.words_of(step)).collect();
        Self { from: document.id.clone(), map: document.map.clone(), steps: taken.cloned().collect(), words }
    }

    /// The steps as plain text, a line each.
    pub fn text(&self) -> String {
        self.words.iter().flat_map(|words| [words.as_str(), "\n"]).collect()
    }

    /// Puts copies of the steps at a position of a document.
    pub fn arrive(&self, into: &Procedure, at: usize, ids: &mut dyn IdSource) -> Arrival {
        self.arrive_apart(into, at, ids, &BTreeSet::new())
    }

    /// As [`Carried::arrive`]; the things in `apart`, by their ids where they come from, come along as new ones
    /// although another of the same name is there.
    pub fn arrive_apart(
        &self,
        into: &Procedure,
        at: usize,
        ids: &mut dyn IdSource,
        apart: &BTreeSet<Id>,
    ) -> Arrival {
        let mut arrival = Arrival::default();
        let is_same = self.from == into.id;
        let renamed = if is_same { BTreeMap::new() } else { self.things(into, ids, apart, &mut arrival) };
        let mut copies: BTreeMap<Id, Id> = BTreeMap::new();
        copies.extend(self.steps.iter().map(|step| (step.id.clone(), ids.next_id("step"))));
        for (offset, step) in self.steps.iter().enumerate() {
            let mut step = Step::clone(step);
            step.each_thing(&mut |id| exchange(id, &renamed));
            let number = offset + 1;
            for action in &mut step.actions {
                action.until = action.until.take().and_then(|until| {
                    copies.get(&until).cloned().or_else(|| into.position(&until).map(|_| until))
                });
            }
            relink(&mut step, &copies);
            if step_links(&step.words).iter().any(|link| !is_there(link.step, into, &copies)) {
                arrival.left_behind.push(format!("the step that copied step {number} points at"));
            }
            if !is_same {
                leave_behind(&mut step, into, number, &mut arrival.left_behind);
            }
            if let Some(copy) = copies.get(&step.id) {
                step.id = copy.clone();
            }
            arrival.steps.push(step.id.clone());
            arrival.edits.push(Edit::InsertStep { at: at + offset, step: Arc::new(step) });
        }
        arrival
    }

    /// Adds the things that are missing; gives the id of each thing in the other document.
    fn things(
        &self,
        into: &Procedure,
        ids: &mut dyn IdSource,
        apart: &BTreeSet<Id>,
        arrival: &mut Arrival,
    ) -> BTreeMap<Id, Id> {
        let (needed, named) = (needed(&self.map, &self.steps), named(&self.steps));
        let mut renamed = BTreeMap::new();
        let mut missing = BTreeSet::new();
        for (kind, id, name, _) in self.map.things().filter(|(_, id, ..)| needed.contains(*id)) {
            if let Some(known) = thing_named(&into.map, kind, name).filter(|_| !apart.contains(id)) {
                renamed.insert(id.clone(), known);
                if named.contains(id) && !matches!(kind, ThingKind::Circuit | ThingKind::Section) {
                    arrival.same.push((id.clone(), name.to_owned()));
                }
            } else {
                renamed.insert(id.clone(), ids.next_id(kind.hint()));
                missing.insert(id.clone());
                arrival.things.push(name.to_owned());
            }
        }
        if !missing.is_empty() {
            let mut map = with_missing(&into.map, &self.map, &missing, &renamed);
            for id in apart.iter().filter_map(|id| renamed.get(id)) {
                tell_apart(&mut map, id);
            }
            arrival.edits.push(Edit::SetMap(Arc::new(map)));
        }
        renamed
    }
}

/// Gives a thing a name that no other of the map has: the same with a number behind it.
fn tell_apart(map: &mut ApplianceMap, id: &Id) {
    let name = map.name_of(id).to_owned();
    let is_free = |name: &String| map.things().all(|(_, _, other, _)| !other.eq_ignore_ascii_case(name));
    let Some(free) = (2..10_000_u32).map(|n| format!("{name} {n}")).find(is_free) else { return };
    macro_rules! rename {
        ($($list:ident),*) => {$(
            map.$list.iter_mut().filter(|thing| thing.id == *id).for_each(|thing| thing.name.clone_from(&free));
        )*};
    }
    rename!(isolators, components, connections, seals, temporary, settings);
}

/// Lets links to steps that are copied too point at the copies.
fn relink(step: &mut Step, copies: &BTreeMap<Id, Id>) {
    let relinked = Relinked::new(&step.words, |target| {
        copies.get(&Id::new(target)).map(|copy| copy.as_str().to_owned())
    });
    for span in step.actions.iter_mut().flat_map(|action| &mut action.says) {
        *span = relinked.span(*span);
    }
    step.words = relinked.words;
    step.after_failures_mut().for_each(|step| relink(step, copies));
}

fn is_there(step: &str, into: &Procedure, copies: &BTreeMap<Id, Id>) -> bool {
    let id = Id::new(step);
    into.position(&id).is_some() || copies.values().any(|copy| *copy == id)
}

fn thing_named(map: &ApplianceMap, kind: ThingKind, name: &str) -> Option<Id> {
    let is_it = |known: ThingKind, other: &str| known == kind && other.eq_ignore_ascii_case(name);
    map.things().find(|(known, _, other, _)| is_it(*known, other)).map(|(_, id, ..)| id.clone())
}

fn exchange(id: &mut Id, renamed: &BTreeMap<Id, Id>) {
    if let Some(other) = renamed.get(id) {
        *id = other.clone();
    }
}

/// Drops what only the document of origin knows, and says so.
fn leave_behind(step: &mut Step, into: &Procedure, number: usize, told: &mut Vec<String>) {
    let knows = |id: &Id| into.questions.iter().any(|question| question.id == *id);
    let n_answers = step.when.len();
    step.when.retain(|answer| knows(&answer.question));
    if step.when.len() < n_answers {
        told.push(format!("the question on which copied step {number} depends"));
    }
    for action in &mut step.actions {
        if action.ask.as_ref().is_some_and(|ask| !knows(ask)) {
            action.ask = None;
            told.push(format!("the question that copied step {number} puts"));
        }
    }
}

/// The things that steps name.
fn named(steps: &[Arc<Step>]) -> Vec<Id> {
    let mut named = Vec::new();
    for step in steps {
        Step::clone(step).each_thing(&mut |id| named.push(id.clone()));
    }
    named
}

/// The things that steps name, and what those need, down to the last.
fn needed(map: &ApplianceMap, steps: &[Arc<Step>]) -> BTreeSet<Id> {
    let mut found = BTreeSet::new();
    let mut open = named(steps);
    while let Some(id) = open.pop() {
        if id.as_str() != SUPPLY && found.insert(id.clone()) {
            open.extend(needs(map, &id));
        }
    }
    found
}

/// What one thing needs.
fn needs(map: &ApplianceMap, id: &Id) -> Vec<Id> {
    let mut all = Vec::new();
    let mut note = |id: &mut Id| all.push(id.clone());
    let is = |known: &Id| known == id;
    for circuit in map.circuits.iter().filter(|c| is(&c.id) || c.sections.iter().any(|s| is(&s.id))) {
        circuit.clone().each_thing(&mut note);
        note(&mut circuit.id.clone());
        circuit.sections.iter().for_each(|section| note(&mut section.id.clone()));
        let borders = |side: &Id| circuit.sections.iter().any(|section| section.id == *side);
        let around = |isolator: &&Isolator| borders(&isolator.between.0) || borders(&isolator.between.1);
        map.isolators.iter().filter(around).for_each(|isolator| note(&mut isolator.id.clone()));
    }
    let mut of = |thing: &mut dyn References| thing.each_thing(&mut note);
    map.isolators.iter().filter(|t| is(&t.id)).for_each(|t| of(&mut Isolator::clone(t)));
    map.components.iter().filter(|t| is(&t.id)).for_each(|t| of(&mut Component::clone(t)));
    map.connections.iter().filter(|t| is(&t.id)).for_each(|t| of(&mut Connection::clone(t)));
    map.temporary.iter().filter(|t| is(&t.id)).for_each(|t| of(&mut Temporary::clone(t)));
    map.settings.iter().filter(|t| is(&t.id)).for_each(|t| of(&mut Setting::clone(t)));
    all
}

/// A map with the things of another that it lacks, under their new ids.
fn with_missing(
    into: &ApplianceMap,
    from: &ApplianceMap,
    missing: &BTreeSet<Id>,
    renamed: &BTreeMap<Id, Id>,
) -> ApplianceMap {
    let mut map = into.clone();
    let known = |id: &Id| renamed.get(id).unwrap_or(id).clone();
    for circuit in &from.circuits {
        let mut copy = circuit.clone();
        copy.sections.retain(|section| missing.contains(&section.id));
        copy.sections.iter_mut().for_each(|section| section.id = known(&section.id));
        if missing.contains(&circuit.id) {
            copy.id = known(&circuit.id);
            copy.each_thing(&mut |id| exchange(id, renamed));
            map.circuits.push(copy);
        } else if let Some(there) = map.circuits.iter_mut().find(|there| there.id == known(&circuit.id)) {
            there.sections.append(&mut copy.sections);
        }
    }
    macro_rules! bring {
        ($($list:ident: $thing:ident),*) => {$(
            for thing in from.$list.iter().filter(|thing| missing.contains(&thing.id)) {
                let mut copy = $thing::clone(thing);
                copy.id = known(&thing.id);
                copy.images.clear();
                copy.each_thing(&mut |id| exchange(id, renamed));
                map.$list.push(copy);
            }
        )*};
    }
    bring!(
        isolators: Isolator, components: Component, connections: Connection, seals: Seal,
        temporary: Temporary, settings: Setting
    );
    map
}

#[cfg(test)]
mod tests;
