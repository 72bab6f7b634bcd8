//! At which step somebody stands before what is still to be found out.
//!
//! Limits belong to the step that reads, a value of a thing to the first step that has it in hand, and what the writer
//! lists to the step that the writer names.

use super::uses::Uses;
use crate::model::{Id, OpenPlace, OpenValue, Procedure, open_values};

/// A value that is still to be found out, with its step.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OpenAt {
    /// The value.
    pub value: OpenValue,
    /// The step, by position; none if it belongs to none, and is asked before the first.
    pub step: Option<usize>,
}

/// Everything that is still to be found out, in the order of the steps; what belongs to none first.
pub fn open_at(document: &Procedure) -> Vec<OpenAt> {
    let all = open_values(document).into_iter();
    let mut all: Vec<OpenAt> =
        all.map(|value| OpenAt { step: step_of(document, &value.place), value }).collect();
    all.sort_by_key(|open| open.step);
    all
}

fn step_of(document: &Procedure, place: &OpenPlace) -> Option<usize> {
    match place {
        OpenPlace::Size(id) | OpenPlace::Tight(id) => first_use(document, id),
        OpenPlace::SealSize(id) | OpenPlace::SealNumber(id) => first_use_of_seal(document, id),
        OpenPlace::ComponentNumber(id) => first_use_of_part(document, id),
        OpenPlace::SpareNumber(id) => {
            let spare = document.kit.spares.iter().find(|spare| spare.id == *id)?;
            first_use_of_any(document, spare.thing.as_ref()?)
        }
        OpenPlace::Limits { step, .. } | OpenPlace::Input { step, .. } => document.position(step),
        OpenPlace::Listed(at) => {
            let later = document.later.get(*at)?;
            let named = later.step.as_ref().and_then(|step| position(document, step));
            named.or_else(|| first_use_of_any(document, later.thing.as_ref()?))
        }
    }
}

/// The position of a step, or of the one after whose failure it is done.
fn position(document: &Procedure, step: &Id) -> Option<usize> {
    document.steps.iter().position(|known| known.with_after_failures().iter().any(|part| part.id == *step))
}

fn first_use(document: &Procedure, thing: &Id) -> Option<usize> {
    Uses::of(document, thing).steps.first().map(|number| number - 1)
}

/// A seal is seen where its joint is opened, which need not name it.
fn first_use_of_seal(document: &Procedure, seal: &Id) -> Option<usize> {
    let joints = document.map.connections.iter();
    let joints = joints.filter(|joint| joint.seals.iter().any(|used| used.seal == *seal));
    let at_joints = joints.filter_map(|joint| first_use(document, &joint.id));
    at_joints.chain(first_use(document, seal)).min()
}

/// At a part stands also who opens one of its connections.
fn first_use_of_part(document: &Procedure, part: &Id) -> Option<usize> {
    let joints = document.map.connections.iter().filter(|joint| joint.joins.contains(part));
    let at_joints = joints.filter_map(|joint| first_use(document, &joint.id));
    at_joints.chain(first_use(document, part)).min()
}

fn first_use_of_any(document: &Procedure, thing: &Id) -> Option<usize> {
    if document.map.seals.iter().any(|seal| seal.id == *thing) {
        first_use_of_seal(document, thing)
    } else {
        first_use_of_part(document, thing)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn document() -> Procedure {
        let later = serde_json::json!({ "later": "on site" });
        let reading = serde_json::json!({ "what": "flow", "later": "the plate" });
        let step = |id: &str, actions: serde_json::Value| serde_json::json!({ "id": id, "stage": "strip", "words": "Do it.", "actions": actions });
        let after = step("after", serde_json::json!([]));
        let document = serde_json::from_value(serde_json::json!({
            "putback": 1, "id": "p", "title": "t",
            "map": {
                "components": [
                    { "id": "pump", "name": "pump", "number": later },
                    { "id": "fan", "name": "fan", "number": later },
                ],
                "connections": [{
                    "id": "union", "name": "unions", "family": "joint", "size": later, "joins": ["pump"],
                    "seals": [{ "seal": "ring" }],
                }],
                "seals": [{ "id": "ring", "name": "ring", "policy": "always renew", "size": later }],
            },
            "kit": { "spares": [{ "id": "spare", "name": "rings", "number": later, "thing": "ring" }] },
            "later": [
                { "what": "the last", "who": "", "step": "s4" },
                { "what": "the inner", "who": "", "step": "after" },
                { "what": "of the pump", "who": "", "thing": "pump" },
                { "what": "of nothing", "who": "" },
                { "what": "of a step that is gone", "who": "", "step": "gone" },
            ],
            "steps": [
                step("s1", serde_json::json!([])),
                step("s2", serde_json::json!([{ "do": "undo", "on": ["union"] }])),
                step("s3", serde_json::json!([{ "do": "test", "readings": [reading], "on_fail": { "steps": [after] } }])),
                step("s4", serde_json::json!([{ "do": "remove", "on": ["pump"] }])),
            ],
        }));
        document.expect("a document")
    }

    #[test]
    fn each_value_is_asked_where_somebody_stands_before_it() {
        let asked: Vec<(Option<usize>, String)> =
            open_at(&document()).into_iter().map(|open| (open.step, open.value.what)).collect();
        let expected = [
            (None, "number of the fan"),
            (None, "of nothing"),
            (None, "of a step that is gone"),
            (Some(1), "size of the unions"),
            (Some(1), "size of the ring"),
            (Some(1), "number of the pump"),
            (Some(1), "number of the spare rings"),
            (Some(1), "of the pump"),
            (Some(2), "limits of \"flow\" in step 3"),
            (Some(2), "the inner"),
            (Some(3), "the last"),
        ];
        assert_eq!(asked, expected.map(|(step, what)| (step, what.to_owned())));
    }
}
