//! Every value that is missing can be answered, and then it is missing no more.

use super::{found_out, several_found_out};
use crate::edit::{Session, apply};
use crate::model::{
    Found, Moment, OpenPlace, OpenValue, Procedure, Size, Step, each_reading, open_values, readings,
};
use crate::units::Unit;
use std::sync::Arc;

/// A document in which a value is missing in each place where one can be.
fn document() -> Arc<Procedure> {
    let later = serde_json::json!({ "later": "the stores" });
    let reading = |what: &str| {
        serde_json::json!({ "what": what, "later": "the plate", "inputs": [
            { "name": "installation volume", "value": { "later": "on site" } },
        ] })
    };
    let inner = serde_json::json!({ "id": "s2", "stage": "recommission", "words": "Read again.",
        "actions": [{ "do": "read", "readings": [reading("again")] }] });
    let document = serde_json::from_value(serde_json::json!({
        "putback": 1, "id": "p", "title": "t", "note": "Invented.",
        "map": {
            "components": [{ "id": "pump", "name": "pump", "number": later }],
            "connections": [
                { "id": "union", "name": "unions", "family": "joint", "size": later, "tight": later },
                { "id": "known", "name": "screws", "family": "fixing", "size": { "thread": "M6" } },
            ],
            "seals": [{ "id": "ring", "name": "ring", "policy": "always renew", "size": later, "number": later }],
        },
        "kit": { "spares": [{ "id": "spare", "name": "ring", "number": later }] },
        "later": [{ "what": "maximum pressure", "who": "the owner" }],
        "steps": [
            { "id": "s1", "stage": "recommission", "words": "Read it.", "actions": [
                { "do": "test", "readings": [reading("flow")], "on_fail": { "steps": [inner] } },
            ] },
        ],
    }));
    Arc::new(document.expect("a document"))
}

/// An answer that each place takes.
fn fitting(open: &OpenValue) -> &'static str {
    match open.place {
        OpenPlace::Limits { .. } => "0.8 to 1.2 bar",
        OpenPlace::Input { .. } => "12 l",
        OpenPlace::Tight(_) => "25 to 30 N·m",
        _ => "G 1",
    }
}

/// A field shows a range and takes it back as it shows it.
#[test]
fn a_range_is_read_as_it_is_shown() {
    for typed in ["5 to 25 Nm", "at most 5 mbar", "at least 20.6 %", "0 to 60 mbar"] {
        let range = super::one_range(typed).unwrap_or_else(|error| panic!("{typed}: {}", error.0));
        assert_eq!(super::one_range(&range.to_string()), Ok(range), "{typed}");
    }
    assert!(super::one_range("a lot").is_err());
}

#[test]
fn what_is_missing_is_told_with_its_place() {
    let what: Vec<String> = open_values(&document()).into_iter().map(|open| open.what).collect();
    assert_eq!(
        what,
        [
            "size of the unions",
            "how tight the unions is made",
            "size of the ring",
            "number of the ring",
            "number of the pump",
            "number of the spare ring",
            "limits of \"flow\" in step 1",
            "installation volume in step 1",
            "limits of \"again\" in step 1",
            "installation volume in step 1",
            "maximum pressure",
        ]
    );
}

#[test]
fn each_answer_leaves_one_less_and_undo_brings_it_back() {
    let mut session = Session::new(document());
    let mut history = vec![session.document().clone()];
    loop {
        let open = open_values(session.document());
        let Some(first) = open.first() else { break };
        let edit = found_out(session.document(), &first.place, fitting(first)).expect(&first.what);
        session.edit(&[edit], "find out", None, 0).expect("it applies");
        assert_eq!(open_values(session.document()), open[1..].to_vec(), "{}", first.what);
        history.push(session.document().clone());
    }
    assert_eq!(history.len(), 12);
    assert_eq!(session.document().note, "Invented. Maximum pressure: G 1.");
    for before in history.iter().rev().skip(1) {
        assert!(session.undo().is_some() && Arc::ptr_eq(session.document(), before));
    }
}

#[test]
fn both_ways_through_the_readings_of_a_step_agree() {
    let step = document().steps[0].clone();
    let seen: Vec<String> = readings(&step).iter().map(|reading| reading.what.clone()).collect();
    let mut visited = Vec::new();
    each_reading(&mut Step::clone(&step), &mut |reading| visited.push(reading.what.clone()));
    assert_eq!(seen, ["flow", "again"]);
    assert_eq!(visited, seen);
}

