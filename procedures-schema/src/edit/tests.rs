//! Laws of edits and undo, on random sequences from a fixed seed.

use super::{Edit, EditError, Session, apply};
use crate::model::{Id, Procedure, Stage, Step};
use std::sync::Arc;

fn step(id: &str, words: &str) -> Arc<Step> {
    Arc::new(Step::new(id.into(), Stage::Strip, words))
}

fn document() -> Arc<Procedure> {
    let mut procedure = Procedure::new("p".into(), "Renew the pump");
    procedure.steps = ["a", "b", "c", "d"].iter().map(|id| step(id, id)).collect();
    Arc::new(procedure)
}

fn order(document: &Procedure) -> String {
    document.steps.iter().map(|s| s.words.as_str()).collect()
}

#[test]
fn each_edit_does_what_it_says() {
    let d = document();
    for (edit, expected) in [
        (Edit::InsertStep { at: 4, step: step("e", "e") }, "abcde"),
        (Edit::InsertStep { at: 0, step: step("e", "e") }, "eabcd"),
        (Edit::RemoveStep { step: "b".into() }, "acd"),
        (Edit::MoveStep { step: "a".into(), to: 3 }, "bcda"),
        (Edit::MoveStep { step: "d".into(), to: 0 }, "dabc"),
        (Edit::SetStep { step: step("c", "C") }, "abCd"),
    ] {
        assert_eq!(order(&apply(&d, &edit).expect("applies").document), expected, "{edit:?}");
    }
}

#[test]
fn an_edit_that_cannot_be_applied_changes_nothing() {
    let d = document();
    let mut session = Session::new(d.clone());
    let bad = [Edit::RemoveStep { step: "a".into() }, Edit::RemoveStep { step: "a".into() }];
    assert_eq!(session.edit(&bad, "twice", None, 0), Err(EditError::NoSuchStep("a".into())));
    assert!(Arc::ptr_eq(session.document(), &d));
    assert!(session.undo().is_none());
    assert!(apply(&d, &Edit::InsertStep { at: 5, step: step("e", "e") }).is_err());
    assert!(apply(&d, &Edit::InsertStep { at: 0, step: step("a", "e") }).is_err());
    assert!(apply(&d, &Edit::MoveStep { step: "a".into(), to: 4 }).is_err());
}

/// A small generator of numbers; the core has no randomness, and a law needs only variety.
pub(super) fn next(state: &mut u64) -> usize {
    *state ^= *state << 13;
    *state ^= *state >> 7;
    *state ^= *state << 17;
    usize::try_from(*state >> 33).unwrap_or(0)
}

#[test]
fn undo_goes_back_to_the_very_same_document_and_redo_forth() {
    let mut seed = 0x9E37_79B9_7F4A_7C15;
    for _ in 0..200 {
        let mut session = Session::new(document());
        let mut history = vec![session.document().clone()];
        for n in 0..12 {
            let steps = &session.document().steps;
            let id: Id = steps[next(&mut seed) % steps.len()].id.clone();
            let edit = match next(&mut seed) % 4 {
                0 => Edit::InsertStep { at: next(&mut seed) % 5, step: step(&format!("n{n}"), "n") },
                1 if steps.len() > 1 => Edit::RemoveStep { step: id },
                2 => Edit::MoveStep { step: id, to: next(&mut seed) % steps.len() },
                _ => Edit::SetStep { step: step(id.as_str(), "x") },
            };
            if session.edit(&[edit], "edit", None, n).is_ok() {
                history.push(session.document().clone());
            }
        }
        let last = session.document().clone();
        for earlier in history.iter().rev().skip(1) {
            assert!(session.undo().is_some());
            assert!(Arc::ptr_eq(session.document(), earlier));
        }
        while session.redo().is_some() {}
        assert!(Arc::ptr_eq(session.document(), &last));
    }
}

#[test]
fn keys_within_half_a_second_are_one_entry() {
    let mut session = Session::new(document());
    let type_at = |session: &mut Session, words: &str, ms: u64| {
        session.edit(&[Edit::SetStep { step: step("a", words) }], "type in step 1", Some("a words"), ms)
    };
    assert!(type_at(&mut session, "x", 1000).is_ok());
    assert!(type_at(&mut session, "xy", 1400).is_ok());
    assert!(type_at(&mut session, "xyz", 2000).is_ok());
    assert_eq!(session.undo_label(), Some("type in step 1"));
    session.undo();
    assert_eq!(order(session.document()), "xybcd");
    session.undo();
    assert_eq!(order(session.document()), "abcd");
    assert!(session.undo().is_none());
    assert_eq!(session.redo_label(), Some("type in step 1"));
}

#[test]
fn what_undo_no_longer_reaches_is_still_counted() {
    let mut session = Session::new(document());
    for n in 0..130 {
        let words = format!("words {n}");
        session.edit(&[Edit::SetStep { step: step("a", &words) }], "change", None, 0).expect("applies");
    }
    assert_eq!((session.n_done(), session.n_undo()), (130, 100));
    session.undo();
    assert_eq!((session.n_done(), session.n_undo()), (129, 99));
    session.redo();
    assert_eq!((session.n_done(), session.n_undo()), (130, 100));
}

#[test]
fn another_state_of_the_document_replaces_it_as_one_entry() {
    let before = document();
    let mut earlier = Procedure::clone(&before);
    earlier.title = "As it was".to_owned();
    earlier.steps = vec![step("c", "c"), step("a", "A"), step("z", "z")];
    let applied = apply(&before, &Edit::Replace(Arc::new(earlier.clone()))).unwrap();
    assert_eq!(*applied.document, earlier);
    assert_eq!(applied.touched, ["a".into(), "z".into(), "b".into(), "d".into()].map(|id: Id| id));
    assert!(Arc::ptr_eq(&applied.document.steps[0], &before.steps[2]), "an equal step is the very same");
    assert!(Arc::ptr_eq(&applied.document.map, &before.map), "an equal map is the very same");
    let mut session = Session::new(before.clone());
    session.edit(&[Edit::Replace(Arc::new(earlier.clone()))], "bring back", None, 0).unwrap();
    assert!(session.was(&before) && !session.was(&earlier));
    session.undo();
    assert!(Arc::ptr_eq(session.document(), &before));
    let other = Procedure::new("q".into(), "Another job");
    let refused = apply(&before, &Edit::Replace(Arc::new(other)));
    assert_eq!(refused, Err(EditError::AnotherDocument("Another job".to_owned())));
}
