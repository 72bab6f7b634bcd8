//! Merging: every name follows, what differs is chosen, two that are two stay two, and undo brings all back.

use super::{Choice, differences};
use crate::edit::{Edit, EditError, KeptUndo, Session, apply};
use crate::model::{
    Action, Aim, ApplianceMap, Component, Connection, Family, Goal, Id, Known, OnFail, Procedure, Rest, Seal,
    SealPolicy, SealUse, Size, Stage, Step, Temporary, Verb,
};
use std::sync::Arc;

/// A pump with two unions that a writer has named three times, and steps on all of them.
fn document() -> Procedure {
    let mut procedure = Procedure::new("p".into(), "Renew the pump");
    let mut unions = Connection::new("unions".into(), "pump unions", Family::Joint);
    unions.joins = vec!["pump".into()];
    unions.count = 2;
    unions.seals = vec![used("washer"), used("ring")];
    let mut nuts = Connection::new("nuts".into(), "union nuts", Family::Joint);
    nuts.joins = vec!["pump".into(), "pipe".into()];
    nuts.size = Some(Known::Value(Size { thread: Some("G 1".to_owned()), ..Size::default() }));
    nuts.aliases = vec!["big nuts".to_owned()];
    nuts.bond = true;
    nuts.looks_like = vec!["unions".into(), "vent".into()];
    let mut cap = Temporary::new("cap".into(), "cap");
    cap.on = Some("nuts".into());
    let mut loose = Component::new("loose".into(), "loose disc");
    loose.held_in = Some("nuts".into());
    procedure.map = Arc::new(ApplianceMap {
        components: vec![
            Component::new("pump".into(), "pump"),
            Component::new("pipe".into(), "pipe"),
            Component::new("circulator".into(), "circulator"),
            loose,
        ],
        connections: vec![unions, nuts, Connection::new("vent".into(), "vent", Family::Joint)],
        seals: vec![seal("washer", "fibre washer"), seal("ring", "flat ring")],
        temporary: vec![cap],
        ..ApplianceMap::default()
    });
    procedure.goals = vec![goal("pump"), goal("circulator")];
    let mut test = step("s3", &["pump"]);
    let inner = step("s4", &["nuts", "unions"]);
    test.actions[0].on_fail =
        Some(OnFail { again: String::new(), steps: vec![inner], leave_safe: false, rest: Rest::default() });
    procedure.steps =
        [step("s1", &["unions", "nuts"]), step("s2", &["circulator"]), test].map(Arc::new).to_vec();
    procedure
}

fn used(seal: &str) -> SealUse {
    SealUse { seal: seal.into(), quantity: 1, rest: Rest::default() }
}

fn seal(id: &str, name: &str) -> Seal {
    Seal::new(id.into(), name, SealPolicy::AlwaysRenew)
}

fn goal(thing: &str) -> Goal {
    Goal { aim: Aim::Renew, thing: thing.into(), rest: Rest::default() }
}

fn step(id: &str, on: &[&str]) -> Step {
    let mut step = Step::new(id.into(), Stage::Strip, "Undo the union nuts.");
    step.actions.push(Action::new(Verb::Undo, on.iter().map(|id| Id::new(id)).collect()));
    step
}

