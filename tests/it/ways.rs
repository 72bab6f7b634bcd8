//! Ways: the simulator that splits only where a question matters, against one that runs every way by itself.
//!
//! The oracle is the plain method: every combination of answers is a run of its own, in which nothing is
//! ever split. Each cell must have the same value everywhere on both, on good documents and on random ones.

use crate::laws::{Dice, good, spoiled};
use procedures_schema::check::{Verdict, check};
use procedures_schema::model::{
    Action, Answer, Date, Id, Mode, Procedure, Question, Rest, Step, TestKind, Verb,
};
use procedures_schema::simulate::{
    AnswerIndex, ApplianceCell, Cell, ClockCell, Guard, Place, QuestionIndex, Run, SupplyCell, TestCell,
    Thing, Trace, Wanted, simulate,
};
use std::sync::Arc;

fn question(n: usize) -> Question {
    let answers = ["yes".to_owned(), "no".to_owned(), "cannot tell".to_owned()];
    let id = Id::new(&format!("q{n}"));
    Question {
        id,
        words: "What is found?".to_owned(),
        answers: answers[..2 + n % 2].to_vec(),
        rest: Rest::default(),
    }
}

/// Puts random steps on random answers, and moves some.
pub(crate) fn with_questions(procedure: &Procedure, dice: &mut Dice) -> Procedure {
    let mut asked = procedure.clone();
    asked.questions = (0..=dice.roll(3)).map(question).collect();
    for _ in 0..=dice.roll(8) {
        let at = dice.roll(asked.steps.len());
        let question = asked.questions[dice.roll(asked.questions.len())].clone();
        let answer = question.answers[dice.roll(question.answers.len())].clone();
        let step: &mut Step = Arc::make_mut(&mut asked.steps[at]);
        step.when = vec![Answer::new(question.id, &answer)];
        if dice.roll(3) == 0 {
            let to = dice.roll(asked.steps.len());
            asked.steps.swap(at, to);
        }
    }
    asked
}

fn ways(procedure: &Procedure) -> Vec<Vec<(QuestionIndex, AnswerIndex)>> {
    let mut ways = vec![Vec::new()];
    for (i, question) in procedure.questions.iter().enumerate() {
        let longer = |way: &Vec<(QuestionIndex, AnswerIndex)>| {
            (0..question.answers.len())
                .map(|answer| {
                    let mut way = way.clone();
                    way.push((u16::try_from(i).expect("few"), u8::try_from(answer).expect("few")));
                    way
                })
                .collect::<Vec<_>>()
        };
        ways = ways.iter().flat_map(longer).collect();
    }
    ways
}

fn same<C: Cell>(cell: &C, whole: &Trace, one: &Trace, place: Place, way: &Guard) -> bool
where
    C::State: std::fmt::Debug,
{
    whole.on_way(cell, place, way) == one.at(cell, place)
}

fn compare(procedure: &Procedure, whole: &Trace, way: &[(QuestionIndex, AnswerIndex)]) {
    let one = simulate(procedure, &Run::of(procedure).on_way(way));
    let guard = way.iter().fold(Guard::ALWAYS, |guard, (q, a)| guard.with(*q, *a));
    let plant = whole.plant();
    let places = (0..procedure.steps.len()).map(Place::after).chain([Place::START, Place::END]);
    for place in places {
        assert!(same(&ApplianceCell, whole, &one, place, &guard), "appliance {place:?} {way:?}");
        assert!(same(&ClockCell, whole, &one, place, &guard), "clock {place:?} {way:?}");
        for (cell, _) in plant.sections() {
            assert!(same(&cell, whole, &one, place, &guard), "{cell:?} {place:?} {way:?}");
            let supply = SupplyCell(cell);
            assert!(same(&supply, whole, &one, place, &guard), "{supply:?} {place:?} {way:?}");
        }
        for (cell, _) in plant.settings() {
            assert!(same(&cell, whole, &one, place, &guard), "{cell:?} {place:?} {way:?}");
        }
        for seal in &procedure.map.seals {
            let Some(Thing::Seal(cell)) = plant.thing(&seal.id) else { panic!("{} is no seal", seal.id) };
            assert!(same(&cell, whole, &one, place, &guard), "{cell:?} {place:?} {way:?}");
        }
        for (cell, _) in plant.isolators() {
            assert!(same(&cell, whole, &one, place, &guard), "{cell:?} {place:?} {way:?}");
        }
        for (cell, _) in plant.connections() {
            assert!(same(&cell, whole, &one, place, &guard), "{cell:?} {place:?} {way:?}");
        }
        for (cell, _) in plant.components() {
            assert!(same(&cell, whole, &one, place, &guard), "{cell:?} {place:?} {way:?}");
        }
        for (cell, _) in plant.temporaries() {
            assert!(same(&cell, whole, &one, place, &guard), "{cell:?} {place:?} {way:?}");
        }
    }
    compare_tests(procedure, whole, &one, &guard);
    // The same demands are unmet on this way, whatever else is on others.
    let told = |trace: &Trace| {
        let mut unmet: Vec<_> = trace
            .unmet()
            .iter()
            .filter(|unmet| guard.implies(&unmet.guard))
            .map(|unmet| (unmet.place, unmet.reason.clone()))
            .collect();
        unmet.sort();
        unmet.dedup();
        unmet
    };
    assert_eq!(told(whole), told(&one), "{way:?}");
}

