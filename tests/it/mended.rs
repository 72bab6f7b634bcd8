//! Figures that are mended in a sentence, and what they reach of what the sentence once made.

use procedures_schema::capture::{
    Given, Here, SaidOtherwise, as_was, differing, follow_words, line_as_said, line_here, line_making,
    take_words, write_value,
};
use procedures_schema::model::{ApplianceMap, Id, IdSource, Known, Procedure, Stage, Step};
use procedures_schema::notation::print;
use procedures_schema::simulate::{Place, Run, simulate};
use std::sync::Arc;

/// Identities that are the names themselves.
struct Names;

impl IdSource for Names {
    fn next_id(&mut self, hint: &str) -> Id {
        Id::new(hint)
    }
}

/// A document that was typed line by line.
pub fn typed(lines: &str) -> Procedure {
    let mut document = Procedure::new(Id::new("p"), "Invented");
    for words in lines.split('|') {
        let trace = simulate(&document, &Run::of(&document));
        let at = document.steps.len();
        let place = at.checked_sub(1).map_or(Place::START, Place::after);
        let stage = if words.starts_with("Refit") { Stage::Refit } else { Stage::Strip };
        let given = Given { answers: &[], census: &[], before: &document.steps };
        let made = line_making(words, &document.map, &trace, place, &stage, given, &mut Names);
        document.map = made.map;
        let actions = made.reading.actions;
        let id = Id::new(&format!("step-{}", at + 1));
        document.steps.push(Arc::new(Step { actions, ..Step::new(id, stage, words) }));
    }
    document
}

/// A document in which a step gets other words key by key, as somebody types them: the old part is taken out from its
/// end, the new one typed.
fn retyped(document: &Procedure, at: usize, from: &str, to: &str) -> Procedure {
    let (first, before) = (document.steps[at].clone(), document.map.clone());
    let words = &first.words;
    let begin = words.find(from).expect("the words to be mended");
    let (head, tail) = (&words[..begin], &words[begin + from.len()..]);
    let shorter = (0..from.len()).rev().map(|n| format!("{head}{}{tail}", &from[..n]));
    let longer = (1..=to.len()).map(|n| format!("{head}{}{tail}", &to[..n]));
    let mut now = document.clone();
    for words in shorter.chain(longer) {
        if let Some(map) = follow_words(&now, at, &first, &before, &words) {
            now.map = map;
        }
        now.steps[at] = Arc::new(read(&now, at, &first, &words));
    }
    now
}

/// A step with other words and what they are read as.
fn read(document: &Procedure, at: usize, first: &Step, words: &str) -> Step {
    let (trace, step) = (simulate(document, &Run::of(document)), &document.steps[at]);
    let place = at.checked_sub(1).map_or(Place::START, Place::after);
    let here = Here::from_trace(&document.map, &trace, place);
    let actions = first.actions.iter().chain(&step.actions);
    let actions = line_as_said(words, actions, &document.map, here, &step.stage).0.actions;
    Step { words: words.to_owned(), actions, ..Step::clone(step) }
}

/// The map as words state it of what a step does.
fn as_said(words: &str, step: &Step, document: &Procedure) -> Option<Arc<ApplianceMap>> {
    SaidOtherwise::of(words, step.actions.iter(), &document.map, &step.stage).as_said(&document.map)
}

/// How a connection stands on the map: how many, its size, its seals.
fn stands(map: &ApplianceMap, id: &str) -> String {
    let connection = map.connection(&Id::new(id)).unwrap_or_else(|| panic!("no {id} in {map:?}"));
    let size = connection.size.as_ref().and_then(Known::value).map(ToString::to_string);
    let seals = connection.seals.iter().map(|used| map.name_of(&used.seal).to_owned());
    let all: Vec<String> = std::iter::once(connection.count.to_string()).chain(size).chain(seals).collect();
    all.join(" · ")
}

const GUARD: &str = "Take off the belt guard: four M6 screws, 10 mm.";
const UNION: &str = "Close the flow valve of the heating.|Undo the union of the heating pump, G 1, 37 mm.";

