//! What a procedure has no room for: more steps than a file may have, and texts that are longer than it may hold.

use super::limits::{MOST_CHARACTERS, MOST_STEPS, MOST_THINGS, grouped};
use crate::model::{Procedure, Step};
use serde::Serialize;
use serde_json::Value;
use std::collections::BTreeSet;
use std::sync::Arc;

/// Why a text is not taken at all.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TooMuch {
    /// The procedure would have so many steps.
    Steps(usize),
    /// The appliance would have so many things.
    Things(usize),
    /// A line has so many characters.
    Characters {
        /// The line, from 1.
        line: usize,
        /// How many.
        n: usize,
    },
    /// A text would have so many characters.
    Text(usize),
}

impl std::fmt::Display for TooMuch {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Steps(n) => {
                let (n, most) = (grouped(*n), grouped(MOST_STEPS));
                write!(f, "the procedure would have {n} steps, and it can have {most}")
            }
            Self::Things(n) => {
                let (n, most) = (grouped(*n), grouped(MOST_THINGS));
                write!(f, "the appliance would have {n} things, and it can have {most}")
            }
            Self::Characters { line, n } => {
                let (n, most) = (grouped(*n), grouped(MOST_CHARACTERS));
                write!(f, "line {line} has {n} characters, and a text can have {most}")
            }
            Self::Text(n) => {
                let (n, most) = (grouped(*n), grouped(MOST_CHARACTERS));
                write!(f, "a text would have {n} characters, and it can have {most}")
            }
        }
    }
}

impl std::error::Error for TooMuch {}

/// Whether a procedure has room for so many steps and things more.
///
/// # Errors
/// If it has not.
pub fn has_room(procedure: &Procedure, n_steps: usize, n_things: usize) -> Result<(), TooMuch> {
    let there = procedure.steps.iter().map(|step| step.with_after_failures().len());
    let (n_steps, n_things) = (there.sum::<usize>() + n_steps, procedure.map.things().count() + n_things);
    match (n_steps > MOST_STEPS, n_things > MOST_THINGS) {
        (true, _) => Err(TooMuch::Steps(n_steps)),
        (_, true) => Err(TooMuch::Things(n_things)),
        _ => Ok(()),
    }
}

/// Whether no line, each with its number, is longer than a text may be.
///
/// # Errors
/// If one is.
pub fn have_room<'t>(lines: &mut impl Iterator<Item = (usize, &'t str)>) -> Result<(), TooMuch> {
    lines.try_for_each(|(line, words)| {
        let n = if words.len() > MOST_CHARACTERS { words.chars().count() } else { 0 };
        if n > MOST_CHARACTERS { Err(TooMuch::Characters { line, n }) } else { Ok(()) }
    })
}

/// Whether a changed procedure can be opened again once it is kept. Looks at what is not the same as before.
///
/// # Errors
/// If it has more steps, things or characters in a text than a file may have.
pub fn fits(before: &Procedure, after: &Procedure) -> Result<(), TooMuch> {
    let is_same_map = Arc::ptr_eq(&before.map, &after.map);
    if after.steps.len() > before.steps.len() || !is_same_map {
        has_room(after, 0, 0)?;
    }
    if !is_same_map {
        no_long_text(&*after.map)?;
    }
    if !after.has_head_of(before) {
        no_long_text(&after.head())?;
    }
    // Where steps came or went, all behind them stand elsewhere.
    let moved: BTreeSet<*const Step> = if before.steps.len() == after.steps.len() {
        BTreeSet::new()
    } else {
        before.steps.iter().map(Arc::as_ptr).collect()
    };
    let is_known = |(at, step): &(usize, &Arc<Step>)| {
        before.steps.get(*at).is_some_and(|known| Arc::ptr_eq(known, step))
            || moved.contains(&Arc::as_ptr(step))
    };
    let changed = after.steps.iter().enumerate().filter(|one| !is_known(one));
    changed.map(|(_, step)| step).try_for_each(|step| no_long_text(&**step))
}

