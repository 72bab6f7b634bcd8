//! Links to steps: one that points at nothing is found wherever words stand, and none other.

use crate::fixture::Fixture;
use procedures_schema::edit::{Edit, apply};
use procedures_schema::model::Span;
use std::sync::Arc;

const LINES: &str =
    "map: pump\nTell the keeper. | tell who=keeper\nTell the keeper as in {step:s1}. | tell who=keeper";

fn dangling(fixture: &Fixture) -> Vec<(String, Option<Span>)> {
    let found = fixture.findings().into_iter().filter(|finding| finding.code == "words/dangling-link");
    found.map(|finding| (finding.title, finding.span)).collect()
}

#[test]
fn a_link_dangles_once_its_step_is_gone_and_not_when_it_moves() {
    let mut fixture = Fixture::read(LINES);
    assert_eq!(dangling(&fixture), []);
    let document = Arc::new(fixture.procedure.clone());
    let moved = apply(&document, &Edit::MoveStep { step: "s1".into(), to: 1 }).expect("it moves");
    fixture.procedure = (*moved.document).clone();
    assert_eq!(dangling(&fixture), []);
    let gone = apply(&document, &Edit::RemoveStep { step: "s1".into() }).expect("it goes");
    fixture.procedure = (*gone.document).clone();
    let title = "Step 1 points at a step \"s1\" that is not there".to_owned();
    assert_eq!(dangling(&fixture), [(title, Some(Span(22, 31)))]);
}

#[test]
fn the_steps_after_a_failed_test_are_looked_at_and_cannot_be_pointed_at() {
    let mut fixture = Fixture::read("map: pump\ntest leak-hot !! photograph pump");
    let step = Arc::make_mut(&mut fixture.procedure.steps[0]);
    let block = &mut step.actions[0].on_fail.as_mut().expect("a block").steps[0];
    block.words = "As in {step:s1}, not as in {step:after-failure}.".to_owned();
    let title = "What follows a failure at step 1 points at \"after-failure\", which is not there".to_owned();
    assert_eq!(dangling(&fixture), [(title, None)]);
}