/// What is typed, the step, what is mended in it, the connection, how it stands then.
const FOLLOWS: &[(&str, usize, &str, &str, &str, &str)] = &[
    (GUARD, 0, "four", "six", "belt-guard-screws", "6 · M6 · 10 mm"),
    (GUARD, 0, "four", "4", "belt-guard-screws", "4 · M6 · 10 mm"),
    (GUARD, 0, "M6", "M8", "belt-guard-screws", "4 · M8 · 10 mm"),
    (GUARD, 0, "10 mm", "13 mm", "belt-guard-screws", "4 · M6 · 13 mm"),
    (GUARD, 0, "four M6 screws, 10 mm", "six M8 screws, 13 mm", "belt-guard-screws", "6 · M8 · 13 mm"),
    // What was not said yet is said now.
    (
        "Take off the belt guard: four screws.",
        0,
        "four screws",
        "four M6 screws",
        "belt-guard-screws",
        "4 · M6",
    ),
    ("Undo the screws of the burner door.", 0, "the screws", "the six screws", "burner-door-screws", "6"),
    // Where the words say nothing any more, all stays as it was.
    (GUARD, 0, "four M6 screws, 10 mm", "screws", "belt-guard-screws", "4 · M6 · 10 mm"),
    (UNION, 1, "G 1", "G 3/4", "heating-pump-union", "1 · G 3/4 · 37 mm · washer G 3/4"),
    (UNION, 1, "the union", "the two unions", "heating-pump-union", "2 · G 1 · 37 mm · washer G 1"),
    (
        "Close the flow valve of the heating.|Undo the union of the heating pump, washer 1 inch.",
        1,
        "1 inch",
        "3/4 inch",
        "heating-pump-union",
        "1 · 3/4 in · washer 3/4 in",
    ),
    ("Unscrew the venturi (3 x M4).", 0, "3 x M4", "4 x M5", "venturi-screws", "4 · M5"),
    // Another step names them without a number.
    (
        "Take off the belt guard: four M6 screws.|Refit the belt guard with its screws.",
        0,
        "four",
        "six",
        "belt-guard-screws",
        "6 · M6",
    ),
];

