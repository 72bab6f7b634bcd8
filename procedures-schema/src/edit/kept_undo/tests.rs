//! What is kept gives the same states back, by name, forwards and backwards.

use super::{KeptUndo, UndoRewriter};
use crate::edit::{Edit, Scope, Session};
use crate::model::{Procedure, Step};
use std::sync::Arc;

fn demo() -> Arc<Procedure> {
    let text = include_bytes!("../../../../public/demo/circulation-pump.putback.json");
    Arc::new(crate::format::read(text).expect("the demo reads"))
}

/// A session in which each sort of change was made once, the last two undone.
fn worked() -> Session {
    let document = demo();
    let mut session = Session::new(document.clone());
    let id = |at: usize| document.steps[at].id.clone();
    let mut changed = Step::clone(&document.steps[3]);
    "Other words.".clone_into(&mut changed.words);
    let mut map = (*document.map).clone();
    map.components.reverse();
    let mut scope = Scope::of(&document);
    "Other purpose".clone_into(&mut scope.purpose);
    let edits = [
        Edit::SetStep { step: Arc::new(changed) },
        Edit::RemoveStep { step: id(5) },
        Edit::MoveStep { step: id(7), to: 0 },
        Edit::SetMap(Arc::new(map)),
        Edit::SetScope(Box::new(scope)),
        Edit::SetTitle("Other title".to_owned()),
    ];
    for (n, edit) in edits.into_iter().enumerate() {
        session.edit(&[edit], &format!("change {n}"), None, 0).expect("applies");
    }
    session.undo();
    session.undo();
    session
}

/// Every state on the way to one end, with the names of the entries.
fn walk(mut session: Session, back: bool) -> Vec<(String, Arc<Procedure>)> {
    let mut states = Vec::new();
    while let Some(undone) = if back { session.undo() } else { session.redo() } {
        states.push((undone.label, session.document().clone()));
    }
    states
}

#[test]
fn undo_and_redo_come_back_as_they_were() {
    let session = worked();
    let text = serde_json::to_string(&session.kept_undo(100)).expect("serialises");
    let kept: KeptUndo = serde_json::from_str(&text).expect("reads");
    let again = Session::with_undo(Arc::new(Procedure::clone(session.document())), &kept);
    assert_eq!(walk(again.clone(), true).len(), 4);
    assert_eq!(walk(again.clone(), false).len(), 2);
    assert_eq!(walk(again.clone(), true), walk(session.clone(), true));
    assert_eq!(walk(again, false), walk(session, false));
}

#[test]
fn of_a_change_of_words_one_step_is_kept() {
    let document = demo();
    let mut session = Session::new(document.clone());
    let mut changed = Step::clone(&document.steps[3]);
    "Other words.".clone_into(&mut changed.words);
    session.edit(&[Edit::SetStep { step: Arc::new(changed) }], "change", None, 0).expect("applies");
    let kept = session.kept_undo(100);
    assert_eq!(kept.undo.len(), 1);
    assert_eq!(kept.undo[0].steps.len(), 1);
    assert!(kept.undo[0].map.is_none() && kept.undo[0].head.is_none() && kept.undo[0].order.is_none());
}

#[test]
fn only_so_many_entries_are_kept_and_they_are_the_last() {
    let session = worked();
    let kept = session.kept_undo(2);
    let again = Session::with_undo(session.document().clone(), &kept);
    let mut whole = walk(session, true);
    whole.truncate(2);
    assert_eq!(walk(again, true), whole);
}

#[test]
fn writing_again_gives_what_is_kept() {
    let mut writer = UndoRewriter::default();
    let mut session = worked();
    let is_same = |writer: &mut UndoRewriter, session: &Session, most: usize| {
        let again: KeptUndo = serde_json::from_str(&writer.write(session, most)).expect("it reads");
        assert_eq!(again, session.kept_undo(most));
    };
    is_same(&mut writer, &session, 100);
    let before = writer.write(&session, 100);
    // A key more in the step of the last entry leaves the undo as it is.
    let step = |session: &Session, words: &str| {
        let step = Step { words: words.to_owned(), ..Step::clone(&session.document().steps[3]) };
        [Edit::SetStep { step: Arc::new(step) }]
    };
    for (now_ms, words) in [(10_000, "a"), (10_100, "ab"), (10_200, "abc")] {
        session.edit(&step(&session, words), "type", Some("words"), now_ms).expect("applies");
        is_same(&mut writer, &session, 100);
    }
    let typed = writer.write(&session, 100);
    session.edit(&step(&session, "abcd"), "type", Some("words"), 10_300).expect("applies");
    assert_eq!(writer.write(&session, 100), typed);
    assert_ne!(before, typed);
    for most in [100, 2, 100] {
        is_same(&mut writer, &session, most);
    }
    while session.undo().is_some() {
        is_same(&mut writer, &session, 100);
    }
    while session.redo().is_some() {
        is_same(&mut writer, &session, 3);
    }
}
