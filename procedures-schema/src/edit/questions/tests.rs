//! Questions: steps follow a renamed answer, nothing that is used goes, and undo brings all back.

use super::{
    add_answer, do_on_answer, remove_answer, remove_question, rename_answer, steps_of_answer,
    steps_of_question,
};
use crate::edit::{Edit, Session};
use crate::model::{Action, Answer, Id, OnFail, Procedure, Question, Rest, Stage, Step, Verb};
use std::sync::Arc;

fn question() -> Id {
    "q".into()
}

/// A question, the step that puts it, a step for an answer, one after a failed test, and one for always.
fn document() -> Arc<Procedure> {
    let mut procedure = Procedure::new("p".into(), "Renew the pump");
    procedure.questions.push(Question {
        id: question(),
        words: "Is the shell sound?".to_owned(),
        answers: ["sound", "cracked", "not seen"].map(str::to_owned).to_vec(),
        rest: Rest::default(),
    });
    let step = |id: &str| Step::new(id.into(), Stage::Strip, id);
    let mut asks = step("asks");
    asks.actions.push(Action { ask: Some(question()), ..Action::new(Verb::Ask, Vec::new()) });
    let mut on_cracked = step("cracked");
    on_cracked.when.push(Answer::new(question(), "cracked"));
    let mut inner = step("inner");
    inner.when.push(Answer::new(question(), "cracked"));
    let mut test = step("test");
    let on_fail =
        OnFail { again: String::new(), steps: vec![inner], leave_safe: false, rest: Rest::default() };
    test.actions.push(Action { on_fail: Some(on_fail), ..Action::new(Verb::Test, Vec::new()) });
    procedure.steps = [asks, on_cracked, test, step("always")].map(Arc::new).to_vec();
    Arc::new(procedure)
}

/// Applies the edits of one change and takes them back again; gives the document between.
fn changed(edits: &[Edit]) -> Arc<Procedure> {
    let before = document();
    let mut session = Session::new(before.clone());
    session.edit(edits, "change", None, 0).expect("applies");
    let after = session.document().clone();
    assert!(session.undo().is_some() && Arc::ptr_eq(session.document(), &before));
    assert!(session.redo().is_some() && Arc::ptr_eq(session.document(), &after));
    after
}

#[test]
fn steps_are_known_by_question_and_answer() {
    let d = document();
    assert_eq!(steps_of_question(&d, &question()), [1, 2, 3]);
    assert_eq!(steps_of_answer(&d, &question(), "cracked"), [2, 3]);
    assert_eq!(steps_of_answer(&d, &question(), "sound"), [0; 0]);
}

#[test]
fn the_steps_follow_a_renamed_answer() {
    let after = changed(&rename_answer(&document(), &question(), 1, " broken ").expect("it can"));
    assert_eq!(after.questions[0].answers, ["sound", "broken", "not seen"]);
    assert_eq!(steps_of_answer(&after, &question(), "broken"), [2, 3]);
    assert_eq!(steps_of_answer(&after, &question(), "cracked"), [0; 0]);
    let told =
        |name: &str| rename_answer(&document(), &question(), 1, name).expect_err("refused").to_string();
    assert!(told("Sound").contains("\"sound\" is an answer already"));
    assert!(told(" ").contains("empty"));
}

#[test]
fn answers_come_and_go_but_not_those_in_use() {
    let more = changed(&add_answer(&document(), &question()).expect("it can"));
    assert_eq!(more.questions[0].answers.last().map(String::as_str), Some("answer 4"));
    let five = {
        let mut session = Session::new(more.clone());
        session.edit(&add_answer(&more, &question()).expect("it can"), "add", None, 0).expect("applies");
        session.document().clone()
    };
    assert!(add_answer(&five, &question()).expect_err("refused").to_string().contains("at most 5"));
    let less = changed(&remove_answer(&document(), &question(), 2).expect("it can"));
    assert_eq!(less.questions[0].answers, ["sound", "cracked"]);
    assert!(remove_answer(&less, &question(), 0).expect_err("refused").to_string().contains("at least 2"));
    let used = remove_answer(&document(), &question(), 1).expect_err("refused").to_string();
    assert!(used.contains("steps 2, 3 are done on it"), "{used}");
}

#[test]
fn a_step_is_done_on_one_answer_or_always() {
    let d = document();
    let on = |step: &str, answer| do_on_answer(&d, &question(), &step.into(), answer);
    let after = changed(&on("always", Some("sound")).expect("it can"));
    assert_eq!(steps_of_answer(&after, &question(), "sound"), [4]);
    let moved = changed(&on("cracked", Some("sound")).expect("it can"));
    assert_eq!(moved.steps[1].when, [Answer::new(question(), "sound")]);
    let free = changed(&on("cracked", None).expect("it can"));
    assert!(free.steps[1].when.is_empty());
    assert!(on("asks", Some("sound")).expect_err("refused").to_string().contains("Step 1 puts the question"));
    assert!(on("always", Some("perhaps")).is_err() && on("nothing", None).is_err());
}

#[test]
fn a_question_that_is_put_stays() {
    let told = remove_question(&document(), &question()).expect_err("refused").to_string();
    assert!(told.contains("steps 1, 2, 3 are tied to it"), "{told}");
    let mut alone = Procedure::clone(&document());
    alone.steps.truncate(0);
    let edits = remove_question(&alone, &question()).expect("it can");
    let after = crate::edit::apply(&Arc::new(alone), &edits[0]).expect("applies").document;
    assert!(after.questions.is_empty());
}