#[test]
fn figures_are_taken_as_they_are_meant_or_not_at_all() {
    let d = document();
    let open = open_values(&d);
    let place = |what: &str| &open.iter().find(|open| open.what.starts_with(what)).expect(what).place;
    let limits = place("limits of \"again\"");
    for doubtful in ["", "about right", "3", "1 bar ± 5 %", "0.8 to 1.2 bar, then call the office"] {
        assert!(found_out(&d, limits, doubtful).is_err(), "{doubtful}");
    }
    let after =
        apply(&d, &found_out(&d, limits, "at most 5 mbar").expect("limits")).expect("applies").document;
    let inner = &after.steps[0].actions[0].on_fail.as_ref().expect("a block").steps[0];
    let range = inner.actions[0].readings[0].limits.clone().expect("limits");
    assert_eq!((range.min, range.unit), (None, Unit::Millibar));
    assert!(found_out(&d, place("installation volume"), "10 to 12 l").is_err(), "one value is wanted");
}

#[test]
fn a_size_goes_into_the_field_that_it_belongs_to() {
    let of = |typed: &str| super::size(typed);
    let with = |set: fn(&mut Size, &str), text: &str| {
        let mut size = Size::default();
        set(&mut size, text);
        size
    };
    for thread in ["M6", "M10 x 1", "G 1 1/2", "Rp 3/4"] {
        assert_eq!(of(thread), with(|size, text| size.thread = Some(text.to_owned()), thread));
    }
    assert_eq!(of("22 mm tube").to_string(), "22 mm tube");
    assert!(of("22 mm tube").tube.is_some() && of("17 mm").across_flats.is_some());
    for terminal in ["6.3 mm blade", "ferrule 2.5 mm²", "plug"] {
        assert_eq!(of(terminal), with(|size, text| size.terminal = Some(text.to_owned()), terminal));
    }
}

#[test]
fn tight_is_a_torque_or_words() {
    let torque = super::tight("25 to 30 N·m");
    assert!(torque.torque.is_some() && torque.method.is_empty());
    assert_eq!(super::tight("hand tight and a quarter turn").method, "hand tight and a quarter turn");
}

/// All answers of a job as they come back, in the order of the list.
fn from_a_job(answer: impl Fn(&OpenValue) -> &'static str) -> Vec<Found> {
    let document = document();
    let time = Moment::parse("2026-11-29T11:20:00Z").expect("a moment");
    let open = open_values(&document);
    open.iter().map(|open| Found::new(&document, open, answer(open), time)).collect()
}

#[test]
fn several_answers_are_one_undo_and_the_same_as_one_by_one() {
    let mut one_by_one = document();
    while let Some(open) = open_values(&one_by_one).first() {
        let edit = found_out(&one_by_one, &open.place, fitting(open)).expect(&open.what);
        one_by_one = apply(&one_by_one, &edit).expect("it applies").document;
    }
    let several = several_found_out(&document(), &from_a_job(fitting));
    assert_eq!((several.edits.len(), several.refused.len()), (11, 0));
    let mut session = Session::new(document());
    session.edit(&several.edits, "take what was found", None, 0).expect("they apply");
    assert_eq!(*session.document(), one_by_one);
    session.undo().expect("one entry");
    assert_eq!(*session.document(), document());
    assert!(session.undo().is_none());
}

#[test]
fn what_is_refused_stays_with_its_reason_and_the_others_are_taken() {
    let mut found = from_a_job(|_| "about right");
    found.push(found[0].clone());
    let several = several_found_out(&document(), &found);
    let refused: Vec<&str> = several.refused.iter().map(|(found, _)| found.what.as_str()).collect();
    let expected = [
        "limits of \"flow\" in step 1",
        "installation volume in step 1",
        "limits of \"again\" in step 1",
        "installation volume in step 1",
        "size of the unions",
    ];
    assert_eq!((several.edits.len(), refused.as_slice()), (7, expected.as_slice()));
    assert!(several.refused[0].1.0.contains("is not read as limits"), "{:?}", several.refused[0].1);
    assert_eq!(several.refused[4].1.0, "this is not open any more");
}
