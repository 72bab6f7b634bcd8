//! Copies keep their meaning: within a document, and in one that knows nothing of their things.

use super::{Carried, stage_around};
use crate::check::check;
use crate::edit::{Edit, apply};
use crate::model::{Date, Id, NumberedIds, Procedure};
use std::sync::Arc;

fn demo() -> Arc<Procedure> {
    let text = include_bytes!("../../../../public/demo/circulation-pump.putback.json");
    Arc::new(crate::format::read(text).expect("the demo reads"))
}

fn with(document: &Arc<Procedure>, edits: &[Edit]) -> Arc<Procedure> {
    edits.iter().fold(document.clone(), |document, edit| apply(&document, edit).expect("applies").document)
}

#[test]
fn a_whole_procedure_carried_into_an_empty_one_is_judged_alike() {
    let from = demo();
    let ids: Vec<Id> = from.steps.iter().map(|step| step.id.clone()).collect();
    let mut empty = Procedure::new("other".into(), "Other");
    empty.census.clone_from(&from.census);
    empty.purpose.clone_from(&from.purpose);
    empty.applies_to.clone_from(&from.applies_to);
    empty.kit.clone_from(&from.kit);
    empty.sources.clone_from(&from.sources);
    empty.questions.clone_from(&from.questions);
    let arrival = Carried::of(&from, &ids).arrive(&empty, 0, &mut NumberedIds::default());
    let other = with(&Arc::new(empty), &arrival.edits);
    assert_eq!(arrival.left_behind, Vec::<String>::new());
    assert_eq!(other.steps.len(), from.steps.len());
    let today = Date::parse("2026-01-01").expect("a date");
    let rejecting = |document: &Procedure| {
        let report = check(document, today);
        report.findings.iter().map(|finding| (finding.code, finding.title.clone())).collect::<Vec<_>>()
    };
    assert_eq!(rejecting(&other), rejecting(&from));
    let shown = |document: &Procedure| -> Vec<String> {
        let line = |step: &Arc<crate::model::Step>| -> String {
            let tokens = step.actions.iter().flat_map(|action| crate::notation::shown(action, &document.map));
            tokens.map(|token| token.text + " ").collect()
        };
        document.steps.iter().map(line).collect()
    };
    assert_eq!(shown(&other), shown(&from));
}

#[test]
fn things_of_the_same_name_are_the_same_and_the_others_come_once() {
    let from = demo();
    let ids: Vec<Id> = from.steps.iter().map(|step| step.id.clone()).collect();
    let carried = Carried::of(&from, &ids);
    let mut numbered = NumberedIds::default();
    let empty = Arc::new(Procedure::new("other".into(), "Other"));
    let once = with(&empty, &carried.arrive(&empty, 0, &mut numbered).edits);
    let again = carried.arrive(&once, once.steps.len(), &mut numbered);
    assert_eq!(again.things, Vec::<String>::new());
    let twice = with(&once, &again.edits);
    assert_eq!(twice.map, once.map);
    assert_eq!(twice.steps.len(), 2 * from.steps.len());
}

#[test]
fn a_thing_of_the_same_name_can_be_another_one() {
    let from = demo();
    let ids: Vec<Id> = from.steps.iter().map(|step| step.id.clone()).collect();
    let carried = Carried::of(&from, &ids);
    let mut numbered = NumberedIds::default();
    let empty = Arc::new(Procedure::new("other".into(), "Other"));
    let once = with(&empty, &carried.arrive(&empty, 0, &mut numbered).edits);
    let same = carried.arrive(&once, once.steps.len(), &mut numbered).same;
    assert!(same.iter().all(|(id, _)| from.map.circuits.iter().all(|circuit| circuit.id != *id)), "{same:?}");
    let (pump, name) = same.iter().find(|(_, name)| name.contains("pump")).expect("the pump is the same");
    let apart = std::iter::once(pump.clone()).collect();
    let again = carried.arrive_apart(&once, once.steps.len(), &mut numbered, &apart);
    assert_eq!(again.things, std::slice::from_ref(name));
    assert!(!again.same.iter().any(|(id, _)| id == pump), "it is no longer asked about");
    let twice = with(&once, &again.edits);
    let names: Vec<&str> = twice.map.things().map(|(_, _, name, _)| name).collect();
    assert!(names.contains(&name.as_str()) && names.contains(&format!("{name} 2").as_str()), "{names:?}");
}

#[test]
fn within_a_document_only_the_steps_are_copied() {
    let from = demo();
    let ids: Vec<Id> = from.steps.iter().skip(3).take(2).map(|step| step.id.clone()).collect();
    let arrival = Carried::of(&from, &ids).arrive(&from, 5, &mut NumberedIds::default());
    let after = with(&from, &arrival.edits);
    assert_eq!(after.map, from.map);
    assert_eq!(after.steps.len(), from.steps.len() + 2);
    for (copy, original) in arrival.steps.iter().zip(&ids) {
        let step = |id: &Id| after.steps.iter().find(|step| step.id == *id).expect("there");
        assert_eq!(step(copy).words, step(original).words);
        assert_eq!(step(copy).actions, step(original).actions);
    }
}

#[test]
fn what_cannot_come_along_is_told() {
    let mut from = Procedure::clone(&demo());
    let step = Arc::make_mut(&mut from.steps[4]);
    step.when = vec![crate::model::Answer::new("q".into(), "yes")];
    let carried = Carried::of(&from, &[from.steps[4].id.clone()]);
    let empty = Procedure::new("other".into(), "Other");
    let arrival = carried.arrive(&empty, 0, &mut NumberedIds::default());
    assert_eq!(arrival.left_behind, ["the question on which copied step 1 depends"]);
}

