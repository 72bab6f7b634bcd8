//! Identities: each stands for one step or one thing, or nobody could tell which is meant.

use super::{Category, FormatError};
use crate::model::{Id, Procedure, ThingKind};
use std::collections::BTreeMap;

/// Refuses a document in which two steps, two things or two questions have one identity.
pub(super) fn check_identities(procedure: &Procedure) -> Result<(), FormatError> {
    let mut seen = BTreeMap::new();
    for (at, step) in procedure.steps.iter().enumerate() {
        for part in step.with_after_failures() {
            let inside = if part.id == step.id { "" } else { " (in what follows a failure)" };
            once(&mut seen, &part.id, format!("steps[{at}].id"), &format!("two steps{inside}"))?;
        }
    }
    let mut seen = BTreeMap::new();
    let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
    for (kind, id, ..) in procedure.map.things() {
        let list = list_of(kind);
        let at = counts.entry(list).or_insert(0);
        // Sections stand in their circuits; a count of them is no place in a list.
        let path = if kind == ThingKind::Section {
            "map.circuits".to_owned()
        } else {
            format!("map.{list}[{at}].id")
        };
        *at += 1;
        once(&mut seen, id, path, "two things")?;
    }
    let mut seen = BTreeMap::new();
    for (at, question) in procedure.questions.iter().enumerate() {
        once(&mut seen, &question.id, format!("questions[{at}].id"), "two questions")?;
    }
    Ok(())
}

fn once<'d>(
    seen: &mut BTreeMap<&'d Id, String>,
    id: &'d Id,
    path: String,
    what: &str,
) -> Result<(), FormatError> {
    let Some(first) = seen.insert(id, path.clone()) else { return Ok(()) };
    let message =
        format!("The identity \"{id}\" stands for {what}; {first} has it too. Give each one of its own");
    Err(FormatError { category: Category::Content, line: 0, column: 0, path, message })
}

/// The list of the map in which things of a kind stand.
fn list_of(kind: ThingKind) -> &'static str {
    match kind {
        ThingKind::Circuit => "circuits",
        ThingKind::Section => "sections",
        ThingKind::Isolator => "isolators",
        ThingKind::Connection => "connections",
        ThingKind::Component => "components",
        ThingKind::Seal => "seals",
        ThingKind::Temporary => "temporary",
        ThingKind::Setting => "settings",
    }
}
