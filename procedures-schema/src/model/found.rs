//! What was found out on a job: answers to what a procedure leaves open, as a file of their own.
//!
//! An answer names its place by identities and not by positions, since the procedure may have been changed by the
//! time it comes back. It is kept as it was typed; what becomes of it is said by whoever takes it in.

use super::words::words;
use super::{Id, Moment, OpenPlace, OpenValue, Procedure, Reading, Rest, open_values, readings};
use serde::{Deserialize, Serialize};

/// The version of files of answers that this program writes.
pub const FOUND_VERSION: u32 = 1;

/// Answers found on one job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct FoundOnJob {
    /// The version of the format of answers.
    pub putback_found: u32,
    /// The procedure that was followed, by its id.
    pub procedure: Id,
    /// Its title at that time.
    pub title: String,
    /// The mark of its last revision at that time; empty if it had none.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub revision: String,
    /// The answers, in the order in which they were found.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub answers: Vec<Found>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

words! {
    /// What was missing.
    FoundValue {
        /// The size of a connection.
        Size = "size",
        /// How tight a connection is made.
        Tight = "tight",
        /// The size of a seal.
        SealSize = "seal size",
        /// The number of a seal.
        SealNumber = "seal number",
        /// The number of a component.
        ComponentNumber = "component number",
        /// The number of a spare of the kit.
        SpareNumber = "spare number",
        /// The limits of a reading.
        Limits = "limits",
        /// A value that a formula of a reading uses.
        Input = "input",
        /// An entry of the list `later`.
        Listed = "later",
    }
}

/// One answer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Found {
    /// What was missing.
    pub value: FoundValue,
    /// The connection, seal, component or spare that it was missing of.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thing: Option<Id>,
    /// The step of the reading that it was missing of.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub step: Option<Id>,
    /// Which reading of the step, from 0.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reading: Option<u32>,
    /// Which input of the reading, from 0.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub input: Option<u32>,
    /// What the reading, the input or the entry of `later` is called, by which it is found again.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub name: String,
    /// What was missing, in words for people.
    pub what: String,
    /// What was found, as it was typed.
    pub answer: String,
    /// When, by the clock of the device.
    pub time: Moment,
    /// Who found it, if they said so.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub by: String,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

/// Why an answer has no place in a procedure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoPlace {
    /// Something has been said there already.
    NotOpen,
    /// What it belongs to has been taken out, or is called otherwise now.
    Gone,
    /// A newer version knows what it is.
    Unknown,
}

impl std::fmt::Display for NoPlace {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::NotOpen => "this is not open any more",
            Self::Gone => "what it belongs to is not in this procedure any more",
            Self::Unknown => "only a newer version of the program knows what it is",
        })
    }
}

impl FoundOnJob {
    /// No answers yet, of a job on this procedure.
    pub fn of(procedure: &Procedure) -> Self {
        Self {
            putback_found: FOUND_VERSION,
            procedure: procedure.id.clone(),
            title: procedure.title.clone(),
            revision: procedure.revisions.last().map(|last| last.revision.clone()).unwrap_or_default(),
            answers: Vec::new(),
            rest: Rest::default(),
        }
    }

    /// With an answer in the place of the one that was found there before. An empty one leaves the place open.
    #[must_use]
    pub fn with(mut self, found: Found) -> Self {
        let known = self.answers.iter().position(|known| known.is_of_the_same(&found));
        match (known, found.answer.trim().is_empty()) {
            (Some(at), true) => drop(self.answers.remove(at)),
            (Some(at), false) => self.answers[at] = found,
            (None, true) => {}
            (None, false) => self.answers.push(found),
        }
        self
    }
}

impl Found {
    /// An answer to something that this procedure leaves open.
    pub fn new(procedure: &Procedure, open: &OpenValue, answer: &str, time: Moment) -> Self {
        let number = |at: usize| u32::try_from(at).ok();
        let (value, thing, step, reading, input) = match &open.place {
            OpenPlace::Size(id) => (FoundValue::Size, Some(id), None, None, None),
            OpenPlace::Tight(id) => (FoundValue::Tight, Some(id), None, None, None),
            OpenPlace::SealSize(id) => (FoundValue::SealSize, Some(id), None, None, None),
            OpenPlace::SealNumber(id) => (FoundValue::SealNumber, Some(id), None, None, None),
            OpenPlace::ComponentNumber(id) => (FoundValue::ComponentNumber, Some(id), None, None, None),
            OpenPlace::SpareNumber(id) => (FoundValue::SpareNumber, Some(id), None, None, None),
            OpenPlace::Limits { step, reading } => {
                (FoundValue::Limits, None, Some(step), number(*reading), None)
            }
            OpenPlace::Input { step, reading, input } => {
                (FoundValue::Input, None, Some(step), number(*reading), number(*input))
            }
            OpenPlace::Listed(_) => (FoundValue::Listed, None, None, None, None),
        };
        Self {
            value,
            thing: thing.cloned(),
            step: step.cloned(),
            reading,
            input,
            name: name_of(procedure, &open.place),
            what: open.what.clone(),
            answer: answer.trim().to_owned(),
            time,
            by: String::new(),
            rest: Rest::default(),
        }
    }

