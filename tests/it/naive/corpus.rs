//! What both simulators are run on: every written procedure of the suite, and random ones made of them.

use crate::fixture::Fixture;
use crate::laws::{self, Dice, good};
use crate::rules::example;
use crate::spoiled;
use crate::ways::with_questions;
use procedures_schema::check::catalogue;
use procedures_schema::model::{
    Action, ApplianceMap, Energy, Id, Means, Mode, Procedure, Renewal, Step, TestKind, Verb,
};
use procedures_schema::units::{Figure, Measured, Unit};
use putback_tests::suite;
use std::sync::Arc;

/// Good documents, the demos with one mistake each, the cases, and the examples of every rule.
pub fn written() -> Vec<Procedure> {
    let mut all = good();
    all.extend(spoiled::all().into_iter().map(|case| case.procedure));
    all.extend(fixtures());
    all
}

fn fixtures() -> Vec<Procedure> {
    let cases = suite("cases", ".txt").expect("cases").into_iter().map(|file| {
        let lines: Vec<&str> = file.text.lines().collect();
        Fixture::read(&[&lines[1..2], &lines[3..]].concat().join("\n")).procedure
    });
    let examples = catalogue().iter().flat_map(|rule| {
        ["Fires", "Does not fire"].map(|heading| example(rule.documentation.text, heading).procedure)
    });
    cases.chain(examples).collect()
}

/// Random documents from a fixed seed: changed good ones, and fixtures with actions of every kind among
/// theirs, some of them on answers to questions.
pub fn random(n: usize) -> Vec<Procedure> {
    let mut dice = Dice(0xD1B5_4A32_D192_ED03);
    let fixtures: Vec<Procedure> = fixtures().into_iter().filter(|p| !p.steps.is_empty()).collect();
    let mut all: Vec<Procedure> = laws::spoiled().take(n / 2).collect();
    while all.len() < n {
        let mut procedure = fixtures[dice.roll(fixtures.len())].clone();
        for _ in 0..=dice.roll(12) {
            let at = dice.roll(procedure.steps.len() + 1);
            let mut step = Step::clone(&procedure.steps[dice.roll(procedure.steps.len())]);
            if dice.roll(4) > 0 {
                step.actions = vec![action(&mut dice, &procedure)];
            }
            step.id = Id::new(&format!("random{}", all.len() * 100 + procedure.steps.len()));
            procedure.steps.insert(at, Arc::new(step));
        }
        if dice.roll(3) == 0 {
            procedure = with_questions(&procedure, &mut dice);
        }
        all.push(procedure);
    }
    all
}

/// One of several.
fn one<T: Clone>(dice: &mut Dice, of: &[T]) -> Option<T> {
    of.get(dice.roll(of.len())).cloned()
}

/// One of several, or nothing.
fn maybe<T: Clone>(dice: &mut Dice, of: &[T]) -> Option<T> {
    if dice.roll(2) == 0 { None } else { one(dice, of) }
}

/// An action that mostly names things of a kind that its verb is for.
fn action(dice: &mut Dice, procedure: &Procedure) -> Action {
    let map = &procedure.map;
    let verb = Verb::ALL[dice.roll(Verb::ALL.len())].clone();
    let all: Vec<Id> = map.things().map(|(_, id, ..)| id.clone()).collect();
    let fitting = fitting(&verb, map);
    let pool = if fitting.is_empty() || dice.roll(12) == 0 { &all } else { &fitting };
    let on: Vec<Id> = (0..=dice.roll(2)).filter_map(|_| one(dice, pool)).collect();
    let connections: Vec<Id> = map.connections.iter().map(|c| c.id.clone()).collect();
    let minutes = |n: &str| Measured::new(Figure::parse(n).expect("a figure"), Unit::Minute);
    let mut action = Action::new(verb, on);
    action.count = maybe(dice, &[1, 2, 3, 9]);
    action.test = one(dice, TestKind::ALL);
    action.part = maybe(dice, &[Renewal::New, Renewal::Same]);
    action.seal = maybe(dice, &[Renewal::New, Renewal::Same]);
    action.what = maybe(dice, Energy::ALL);
    action.by = maybe(dice, Means::ALL);
    action.mode = maybe(dice, Mode::ALL);
    action.through = maybe(dice, &connections);
    action.vent = if dice.roll(4) == 0 { one(dice, &connections) } else { None };
    action.at = maybe(dice, &connections);
    action.with = maybe(dice, &["nitrogen".to_owned(), "medium".to_owned(), "flame".to_owned()]);
    action.to = maybe(dice, &["slack".to_owned(), "as found".to_owned(), "3".to_owned()]);
    action.duration = maybe(dice, &[minutes("3"), minutes("20"), minutes("45"), minutes("900")]);
    action.unattended = dice.roll(8) == 0;
    action.until = if dice.roll(3) == 0 {
        procedure.steps.get(dice.roll(procedure.steps.len())).map(|step| step.id.clone())
    } else {
        None
    };
    action.with_new = maybe(dice, &all).into_iter().collect();
    action
}

/// The things that a verb is for.
fn fitting(verb: &Verb, map: &ApplianceMap) -> Vec<Id> {
    let connections = || map.connections.iter().map(|c| c.id.clone());
    let components = || map.components.iter().map(|c| c.id.clone());
    match verb {
        Verb::Isolate | Verb::Lock | Verb::Restore => map.isolators.iter().map(|i| i.id.clone()).collect(),
        Verb::Release | Verb::Prove | Verb::Charge | Verb::Purge => {
            let sections = map.circuits.iter().flat_map(|c| c.sections.iter().map(|s| s.id.clone()));
            sections.chain(map.circuits.iter().map(|c| c.id.clone())).collect()
        }
        Verb::Slacken | Verb::Undo | Verb::Make | Verb::Tighten | Verb::Photograph => connections().collect(),
        Verb::Remove | Verb::MoveAside | Verb::Fit | Verb::Discard => components().collect(),
        Verb::Clean | Verb::Inspect => {
            connections().chain(components()).chain(map.seals.iter().map(|s| s.id.clone())).collect()
        }
        Verb::Place | Verb::TakeAway => map.temporary.iter().map(|t| t.id.clone()).collect(),
        Verb::RecordSetting | Verb::Set => map.settings.iter().map(|s| s.id.clone()).collect(),
        _ => Vec::new(),
    }
}