fn no_long_text(part: &impl Serialize) -> Result<(), TooMuch> {
    // What cannot be written is no text; keeping it says so.
    let Ok(value) = serde_json::to_value(part) else { return Ok(()) };
    longest(&value).map_or(Ok(()), |n| if n > MOST_CHARACTERS { Err(TooMuch::Text(n)) } else { Ok(()) })
}

/// How many characters the longest text of a value has.
fn longest(value: &Value) -> Option<usize> {
    match value {
        Value::String(text) => Some(text.chars().count()),
        Value::Array(all) => all.iter().filter_map(longest).max(),
        Value::Object(all) => {
            all.iter().flat_map(|(key, value)| [Some(key.chars().count()), longest(value)]).flatten().max()
        }
        Value::Null | Value::Bool(_) | Value::Number(_) => None,
    }
}

#[cfg(test)]
mod tests {
    use super::super::limits::{MOST_CHARACTERS, MOST_STEPS, MOST_THINGS};
    use super::{fits, has_room, have_room};
    use crate::format::{read, write};
    use crate::model::{Id, Procedure, Stage, Step};
    use std::sync::Arc;

    #[test]
    fn what_a_procedure_has_no_room_for_is_told_with_its_number() {
        let mut procedure = Procedure::new(Id::new("p"), "P");
        let told = |procedure: &Procedure, n_steps, n_things| {
            has_room(procedure, n_steps, n_things).map_err(|why| why.to_string())
        };
        assert_eq!(told(&procedure, MOST_STEPS, MOST_THINGS), Ok(()));
        let steps = "the procedure would have 5,001 steps, and it can have 5,000";
        assert_eq!(told(&procedure, MOST_STEPS + 1, 0), Err(steps.to_owned()));
        procedure.steps.push(Arc::new(Step::new(Id::new("there"), Stage::Strip, "Take off the cover.")));
        assert_eq!(told(&procedure, MOST_STEPS, 0), Err(steps.to_owned()), "with those that are there");
        let things = "the appliance would have 2,001 things, and it can have 2,000";
        assert_eq!(told(&procedure, 1, MOST_THINGS + 1), Err(things.to_owned()));
    }

    #[test]
    fn a_line_that_is_too_long_is_told_with_its_number() {
        let fits = "\u{e4}".repeat(MOST_CHARACTERS);
        let longer = format!("{fits}!");
        assert_eq!(have_room(&mut [(1, fits.as_str())].into_iter()), Ok(()));
        let told = have_room(&mut [(1, fits.as_str()), (2, longer.as_str())].into_iter())
            .map_err(|why| why.to_string());
        assert_eq!(told, Err("line 2 has 20,001 characters, and a text can have 20,000".to_owned()));
    }

    /// What fits is what can be opened again.
    #[test]
    fn what_could_not_be_opened_again_does_not_fit() {
        let before = Procedure::new(Id::new("p"), "P");
        let long = "x".repeat(MOST_CHARACTERS + 1);
        let step = |words: &str| Arc::new(Step::new(Id::new("s"), Stage::Strip, words));
        let mut changed: Vec<Procedure> = Vec::new();
        for text in ["short", long.as_str()] {
            let with = |change: &dyn Fn(&mut Procedure)| {
                let mut after = before.clone();
                change(&mut after);
                after
            };
            changed.push(with(&|p| p.steps.push(step(text))));
            changed.push(with(&|p| text.clone_into(&mut p.note)));
            changed.push(with(&|p| text.clone_into(&mut p.title)));
            changed.push(with(&|p| {
                let fan = crate::model::Component::new(Id::new("fan"), text);
                Arc::make_mut(&mut p.map).components.push(fan);
            }));
        }
        changed.push({
            let mut many = before.clone();
            let numbered = |n| Arc::new(Step::new(Id::new(&format!("s{n}")), Stage::Strip, "Look."));
            many.steps = (0..=MOST_STEPS).map(numbered).collect();
            many
        });
        for after in &changed {
            let is_read = read(write(after).as_bytes()).is_ok();
            assert_eq!(fits(&before, after).is_ok(), is_read, "{:.40}", after.title);
        }
        // What was there before is not looked at again, where it has moved neither.
        let mut later = changed[4].clone();
        later.steps.insert(0, step("short"));
        assert_eq!(fits(&changed[4], &later), Ok(()));
    }
}