    /// Whether both answer the same.
    pub fn is_of_the_same(&self, other: &Self) -> bool {
        let place = |found: &Self| {
            let Self { value, thing, step, reading, input, name, .. } = found.clone();
            (value, thing, step, reading, input, name)
        };
        place(self) == place(other)
    }

    /// The place in a procedure that it answers.
    ///
    /// # Errors
    /// If nothing is open there, or there is no such place.
    pub fn place(&self, procedure: &Procedure) -> Result<OpenPlace, NoPlace> {
        if !self.value.is_known() {
            return Err(NoPlace::Unknown);
        }
        let mut open = open_values(procedure).into_iter().map(|open| open.place);
        let found = open.find(|place| self.fits(procedure, place));
        found.ok_or(if self.is_there(procedure) { NoPlace::NotOpen } else { NoPlace::Gone })
    }

    fn fits(&self, procedure: &Procedure, place: &OpenPlace) -> bool {
        let is_thing = |id: &Id| self.thing.as_ref() == Some(id);
        let is_step = |id: &Id| self.step.as_ref() == Some(id);
        let is_named = || name_of(procedure, place) == self.name;
        match (&self.value, place) {
            (FoundValue::Size, OpenPlace::Size(id))
            | (FoundValue::Tight, OpenPlace::Tight(id))
            | (FoundValue::SealSize, OpenPlace::SealSize(id))
            | (FoundValue::SealNumber, OpenPlace::SealNumber(id))
            | (FoundValue::ComponentNumber, OpenPlace::ComponentNumber(id))
            | (FoundValue::SpareNumber, OpenPlace::SpareNumber(id)) => is_thing(id),
            (FoundValue::Limits, OpenPlace::Limits { step, .. })
            | (FoundValue::Input, OpenPlace::Input { step, .. }) => {
                // Of several with one name the one in the same position is meant.
                is_step(step) && is_named() && (self.is_at(place) || self.n_named(procedure) == 1)
            }
            (FoundValue::Listed, OpenPlace::Listed(_)) => is_named(),
            _ => false,
        }
    }

    fn is_at(&self, place: &OpenPlace) -> bool {
        let same = |given: Option<u32>, at: usize| given.is_some_and(|given| u32::try_from(at) == Ok(given));
        match place {
            OpenPlace::Limits { reading, .. } => same(self.reading, *reading),
            OpenPlace::Input { reading, input, .. } => {
                same(self.reading, *reading) && same(self.input, *input)
            }
            _ => false,
        }
    }

    /// Whether what it belongs to is there, whatever is said of it.
    fn is_there(&self, procedure: &Procedure) -> bool {
        if let Some(thing) = &self.thing {
            return procedure.map.things().any(|(_, id, ..)| id == thing)
                || procedure.kit.spares.iter().any(|spare| spare.id == *thing);
        }
        self.n_named(procedure) > 0
    }

    /// How many readings or inputs of its step have its name.
    fn n_named(&self, procedure: &Procedure) -> usize {
        let step = procedure.steps.iter().find(|known| Some(&known.id) == self.step.as_ref());
        let all = step.map(|step| readings(step)).unwrap_or_default().into_iter();
        match self.value {
            FoundValue::Input => {
                all.flat_map(|reading| &reading.inputs).filter(|input| input.name == self.name).count()
            }
            _ => all.filter(|reading| reading.what == self.name).count(),
        }
    }
}

/// What a reading, an input or an entry is called; things of the map are known by their ids.
fn name_of(procedure: &Procedure, place: &OpenPlace) -> String {
    let reading = |step: &Id, nth: usize| -> Option<&Reading> {
        let step = procedure.steps.iter().find(|known| known.id == *step)?;
        readings(step).into_iter().nth(nth)
    };
    let name = match place {
        OpenPlace::Limits { step, reading: nth } => reading(step, *nth).map(|reading| &reading.what),
        OpenPlace::Input { step, reading: nth, input } => {
            reading(step, *nth).and_then(|reading| reading.inputs.get(*input)).map(|input| &input.name)
        }
        OpenPlace::Listed(at) => procedure.later.get(*at).map(|later| &later.what),
        _ => None,
    };
    name.cloned().unwrap_or_default()
}

#[cfg(test)]
mod tests;