#[test]
fn links_within_what_is_copied_point_at_the_copies_and_others_stay() {
    let mut from = Procedure::clone(&demo());
    let id = |at: usize| from.steps[at].id.clone();
    let (first, second, outside) = (id(4), id(5), id(1));
    let step = Arc::make_mut(&mut from.steps[5]);
    step.words = format!("As in {{step:{first}}}, not {{step:{outside}}}: close the suction valve.");
    let begin = u32::try_from(step.words.find("close").expect("there")).expect("short");
    step.actions.truncate(1);
    step.actions[0].says = vec![crate::model::Span(begin, begin + 5)];
    let from = Arc::new(from);
    let carried = Carried::of(&from, &[first, second]);
    let arrival = carried.arrive(&from, 6, &mut NumberedIds::default());
    let after = with(&from, &arrival.edits);
    let copy = after.steps.iter().find(|step| step.id == arrival.steps[1]).expect("copied");
    let [copied, kept] = crate::model::step_links(&copy.words)[..] else { panic!("two links") };
    assert_eq!((copied.step, kept.step), (arrival.steps[0].as_str(), outside.as_str()));
    assert_eq!(copy.actions[0].says[0].of(&copy.words), "close");
    assert_eq!(arrival.left_behind, Vec::<String>::new());
    let empty = Procedure::new("other".into(), "Other");
    let elsewhere = carried.arrive(&empty, 0, &mut NumberedIds::default());
    assert!(elsewhere.left_behind.contains(&"the step that copied step 2 points at".to_owned()));
}

#[test]
fn the_text_of_a_copy_shows_the_numbers_of_steps() {
    let mut from = Procedure::clone(&demo());
    let target = from.steps[1].id.clone();
    Arc::make_mut(&mut from.steps[5]).words = format!("As in {{step:{target}}}.");
    let carried = Carried::of(&from, &[from.steps[5].id.clone()]);
    assert_eq!(carried.text(), "As in step 2.\n");
    assert_eq!(carried.steps[0].words, from.steps[5].words, "what is put in again keeps its link");
}

#[test]
fn a_stage_goes_behind_the_one_that_it_would_cut_and_stays_a_stage() {
    let from = demo();
    let stages = |document: &Procedure| -> Vec<(String, usize)> {
        let mut runs = Vec::new();
        let mut at = 0;
        while at < document.steps.len() {
            let run = stage_around(document, at);
            runs.push((document.steps[at].stage.word().to_owned(), run.len()));
            at = run.end;
        }
        runs
    };
    let before = stages(&from);
    let (first, second) = (before[0].1, before[1].1);
    assert!(second > 1, "the second stage can be cut in two");
    let ids: Vec<Id> = from.steps[..first].iter().map(|step| step.id.clone()).collect();
    let whole = Carried { is_stage: true, ..Carried::of(&from, &ids) };
    // Below the first step of the second stage.
    let below = first + 1;
    let at = whole.place(&from, below);
    assert_eq!(at, first + second);
    assert_eq!(Carried { is_stage: false, ..whole.clone() }.place(&from, below), below);
    let after = with(&from, &whole.arrive(&from, at, &mut NumberedIds::default()).edits);
    let mut expected = before.clone();
    expected.insert(2, before[0].clone());
    assert_eq!(stages(&after), expected);
    assert_eq!(whole.called(at), format!("the stage {}", before[0].0));
    assert_eq!(whole.place(&Procedure::new("empty".into(), "Empty"), 0), 0);
}

#[test]
fn what_was_taken_out_comes_back_with_the_steps_that_name_it() {
    let from = demo();
    let thing =
        |step: &Arc<crate::model::Step>| step.actions.iter().flat_map(|action| &action.on).next().cloned();
    let is_connection = |id: &Id| from.map.connection(id).is_some();
    let step = from.steps.iter().find(|step| thing(step).is_some_and(|id| is_connection(&id))).expect("one");
    let id = thing(step).expect("a thing");
    let carried = Carried::of(&from, std::slice::from_ref(&step.id));
    let mut gone = Procedure::clone(&from);
    Arc::make_mut(&mut gone.map).connections.retain(|known| known.id != id);
    gone.steps.retain(|step| !crate::model::names(&**step, &id));
    let arrival = carried.arrive(&gone, 0, &mut NumberedIds::default());
    assert_eq!(arrival.back, [from.map.name_of(&id).to_owned()]);
    let after = with(&Arc::new(gone.clone()), &arrival.edits);
    assert_eq!(after.map.connection(&id), from.map.connection(&id), "as it was");
    assert_eq!(thing(&after.steps[0]), Some(id.clone()));
    // Where it has been made anew meanwhile, that is meant.
    let mut anew = gone.clone();
    let mut other = from.map.connection(&id).expect("there").clone();
    other.id = "anew".into();
    Arc::make_mut(&mut anew.map).connections.push(other);
    let arrival = carried.arrive(&anew, 0, &mut NumberedIds::default());
    assert_eq!(arrival.back, Vec::<String>::new());
    let after = with(&Arc::new(anew.clone()), &arrival.edits);
    assert_eq!((after.map.clone(), thing(&after.steps[0])), (anew.map.clone(), Some("anew".into())));
    // Where nothing is missing nothing changes but the steps.
    let arrival = carried.arrive(&from, 0, &mut NumberedIds::default());
    assert_eq!(arrival.edits.len(), 1);
}