#[test]
fn what_the_words_made_follows_them() {
    let mut wrong = Vec::new();
    for (lines, at, from, to, id, expected) in FOLLOWS {
        let before = typed(lines);
        let now = retyped(&before, *at, from, to);
        let told = stands(&now.map, id);
        let (was, is) = (print(&before.steps[*at].actions), print(&now.steps[*at].actions));
        if told != *expected || was != is || !differing(&now.steps[*at], &now.map).is_empty() {
            wrong.push(format!("{lines}: {from} -> {to}\n   {told}\n   {expected}\n   {was}\n   {is}"));
        }
        let back = retyped(&now, *at, to, from);
        let has_figure = *from == "four" || from.contains(|c: char| c.is_ascii_digit());
        if has_figure && stands(&back.map, id) != stands(&before.map, id) {
            wrong.push(format!("{lines}: back to {from}: {}", stands(&back.map, id)));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn what_another_step_says_or_a_hand_has_set_stays_and_both_are_told() {
    let twice =
        typed("Take off the belt guard: four M6 screws.|Refit the belt guard with the four M6 screws.");
    let mut by_hand = typed(GUARD);
    Arc::make_mut(&mut by_hand.map).connections[0].count = 5;
    for (document, at, held) in [(&twice, 0, "4"), (&twice, 1, "4"), (&by_hand, 0, "5")] {
        let was = print(&document.steps[at].actions);
        let now = retyped(document, at, "four", "six");
        assert_eq!(now.map, document.map, "the map stays");
        assert_eq!(print(&now.steps[at].actions), was, "the action stays");
        let found = differing(&now.steps[at], &now.map);
        let [one] = found.as_slice() else { panic!("{found:?}") };
        assert_eq!((one.said.to_string().as_str(), one.held.to_string().as_str()), ("6", held));
        assert_eq!(one.span.of(&now.steps[at].words), "six");
        // Either way both say the same.
        let taken = Procedure { map: take_words(&now, one), ..now.clone() };
        assert!(differing(&taken.steps[at], &taken.map).is_empty());
        assert!(stands(&taken.map, one.thing.as_str()).starts_with('6'));
        let words = write_value(&now.steps[at], one);
        assert_eq!(
            words,
            document.steps[at].words.replace("four", if held == "5" { "five" } else { "four" })
        );
        let written = read(&now, at, &now.steps[at], &words);
        assert!(differing(&written, &now.map).is_empty());
        assert_eq!(print(&written.actions), was);
    }
}

#[test]
fn a_torque_that_the_map_has_taken_over_follows_too() {
    let lines =
        "Undo the four bolts of the burner door.|Refit the burner door: make the four bolts to 12 Nm.";
    let torque = |document: &Procedure| {
        let tight = document.map.connections[0].tight.as_ref().and_then(Known::value);
        tight.and_then(|tight| tight.torque.as_ref()).map(ToString::to_string)
    };
    let mut document = typed(lines);
    assert_eq!(torque(&retyped(&document, 1, "12", "14")), None, "it is the action's");
    let figure = |text: &str| procedures_schema::units::Figure::parse(text).ok();
    let range = procedures_schema::units::Range::new(
        figure("12"),
        figure("12"),
        procedures_schema::units::Unit::NewtonMetre,
    );
    let tight = procedures_schema::model::Tight { torque: Some(range), ..Default::default() };
    Arc::make_mut(&mut document.map).connections[0].tight = Some(Known::Value(tight));
    let now = retyped(&document, 1, "12", "14");
    assert_eq!(torque(&now).as_deref(), Some("14 N·m"));
    assert_eq!(torque(&retyped(&now, 1, "14", "12")).as_deref(), Some("12 N·m"));
}

#[test]
fn two_of_four_and_other_screws_are_no_mended_numbers() {
    let all = "Take off the belt guard: four M6 screws.|Undo two of the four screws of the belt guard.";
    let document = typed(all);
    assert!(differing(&document.steps[1], &document.map).is_empty(), "{:?}", document.steps[1]);
    // Screws that are named beside those that are known are others.
    let document = typed("Take off the belt guard: four M6 screws.");
    let words = "Take off the belt guard: four M6 screws. Undo the two M8 screws of the motor.";
    let first = document.steps[0].clone();
    assert_eq!(follow_words(&document, 0, &first, &document.map, words), None);
    assert_eq!(as_said(words, &first, &document), None);
}

#[test]
fn what_is_made_beside_a_figure_that_stays_does_not_change_it() {
    let document = typed(GUARD);
    let said = as_said("Take off the belt guard: six M6 screws.", &document.steps[0], &document);
    let said = said.expect("the words say otherwise");
    assert!(stands(&said, "belt-guard-screws").starts_with('6'));
    assert_eq!(as_was(&said, &said, &document.map), document.map);
}

#[test]
fn one_look_reads_what_two_read() {
    let document = typed(&format!("{GUARD}|{UNION}"));
    let (trace, map) = (simulate(&document, &Run::of(&document)), &document.map);
    let lines = [
        "Take off the belt guard: six M6 screws.",
        "Take off the belt guard: four M6 screws.",
        "Take off the belt guard.",
        "Refit the belt guard with its four M8 screws.",
        "Close the flow valve, undo the two unions.",
        "Fit two new ones.",
        "Fit the new one (3 x M4).",
    ];
    let mut n_differing = 0;
    for (at, step) in document.steps.iter().enumerate() {
        let here = Here::from_trace(map, &trace, Place::after(at));
        for words in lines {
            let otherwise = SaidOtherwise::of(words, step.actions.iter(), map, &step.stage);
            let said = otherwise.as_said(map).unwrap_or_else(|| map.clone());
            let apart = (line_here(words, &said, here.clone(), &step.stage), otherwise.clone());
            let at_once = line_as_said(words, step.actions.iter(), map, here.clone(), &step.stage);
            assert_eq!(at_once, apart, "{words}");
            let known = otherwise.by(step.actions.iter(), map).expect("asked of what the step does");
            let step = Step { words: words.to_owned(), ..Step::clone(step) };
            assert_eq!(known, differing(&step, map), "{words}");
            n_differing += known.len();
        }
    }
    assert!(n_differing > 1, "{n_differing}");
}
