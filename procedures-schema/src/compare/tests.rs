//! Steps and things told by identity, and that nothing which differs goes unnoticed.

use super::{Place, Places, changes, places};
use crate::format;
use crate::model::{Action, Component, Id, KitList, Later, Procedure, Stage, Step, Verb};
use std::sync::Arc;

fn step(id: &str, words: &str) -> Arc<Step> {
    Arc::new(Step::new(Id::new(id), Stage::from_word("work"), words))
}

fn of_steps(ids: &[&str]) -> Procedure {
    let mut procedure = Procedure::new(Id::new("p"), "A job");
    procedure.steps = ids.iter().map(|id| step(id, id)).collect();
    procedure
}

fn check(before: &[&str], after: &[&str], expected: &[&str]) {
    assert_eq!(changes(&of_steps(before), &of_steps(after)).lines(), expected, "{before:?} to {after:?}");
}

#[test]
fn steps_are_told_by_identity() {
    check(&["a", "b"], &["a", "b"], &[]);
    check(&["a", "b"], &["a", "x", "b", "y"], &["2 steps added: 2 and 4"]);
    check(&["a", "b", "c"], &["c"], &["2 steps taken out: 1 and 2"]);
    check(&["a"], &["b", "c", "d", "e", "f"], &["5 steps added", "1 step taken out: 1"]);
}

#[test]
fn as_few_steps_as_can_be_count_as_moved() {
    check(&["a", "b", "c", "d"], &["d", "a", "b", "c"], &["1 step moved: 1"]);
    check(&["a", "b", "c", "d"], &["b", "c", "d", "a"], &["1 step moved: 4"]);
    check(&["a", "b", "c", "d"], &["d", "c", "b", "a"], &["3 steps moved: 1, 2 and 3"]);
    check(&["a", "b", "c", "d", "e"], &["a", "d", "c", "e"], &["1 step taken out: 2", "1 step moved: 2"]);
}

#[test]
fn a_step_that_is_reworded_and_moved_is_one_change() {
    let before = of_steps(&["a", "b", "c"]);
    let mut after = of_steps(&["c", "a", "b"]);
    after.steps[0] = step("c", "in other words");
    assert_eq!(changes(&before, &after).lines(), ["1 step changed: 1"]);
}

#[test]
fn things_and_the_rest_have_their_names() {
    let before = of_steps(&["a"]);
    let mut after = before.clone();
    let map = Arc::make_mut(&mut after.map);
    map.components.push(Component::new(Id::new("pump"), "pump"));
    after.title = "Another job".to_owned();
    after.applies_to = "Plate".to_owned();
    let found = changes(&before, &after);
    assert_eq!(found.lines(), ["1 thing added: pump", "the title and what it is for changed"]);
    assert_eq!(changes(&after, &before).lines()[0], "1 thing taken out: pump");
}

#[test]
fn nothing_that_differs_goes_unnoticed() {
    let text = include_str!("../../../public/demo/circulation-pump.putback.json");
    let before = format::read(text.as_bytes()).unwrap();
    assert!(changes(&before, &before.clone()).is_empty());
    let newer = text.replacen("\"putback\": 1,", "\"putback\": 1,\n  \"of-a-later-version\": 3,", 1);
    let after = format::read(newer.as_bytes()).unwrap();
    assert_eq!(changes(&before, &after).others, ["details"]);
    let mut after = before.clone();
    Arc::make_mut(&mut after.map).components.reverse();
    assert!(!changes(&before, &after).is_empty());
    for at in 0..before.steps.len() {
        let mut after = before.clone();
        Arc::make_mut(&mut after.steps[at]).words.push('!');
        assert_eq!(changes(&before, &after).lines(), [format!("1 step changed: {}", at + 1)]);
    }
}

#[test]
fn each_difference_has_its_place() {
    let before = of_steps(&["a", "b"]);
    let places_of = |change: fn(&mut Procedure)| {
        let mut after = before.clone();
        change(&mut after);
        (places(&before, &after), places(&after, &before))
    };
    let add_pump = |procedure: &mut Procedure| {
        Arc::make_mut(&mut procedure.map).components.push(Component::new(Id::new("pump"), "pump"));
    };
    let (same, _) = places_of(|_| ());
    assert_eq!(same, Places::default());
    let (there, back) = places_of(|procedure| procedure.steps.truncate(1));
    assert_eq!((there.parts, back.parts), (vec![Place::Steps], vec![Place::Steps]));
    let (there, back) = places_of(add_pump);
    assert_eq!((there.parts, there.thing, there.is_in_use), (vec![Place::Map], Some(Id::new("pump")), false));
    assert_eq!((back.parts, back.thing), (vec![Place::Map], None), "what has gone has no sheet");
    let mut after = before.clone();
    add_pump(&mut after);
    let mut step = Step::clone(&after.steps[1]);
    step.actions.push(Action::new(Verb::Remove, vec![Id::new("pump")]));
    after.steps[1] = Arc::new(step);
    let there = places(&before, &after);
    assert_eq!((&*there.parts, there.is_in_use), (&[Place::Steps, Place::Map][..], true));
    let (there, _) = places_of(|procedure| {
        let later = r#"{"what": "number of the fan", "who": "the store"}"#;
        procedure.later.push(serde_json::from_str::<Later>(later).expect("an entry"));
    });
    assert_eq!(there.parts, [Place::Later]);
    let (there, _) = places_of(|procedure| procedure.kit.none.push(KitList::Tools));
    assert_eq!(there.parts, [Place::Kit]);
    let (there, _) = places_of(|procedure| procedure.applies_to = "Plate".to_owned());
    assert_eq!(there.parts, [Place::Scope]);
}
