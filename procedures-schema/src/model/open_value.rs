//! Which values of a document somebody still has to find out, all in one place.

use super::{Id, Known, Procedure, Reading, Step};

/// Where a value is missing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum OpenPlace {
    /// The size of a connection.
    Size(Id),
    /// How tight a connection is made.
    Tight(Id),
    /// The size of a seal.
    SealSize(Id),
    /// The number of a seal.
    SealNumber(Id),
    /// The number of a component.
    ComponentNumber(Id),
    /// The number of a spare of the kit.
    SpareNumber(Id),
    /// The limits of a reading: the so many-th of its step, those after a failed test among them.
    Limits {
        /// The step.
        step: Id,
        /// Which reading, from 0; see [`each_reading`].
        reading: usize,
    },
    /// A value that a formula of a reading uses.
    Input {
        /// The step.
        step: Id,
        /// Which reading, from 0.
        reading: usize,
        /// Which of its inputs, from 0.
        input: usize,
    },
    /// Something that has no field of its own: an entry of `later`, from 0.
    Listed(usize),
}

/// A value that is still to be found out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OpenValue {
    /// Where it is missing.
    pub place: OpenPlace,
    /// What it is, in words: `size of the pump unions`.
    pub what: String,
    /// Who finds it out.
    pub who: String,
}

impl OpenValue {
    fn new(place: OpenPlace, what: String, who: &str) -> Self {
        Self { place, what, who: who.to_owned() }
    }
}

/// Everything of a document that is still to be found out: what the map lacks, the kit, the steps, and what is
/// listed.
pub fn open_values(document: &Procedure) -> Vec<OpenValue> {
    let mut open = Vec::new();
    of_map(document, &mut open);
    for (at, step) in document.steps.iter().enumerate() {
        // In the order in which `each_reading` visits them.
        for (nth, reading) in readings(step).into_iter().enumerate() {
            of_reading(reading, &step.id, at + 1, nth, &mut open);
        }
    }
    for (at, later) in document.later.iter().enumerate() {
        open.push(OpenValue::new(OpenPlace::Listed(at), later.what.clone(), &later.who));
    }
    open
}

fn of_map(document: &Procedure, open: &mut Vec<OpenValue>) {
    let map = &document.map;
    for connection in &map.connections {
        let (id, name) = (&connection.id, &connection.name);
        if let Some(who) = who(connection.size.as_ref()) {
            open.push(OpenValue::new(OpenPlace::Size(id.clone()), format!("size of the {name}"), who));
        }
        if let Some(who) = who(connection.tight.as_ref()) {
            let what = format!("how tight the {name} is made");
            open.push(OpenValue::new(OpenPlace::Tight(id.clone()), what, who));
        }
    }
    for seal in &map.seals {
        let (id, name) = (&seal.id, &seal.name);
        if let Some(who) = who(seal.size.as_ref()) {
            open.push(OpenValue::new(OpenPlace::SealSize(id.clone()), format!("size of the {name}"), who));
        }
        if let Some(who) = who(seal.number.as_ref()) {
            let what = format!("number of the {name}");
            open.push(OpenValue::new(OpenPlace::SealNumber(id.clone()), what, who));
        }
    }
    for component in &map.components {
        if let Some(who) = who(component.number.as_ref()) {
            let what = format!("number of the {}", component.name);
            open.push(OpenValue::new(OpenPlace::ComponentNumber(component.id.clone()), what, who));
        }
    }
    for spare in &document.kit.spares {
        if let Some(who) = who(spare.number.as_ref()) {
            let what = format!("number of the spare {}", spare.name);
            open.push(OpenValue::new(OpenPlace::SpareNumber(spare.id.clone()), what, who));
        }
    }
}

fn of_reading(reading: &Reading, step: &Id, number: usize, nth: usize, open: &mut Vec<OpenValue>) {
    if reading.limits.is_none() && !reading.later.trim().is_empty() {
        let place = OpenPlace::Limits { step: step.clone(), reading: nth };
        let what = format!("limits of \"{}\" in step {number}", reading.what);
        open.push(OpenValue::new(place, what, &reading.later));
    }
    for (input, value) in reading.inputs.iter().enumerate() {
        if let Some(who) = who(Some(&value.value)) {
            let place = OpenPlace::Input { step: step.clone(), reading: nth, input };
            open.push(OpenValue::new(place, format!("{} in step {number}", value.name), who));
        }
    }
}

/// Each reading of a step in order, with those of the steps after a failed test.
pub fn readings(step: &Step) -> Vec<&Reading> {
    let mut all = Vec::new();
    for action in &step.actions {
        all.extend(&action.readings);
        let after = action.on_fail.iter().flat_map(|on_fail| &on_fail.steps);
        all.extend(after.flat_map(readings));
    }
    all
}

/// Visits each reading of a step in order, with those of the steps after a failed test.
pub fn each_reading(step: &mut Step, visit: &mut dyn FnMut(&mut Reading)) {
    for action in &mut step.actions {
        action.readings.iter_mut().for_each(&mut *visit);
        for inner in action.on_fail.iter_mut().flat_map(|on_fail| &mut on_fail.steps) {
            each_reading(inner, visit);
        }
    }
}

/// Who finds a value out, if somebody still has to.
fn who<T>(value: Option<&Known<T>>) -> Option<&str> {
    match value? {
        Known::Later { later, .. } => Some(later),
        Known::Value(_) => None,
    }
}