fn merged(keep: &str, gone: &str, choices: &[(&'static str, bool)]) -> Edit {
    let choices = choices.iter().map(|(field, of_other)| Choice { field, of_other: *of_other }).collect();
    Edit::Merge { keep: keep.into(), gone: gone.into(), choices }
}

/// Why two things stay two.
fn refusal(document: &Procedure, keep: &str, gone: &str) -> String {
    let edit = merged(keep, gone, &[]);
    apply(&Arc::new(document.clone()), &edit).expect_err("it is refused").to_string()
}

#[test]
fn whatever_named_the_second_names_the_first() {
    let before = Arc::new(document());
    let edit = merged("unions", "nuts", &[("how many fasteners", false)]);
    let applied = apply(&before, &edit).expect("applies");
    assert_eq!(applied.touched, [Id::new("s1"), Id::new("s3")]);
    let text = serde_json::to_string(&applied.document).expect("text");
    assert!(!text.contains("\"nuts\""), "{text}");
    let after = applied.document;
    let union = after.map.connection(&"unions".into()).expect("it stays");
    assert_eq!(union.aliases, ["union nuts", "big nuts"]);
    assert_eq!(union.joins, [Id::new("pump"), Id::new("pipe")], "the longer list holds the shorter");
    assert!(union.bond && union.count == 2);
    assert_eq!(union.size.as_ref().and_then(Known::value).map(ToString::to_string).as_deref(), Some("G 1"));
    assert_eq!(union.looks_like, [Id::new("vent")], "nothing is confused with itself");
    assert_eq!(after.steps[0].actions[0].on, [Id::new("unions")], "named once");
    assert_eq!(after.steps[0].words, before.steps[0].words);
    assert!(Arc::ptr_eq(&before.steps[1], &after.steps[1]), "other steps are shared");
}

#[test]
fn what_differs_is_told_and_must_be_chosen() {
    let before = Arc::new(document());
    let told = differences(&before, &"unions".into(), &"nuts".into()).expect("they can be one");
    let shown: Vec<_> = told.iter().map(|d| (d.field, d.kept.as_str(), d.other.as_str())).collect();
    assert_eq!(shown, [("how many fasteners", "2", "1")]);
    let undecided = apply(&before, &merged("unions", "nuts", &[]));
    assert_eq!(undecided, Err(EditError::Undecided(vec!["how many fasteners"])));
    let edit = merged("unions", "nuts", &[("how many fasteners", true)]);
    let after = apply(&before, &edit).expect("applies").document;
    assert_eq!(after.map.connection(&"unions".into()).map(|k| k.count), Some(1));
}

#[test]
fn a_value_that_is_known_ends_that_it_is_found_out_later() {
    let mut document = document();
    let map = Arc::make_mut(&mut document.map);
    map.seals[0].size = Some(Known::later("on site"));
    map.seals[1].size = Some(Known::Value("1 in".to_owned()));
    for (keep, gone) in [("washer", "ring"), ("ring", "washer")] {
        let edit = merged(keep, gone, &[]);
        let after = apply(&Arc::new(document.clone()), &edit).expect("applies").document;
        assert_eq!(after.map.seals[0].size, Some(Known::Value("1 in".to_owned())));
        let union = after.map.connection(&"unions".into()).expect("it stays");
        assert_eq!(union.seals.iter().map(|used| used.quantity).collect::<Vec<_>>(), [2], "two of the one");
    }
}

#[test]
fn two_goals_become_one() {
    let before = Arc::new(document());
    let after = apply(&before, &merged("pump", "circulator", &[])).expect("applies").document;
    assert_eq!(after.goals, [goal("pump")]);
}

#[test]
fn two_that_are_two_stay_two() {
    let mut document = document();
    assert!(refusal(&document, "pump", "unions").contains("a component, the other a connection"));
    assert!(refusal(&document, "pump", "pipe").contains("the union nuts joins one to the other"));
    assert!(refusal(&document, "pump", "pump").contains("the same thing already"));
    assert!(refusal(&document, "pump", "gone").contains("no \"gone\""));
    let map = Arc::make_mut(&mut document.map);
    map.components[2].behind = vec!["loose".into()];
    map.components[3].carried_by = Some("pump".into());
    for (keep, gone) in [("pump", "circulator"), ("circulator", "pump")] {
        let reason = refusal(&document, keep, gone);
        assert!(reason.contains("the circulator is behind the pump, or comes off with it"), "{reason}");
    }
}

#[test]
fn undo_brings_back_the_very_same_document_also_after_it_was_kept() {
    let before = Arc::new(document());
    for (keep, gone) in [("unions", "nuts"), ("nuts", "unions"), ("washer", "ring"), ("circulator", "pump")] {
        let mut session = Session::new(before.clone());
        let edit = merged(keep, gone, &[("how many fasteners", true)]);
        session.edit(&[edit], "merge", None, 0).expect("applies");
        let merged = session.document().clone();
        let kept: KeptUndo =
            serde_json::from_value(serde_json::to_value(session.kept_undo(9)).expect("kept")).expect("kept");
        let mut again = Session::with_undo(merged.clone(), &kept);
        assert!(session.undo().is_some() && Arc::ptr_eq(session.document(), &before));
        assert!(session.redo().is_some() && Arc::ptr_eq(session.document(), &merged));
        assert!(again.undo().is_some());
        assert_eq!(again.document(), &before);
    }
}
