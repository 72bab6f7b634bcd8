//! Where two states of a procedure differ, for whoever shows one part of it at a time.

use super::changes::is_for_something_else;
use crate::model::{ApplianceMap, Id, Procedure, names, open_values};
use std::sync::Arc;

/// A part of a procedure that is shown by itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// The steps, and what is accepted of them.
    Steps,
    /// The appliance map.
    Map,
    /// The census, the questions, and what the procedure is for.
    Scope,
    /// The kit.
    Kit,
    /// What is still to be found out, wherever it is missing.
    Later,
}

/// Where two states differ.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Places {
    /// In which parts.
    pub parts: Vec<Place>,
    /// The first thing of the later map that is new or otherwise than before.
    pub thing: Option<Id>,
    /// Whether a step names that thing.
    pub is_in_use: bool,
}

impl Places {
    /// Whether they differ in a part.
    pub fn has(&self, part: Place) -> bool {
        self.parts.contains(&part)
    }
}

/// Where a procedure is otherwise than it was.
pub fn places(before: &Procedure, after: &Procedure) -> Places {
    let is_other_map = !Arc::ptr_eq(&before.map, &after.map) && before.map != after.map;
    let is_other_scope = before.census != after.census
        || before.questions != after.questions
        || is_for_something_else(before, after);
    let differs = [
        (before.steps != after.steps || before.waivers != after.waivers, Place::Steps),
        (is_other_map, Place::Map),
        (is_other_scope, Place::Scope),
        (before.kit != after.kit, Place::Kit),
        (open_values(before) != open_values(after), Place::Later),
    ];
    let thing = if is_other_map { first_thing(&before.map, &after.map) } else { None };
    let is_used = |thing: &Id| after.steps.iter().any(|step| names(&**step, thing));
    Places {
        parts: differs.into_iter().filter(|(differs, _)| *differs).map(|(_, part)| part).collect(),
        is_in_use: thing.as_ref().is_some_and(is_used),
        thing,
    }
}

/// Circuits come last: a circuit differs with each of its sections, and what was changed beside them is meant.
fn first_thing(before: &ApplianceMap, after: &ApplianceMap) -> Option<Id> {
    macro_rules! first {
        ($($list:ident),*) => {
            None$(.or_else(|| {
                let is_other = |thing: &&_| !before.$list.contains(*thing);
                after.$list.iter().find(is_other).map(|thing| thing.id.clone())
            }))*
        };
    }
    first!(components, connections, isolators, seals, temporary, settings, circuits)
}
