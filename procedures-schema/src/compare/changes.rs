//! What differs between two states of a procedure.

use super::parts::{Parts, parts};
use crate::model::{ApplianceMap, Procedure};
use std::sync::Arc;

/// What differs; empty exactly if the two are equal.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Changes {
    /// The steps, by their numbers.
    pub steps: Parts,
    /// The things of the appliance map, by their names; a section is part of its circuit.
    pub things: Parts,
    /// What else, in words: `the title`, `the kit`.
    pub others: Vec<&'static str>,
}

impl Changes {
    /// Whether nothing differs.
    pub fn is_empty(&self) -> bool {
        self.steps.is_empty() && self.things.is_empty() && self.others.is_empty()
    }
}

/// What has become of a procedure.
pub fn changes(before: &Procedure, after: &Procedure) -> Changes {
    let numbered = |number: usize| format!("step {}", number + 1);
    let mut found = Changes {
        steps: parts(&before.steps, &after.steps, |step| &step.id, |_, at| numbered(at)),
        things: if Arc::ptr_eq(&before.map, &after.map) {
            Parts::default()
        } else {
            things(&before.map, &after.map)
        },
        others: others(before, after),
    };
    if found.is_empty() && before != after {
        // Only what has neither identity nor a name here can be left, such as a field of a later version.
        found.others.push("details");
    }
    found
}

fn things(before: &ApplianceMap, after: &ApplianceMap) -> Parts {
    let mut found = Parts::default();
    macro_rules! compare {
        ($($list:ident),*) => {
            $(found.join(parts(&before.$list, &after.$list, |thing| &thing.id, |thing, _| thing.name.clone()));)*
        };
    }
    compare!(circuits, isolators, components, connections, seals, temporary, settings);
    found
}

fn others(before: &Procedure, after: &Procedure) -> Vec<&'static str> {
    let is_of_scope = is_for_something_else(before, after);
    let differs = [
        (before.title != after.title, "the title"),
        (is_of_scope, "what it is for"),
        (before.census != after.census, "the census of circuits"),
        (before.questions != after.questions, "the questions"),
        (before.kit != after.kit, "the kit"),
        (before.sources != after.sources || before.overrides != after.overrides, "sources and demands"),
        (before.map.phrases != after.map.phrases, "the phrases"),
        (before.images != after.images, "the pictures"),
        (before.later != after.later, "what is to be found out"),
        (before.waivers != after.waivers, "accepted warnings"),
        (before.revisions != after.revisions, "the issues"),
        (before.sign_offs != after.sign_offs, "the signatures"),
    ];
    differs.into_iter().filter(|(differs, _)| *differs).map(|(_, what)| what).collect()
}

/// Whether two states differ in what the procedure is for.
pub(super) fn is_for_something_else(before: &Procedure, after: &Procedure) -> bool {
    before.purpose != after.purpose
        || before.applies_to != after.applies_to
        || before.gases != after.gases
        || before.country != after.country
        || before.language != after.language
        || before.note != after.note
        || before.competence != after.competence
        || before.variants != after.variants
        || before.goals != after.goals
}
