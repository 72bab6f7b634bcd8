//! Steps carried to another place or into another procedure, together with the things that they name.
//!
//! A thing that the other map has under the same name and kind is taken for the same, unless it is on another circuit
//! or somebody says that it is another; every other comes along with what it needs: a section with its circuit, a
//! circuit with its isolators.
//! Questions and kit stay behind, because they belong to the document; what stays behind is told. Within one document
//! the things are there; those that are no more come back ([`Back`]).

use crate::edit::Edit;
use crate::model::{
    ApplianceMap, Id, IdSource, OwnPhrase, Procedure, References, Relinked, Step, ThingKind, step_links,
};
use onto::{exchange, needed, the_same, with_missing};
use std::collections::{BTreeMap, BTreeSet};
use std::ops::Range;
use std::sync::Arc;

mod back;
pub(super) mod onto;

pub use back::Back;

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
    /// Whether they are a stage as a whole, which is not put into the middle of another one.
    pub is_stage: bool,
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
    /// The names of the things that came back, since the document had them once.
    pub back: Vec<String>,
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
        let (from, map) = (document.id.clone(), document.map.clone());
        Self { from, map, steps: taken.cloned().collect(), words, is_stage: false }
    }

    /// What they are called, with their number where they are put: `step 4`, `steps 4 to 7`, `the stage make safe`.
    pub fn called(&self, first: usize) -> String {
        match self.steps.first().filter(|_| self.is_stage) {
            Some(step) => format!("the stage {}", step.stage.word()),
            None => called(first, self.steps.len()),
        }
    }

    /// The position for what is put below that of `at - 1`: right there, and for a stage behind the one that it would
    /// cut in two.
    pub fn place(&self, into: &Procedure, at: usize) -> usize {
        let before = at.checked_sub(1).filter(|_| self.is_stage);
        before.map_or(at, |before| stage_around(into, before).end.max(at))
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
        let back = if is_same { Back::of(into, &self.map, &self.steps) } else { Back::default() };
        arrival.edits.extend(back.map.clone().map(Edit::SetMap));
        arrival.back.clone_from(&back.things);
        let renamed = if is_same { BTreeMap::new() } else { self.things(into, ids, apart, &mut arrival) };
        let mut copies: BTreeMap<Id, Id> = BTreeMap::new();
        copies.extend(self.steps.iter().map(|step| (step.id.clone(), ids.next_id("step"))));
        for (offset, step) in self.steps.iter().enumerate() {
            let mut step = Step::clone(step);
            step.each_thing(&mut |id| exchange(id, &renamed));
            back.lead(&mut step);
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
        let named = named(&self.steps);
        let needed = needed(&self.map, named.clone());
        let same = the_same(&self.map, &into.map, apart);
        let mut renamed = BTreeMap::new();
        let mut missing = BTreeSet::new();
        for (kind, id, name, _) in self.map.things().filter(|(_, id, ..)| needed.contains(*id)) {
            if let Some(known) = same.get(id) {
                renamed.insert(id.clone(), known.clone());
                if named.contains(id) && !matches!(kind, ThingKind::Circuit | ThingKind::Section) {
                    arrival.same.push((id.clone(), name.to_owned()));
                }
            } else {
                renamed.insert(id.clone(), ids.next_id(kind.hint()));
                missing.insert(id.clone());
                arrival.things.push(name.to_owned());
            }
        }
        let phrases = self.phrases_for(into);
        if !missing.is_empty() || !phrases.is_empty() {
            let mut map = with_missing(&into.map, &self.map, &missing, &renamed);
            arrival.things.extend(phrases.iter().map(|own| format!("the phrase \"{}\"", own.words)));
            map.phrases.extend(phrases);
            arrival.edits.push(Edit::SetMap(Arc::new(map)));
        }
        renamed
    }
}

impl Carried {
    /// The phrases of the procedure whose words stand in the steps, and which another lacks. Other forms of a word begin
    /// alike; a phrase too many does no harm.
    fn phrases_for(&self, into: &Procedure) -> Vec<OwnPhrase> {
        let is_word = |c: char| c.is_alphanumeric() || c == '-';
        let words = |text: &str| -> BTreeSet<String> {
            text.to_lowercase().split(|c| !is_word(c)).map(str::to_owned).collect()
        };
        let said: Vec<BTreeSet<String>> = self.steps.iter().map(|step| words(&step.words)).collect();
        let begins = |word: &str| word.chars().take(3).collect::<String>();
        let stands = |said: &BTreeSet<String>, word: &str| said.iter().any(|one| begins(one) == begins(word));
        let is_said = |own: &&OwnPhrase| {
            let own = words(&own.words);
            said.iter().any(|said| own.iter().all(|word| stands(said, word)))
        };
        let is_new = |own: &&OwnPhrase| !into.map.phrases.iter().any(|known| known.is_called(&own.words));
        self.map.phrases.iter().filter(is_new).filter(is_said).cloned().collect()
    }
}

/// The positions of the stage in which a step stands: all that follow each other and have its stage.
pub fn stage_around(document: &Procedure, at: usize) -> Range<usize> {
    let stage = document.steps.get(at).map(|step| &step.stage);
    let is_it = |step: &&Arc<Step>| Some(&step.stage) == stage;
    let n_before = document.steps.iter().take(at).rev().take_while(is_it).count();
    let n_behind = document.steps.iter().skip(at).take_while(is_it).count();
    at - n_before.min(at)..at + n_behind
}

/// What a stretch of steps is called in a label: `step 4`, `steps 4 to 7`.
pub fn called(first: usize, n: usize) -> String {
    if n == 1 { format!("step {}", first + 1) } else { format!("steps {} to {}", first + 1, first + n) }
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

#[cfg(test)]
mod tests;
