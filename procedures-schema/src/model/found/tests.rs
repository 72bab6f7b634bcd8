//! An answer finds its place again, also in a procedure that was changed meanwhile, or it says that it has none.

use super::*;
use crate::model::{Known, Step};
use std::sync::Arc;

/// A document in which a value is missing in each place where one can be.
fn document() -> Procedure {
    let later = serde_json::json!({ "later": "the stores" });
    let reading = |what: &str, volume: &str| {
        serde_json::json!({ "what": what, "later": "the plate", "inputs": [
            { "name": volume, "value": { "later": "on site" } },
        ] })
    };
    let document = serde_json::from_value(serde_json::json!({
        "putback": 1, "id": "p", "title": "Renew the pump",
        "revisions": [
            { "revision": "A", "date": "2026-01-05", "author": "invented" },
            { "revision": "B", "date": "2026-02-05", "author": "invented" },
        ],
        "map": {
            "components": [{ "id": "pump", "name": "pump", "number": later }],
            "connections": [
                { "id": "union", "name": "unions", "family": "joint", "size": later, "tight": later },
            ],
            "seals": [{ "id": "ring", "name": "ring", "policy": "always renew", "size": later, "number": later }],
        },
        "kit": { "spares": [{ "id": "spare", "name": "ring", "number": later }] },
        "later": [{ "what": "maximum pressure", "who": "the owner" }, { "what": "age", "who": "the owner" }],
        "steps": [
            { "id": "s1", "stage": "recommission", "words": "Read it.", "actions": [
                { "do": "test", "readings": [reading("flow", "volume"), reading("return", "head")] },
            ] },
        ],
    }));
    document.expect("a document")
}

fn time() -> Moment {
    Moment::parse("2026-11-29T11:20:00Z").expect("a moment")
}

fn found(document: &Procedure, what: &str) -> Found {
    let open = open_values(document);
    let open = open.iter().find(|open| open.what.starts_with(what)).expect(what);
    Found::new(document, open, " 37 mm ", time())
}

#[test]
fn every_open_value_is_found_again() {
    let document = document();
    let open = open_values(&document);
    assert_eq!(open.len(), 12);
    for value in open {
        let found = Found::new(&document, &value, "37 mm", time());
        assert_eq!(found.place(&document), Ok(value.place), "{}", value.what);
    }
}

#[test]
fn a_list_that_has_moved_is_no_hindrance() {
    let before = document();
    let (age, limits) = (found(&before, "age"), found(&before, "limits of \"return\""));
    let mut after = before.clone();
    after.later.remove(0);
    let mut step = Step::clone(&after.steps[0]);
    step.actions[0].readings.remove(0);
    after.steps = vec![Arc::new(Step::new("new".into(), step.stage.clone(), "Rest.")), Arc::new(step)];
    assert_eq!(age.place(&after), Ok(OpenPlace::Listed(0)));
    assert_eq!(limits.place(&after), Ok(OpenPlace::Limits { step: "s1".into(), reading: 0 }));
    // What was never open there is not taken for it.
    assert_eq!(found(&before, "limits of \"flow\"").place(&after), Err(NoPlace::Gone));
}

#[test]
fn what_is_not_open_and_what_is_gone_are_told_apart() {
    let before = document();
    let size = found(&before, "size of the unions");
    let mut after = before.clone();
    let map = Arc::make_mut(&mut after.map);
    map.connections[0].size = Some(Known::Value(crate::model::Size::default()));
    assert_eq!(size.place(&after), Err(NoPlace::NotOpen));
    Arc::make_mut(&mut after.map).connections.clear();
    assert_eq!(size.place(&after), Err(NoPlace::Gone));
    assert_eq!(found(&before, "age").place(&Procedure::new("p".into(), "t")), Err(NoPlace::Gone));
    let newer = Found { value: FoundValue::from_word("colour"), ..size };
    assert_eq!(newer.place(&before), Err(NoPlace::Unknown));
}

#[test]
fn of_two_readings_with_one_name_the_position_decides() {
    let mut document = document();
    let mut step = Step::clone(&document.steps[0]);
    step.actions[0].readings[1].what = "flow".to_owned();
    document.steps = vec![Arc::new(step)];
    for value in open_values(&document).iter().filter(|open| open.what.starts_with("limits")) {
        let found = Found::new(&document, value, "1 bar", time());
        assert_eq!(found.place(&document).as_ref(), Ok(&value.place));
    }
    // Once the first is answered, its answer is not taken for the second.
    let first = found(&document, "limits of \"flow\"");
    let mut step = Step::clone(&document.steps[0]);
    step.actions[0].readings[0].later.clear();
    document.steps = vec![Arc::new(step)];
    assert_eq!(first.place(&document), Err(NoPlace::NotOpen));
}

#[test]
fn the_last_answer_counts_and_an_empty_one_leaves_it_open() {
    let document = document();
    let (size, age) = (found(&document, "size of the unions"), found(&document, "age"));
    let other = Found { answer: "38 mm".to_owned(), ..size.clone() };
    let job = FoundOnJob::of(&document).with(size.clone()).with(age.clone()).with(other.clone());
    assert_eq!((job.revision.as_str(), job.title.as_str()), ("B", "Renew the pump"));
    assert_eq!(size.answer, "37 mm");
    assert_eq!(job.answers, [other, age.clone()]);
    let job = job.with(Found { answer: " ".to_owned(), ..size });
    assert_eq!(job.answers, [age]);
}
