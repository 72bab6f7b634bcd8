//! A second simulator, plain and slow, written from what the actions mean and not from the first: a world
//! copied at each action, one way at a time, everything searched anew. Both must have the same value in
//! every cell at every place, on good documents and on random ones.

mod compare;
mod corpus;
mod hands;
mod media;
mod reach;
mod run;
mod supplies;
mod testing;
mod world;

use compare::{Difference, differences};
use procedures_schema::model::{Id, Procedure, Verb};
use procedures_schema::notation;
use procedures_schema::simulate::{Guard, Run, simulate};
use run::Job;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// Every way through the questions of a document: the answers in words, and as a guard.
fn ways(procedure: &Procedure) -> Vec<(BTreeMap<Id, String>, Guard)> {
    let mut ways = vec![(BTreeMap::new(), Guard::ALWAYS)];
    for (q, question) in (0..).zip(&procedure.questions) {
        let mut longer = Vec::new();
        for (words, guard) in &ways {
            for (a, answer) in (0..).zip(&question.answers) {
                let mut words = words.clone();
                words.insert(question.id.clone(), answer.clone());
                longer.push((words, guard.with(q, a)));
            }
        }
        ways = longer;
    }
    ways
}

/// The same document with sections named where it names a circuit of one section.
fn with_sections_named(procedure: &Procedure) -> Procedure {
    let mut plain = procedure.clone();
    let map = Arc::make_mut(&mut plain.map);
    let circuits = map.circuits.clone();
    let section = |id: &mut Id| {
        if let Some(circuit) = circuits.iter().find(|circuit| circuit.id == *id) {
            *id = circuit.sections[0].id.clone();
        }
    };
    for isolator in &mut map.isolators {
        section(&mut isolator.between.0);
        section(&mut isolator.between.1);
    }
    map.connections.iter_mut().filter_map(|connection| connection.section.as_mut()).for_each(section);
    plain
}

/// The first difference of each cell on each way.
fn compared(procedure: &Procedure) -> Vec<Difference> {
    compared_with(procedure, procedure)
}

/// As [`compared`], with another document for the naive simulator.
fn compared_with(procedure: &Procedure, other: &Procedure) -> Vec<Difference> {
    let trace = simulate(procedure, &Run::of(procedure));
    let mut found: Vec<Difference> = Vec::new();
    let plain = with_sections_named(other);
    // What a document puts in the place of the tables is read by the plant, for both.
    let sections = trace.plant().sections();
    let lives =
        sections.filter_map(|(_, plan)| Some((plan.id.clone(), plan.demands.life_minutes?))).collect();
    for (answers, guard) in ways(procedure) {
        for moment in Job::run(&plain, &lives, answers) {
            for difference in differences(&plain, &trace, &guard, &moment) {
                if !found.iter().any(|known| known.thing == difference.thing) {
                    found.push(difference);
                }
            }
        }
    }
    found
}

/// What differs, in words for a message.
fn told(procedure: &Procedure, found: &[Difference]) -> Vec<String> {
    let line = |difference: &Difference| {
        let step = difference.place.execution().and_then(|at| procedure.steps.get(at));
        let action = step.and_then(|step| difference.place.action().and_then(|at| step.actions.get(at)));
        let action = action.map_or_else(String::new, notation::print_action);
        let Difference { place, thing, ours, naive } = difference;
        format!("{place:?} {action}: {thing}\n  ours  {ours}\n  naive {naive}")
    };
    found.iter().map(line).collect()
}

#[test]
fn every_written_procedure_has_the_same_value_in_every_cell() {
    let written = corpus::written();
    assert!(written.len() > 300, "{} procedures", written.len());
    for procedure in written {
        let found = compared(&procedure);
        assert!(found.is_empty(), "{}\n{}", procedure.title, told(&procedure, &found).join("\n"));
    }
}

#[test]
fn every_random_procedure_has_the_same_value_in_every_cell() {
    let cases = std::env::var("PUTBACK_CASES").ok().and_then(|text| text.parse().ok()).unwrap_or(400);
    for (i, procedure) in corpus::random(cases).into_iter().enumerate() {
        let found = compared(&procedure);
        assert!(found.is_empty(), "random {i}\n{}", told(&procedure, &found).join("\n"));
    }
}

/// A comparison that cannot fail would show nothing: what one simulator is told and the other is not must be
/// seen, for every sort of thing that an action changes.
#[test]
fn a_procedure_that_says_something_else_is_told_apart() {
    let mut seen = BTreeSet::new();
    for procedure in corpus::written().into_iter().chain(corpus::random(200)) {
        for (i, step) in procedure.steps.iter().enumerate().filter(|(_, step)| step.when.is_empty()) {
            for (j, action) in step.actions.iter().enumerate() {
                if seen.contains(&action.verb) || !procedure.questions.is_empty() {
                    continue;
                }
                let mut other = procedure.clone();
                Arc::make_mut(&mut other.steps[i]).actions[j].verb = Verb::Ask;
                if !compared_with(&procedure, &other).is_empty() {
                    seen.insert(action.verb.clone());
                }
            }
        }
    }
    // These change no cell.
    let unseen = [Verb::Read, Verb::Tell, Verb::Hold, Verb::Ask];
    let missed: Vec<&Verb> =
        Verb::ALL.iter().filter(|verb| !seen.contains(*verb) && !unseen.contains(verb)).collect();
    assert!(missed.is_empty(), "{missed:?}");
}
