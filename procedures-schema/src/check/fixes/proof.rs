//! The fix of a proof that lacks readings: they are added to the action, each where its kind has it, and the
//! step says so.

use super::Fix;
use super::words::{Changed, edits, step_of};
use crate::check::context::Context;
use crate::derive::usual_units::in_usual_units;
use crate::model::{Action, Reading, Span, Step, Verb, listed};
use crate::simulate::{Unmet, default_readings};

/// Words that begin the sentence by which the readings are said.
const PROVE: &str = "Prove it with";

/// Adds the readings that a proof lacks, with the limits of its kind.
pub(super) fn complete(context: &Context<'_>, met: &[&Unmet]) -> Option<Fix> {
    let unmet = met.first()?;
    let (at, action) = (unmet.place.execution()?, unmet.place.action()?);
    let mut changed = Changed::new();
    let step = step_of(context, &mut changed, at)?;
    let prove = step.actions.get(action).filter(|action| action.verb == Verb::Prove)?;
    let bare = Action { readings: Vec::new(), ..prove.clone() };
    let mut asked = default_readings(context.procedure, &bare);
    for reading in &mut asked {
        in_usual_units(context.procedure.country.as_ref(), reading);
    }
    let readings = completed(asked, &prove.readings);
    let missing: Vec<String> = readings
        .iter()
        .filter(|reading| prove.readings.iter().all(|given| given.what != reading.what))
        .map(|reading| reading.what.clone())
        .collect();
    let sentence = format!(": {}.", readings.iter().map(said).collect::<Vec<_>>().join(", "));
    let span = say(step, &sentence);
    let prove = step.actions.get_mut(action)?;
    prove.readings = readings;
    prove.says.push(span);
    let what = if missing.is_empty() { "the readings in their order".to_owned() } else { listed(&missing) };
    let label = format!("prove in step {} with {what}", at + 1);
    Some(Fix { label, edits: edits(changed) })
}

/// The readings that are asked for, in their order: those that are given already as they are.
fn completed(asked: Vec<Reading>, given: &[Reading]) -> Vec<Reading> {
    let mut left: Vec<&Reading> = given.iter().collect();
    let mut all: Vec<Reading> = Vec::new();
    for asked in asked {
        let known = left.iter().position(|reading| is_same(reading, &asked));
        all.push(known.map_or(asked, |known| left.remove(known).clone()));
    }
    all.extend(left.into_iter().cloned());
    all
}

/// Whether a reading that is given is the one that is asked for, by its name.
fn is_same(given: &Reading, asked: &Reading) -> bool {
    let words = |what: &str| {
        let mut words: Vec<String> = what.to_lowercase().split_whitespace().map(str::to_owned).collect();
        words.sort_unstable();
        words
    };
    let again = |what: &str| what.contains("again");
    let of_source = |what: &str| what.contains("known source");
    words(&given.what) == words(&asked.what)
        || (of_source(&given.what) && of_source(&asked.what) && again(&given.what) == again(&asked.what))
}

/// A reading in words: "L to N 0 V to 5 V", "drain no flow".
fn said(reading: &Reading) -> String {
    let limits = reading.limits.as_ref().map(ToString::to_string);
    let seen = Some(&reading.seen).filter(|seen| !seen.is_empty() && !reading.what.contains("known source"));
    [Some(reading.what.clone()), limits, seen.cloned()].into_iter().flatten().collect::<Vec<_>>().join(" ")
}

/// Adds a sentence to the words of a step; the span of what says that something is proved.
fn say(step: &mut Step, rest: &str) -> Span {
    let point = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
    step.words.truncate(step.words.trim_end().len());
    if !step.words.is_empty() {
        let ended = step.words.ends_with(['.', '!', '?']);
        step.words.push_str(if ended { " " } else { ". " });
    }
    let from = step.words.chars().count();
    step.words.push_str(PROVE);
    step.words.push_str(rest);
    Span(point(from), point(from + PROVE.len()))
}