/// Which tests of which things stand at the end, and since where.
fn compare_tests(procedure: &Procedure, whole: &Trace, one: &Trace, guard: &Guard) {
    let ids = procedure.map.things().map(|(_, id, ..)| id);
    let things: Vec<Thing> = ids.filter_map(|id| whole.plant().thing(id)).collect();
    for kind in TestKind::ALL {
        for mode in [None, Some(Mode::Max), Some(Mode::Min)] {
            for thing in &things {
                let cell =
                    TestCell { test: Wanted { kind: kind.clone(), mode: mode.clone() }, thing: *thing };
                let passed = whole.on_way(&cell, Place::END, guard).and_then(|state| state.passed);
                let alone = one.at(&cell, Place::END).and_then(|state| state.passed);
                assert_eq!(passed, alone, "{cell:?}");
            }
        }
    }
}

#[test]
fn every_way_is_as_if_it_were_the_only_one() {
    let cases = std::env::var("PUTBACK_CASES").ok().and_then(|text| text.parse().ok()).unwrap_or(60);
    let good = good();
    let mut dice = Dice(0x9E37_79B9_7F4A_7C15);
    for i in 0..cases {
        let procedure = with_questions(&good[i % good.len()], &mut dice);
        let whole = simulate(&procedure, &Run::of(&procedure));
        for way in ways(&procedure) {
            compare(&procedure, &whole, &way);
        }
    }
    for procedure in spoiled().filter(|procedure| !procedure.steps.is_empty()).take(cases.div_ceil(2)) {
        let procedure = with_questions(&procedure, &mut dice);
        let whole = simulate(&procedure, &Run::of(&procedure));
        for way in ways(&procedure) {
            compare(&procedure, &whole, &way);
        }
    }
}

#[test]
fn ten_independent_questions_do_not_multiply() {
    let mut procedure = good().into_iter().find(|p| p.steps.len() > 30).expect("a long one");
    procedure.questions =
        (0..10).map(|n| Question { answers: question(0).answers, ..question(2 * n) }).collect();
    let photographs = procedure.steps.iter().position(|s| s.words.starts_with("Photograph")).expect("there");
    let model = procedure.steps[photographs].clone();
    for n in 0..10 {
        let mut step = (*model).clone();
        step.id = Id::new(&format!("extra{n}"));
        let id = procedure.questions[n].id.clone();
        step.when = vec![Answer::new(id, "yes")];
        let connection = procedure.map.connections[n % procedure.map.connections.len()].id.clone();
        step.actions[0].on = vec![connection];
        procedure.steps.insert(photographs, Arc::new(step));
        let mut asks = Step { id: Id::new(&format!("asks{n}")), actions: Vec::new(), ..(*model).clone() };
        asks.words = "Ask.".to_owned();
        asks.actions.push(Action {
            ask: Some(procedure.questions[n].id.clone()),
            ..Action::new(Verb::Ask, Vec::new())
        });
        procedure.steps.insert(photographs, Arc::new(asks));
    }
    let trace = simulate(&procedure, &Run::of(&procedure));
    let most = trace
        .plant()
        .connections()
        .map(|(cell, _)| trace.states(&cell, Place::END).len())
        .max()
        .expect("connections");
    assert!(most <= 8, "{most} states of one connection");
    let report = check(&procedure, Date::parse("2026-11-25").expect("a date"));
    assert_eq!(report.verdict, Verdict::Accepted, "{:#?}", report.findings);
}
