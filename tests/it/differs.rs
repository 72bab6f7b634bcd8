//! Words that part from their actions: what is told, and what looks alike and is not.

use crate::fixture::Fixture;
use procedures_schema::check::{Finding, Level, check};
use procedures_schema::format;
use procedures_schema::model::{Date, Procedure};
use putback_tests::text_files;
use std::sync::Arc;

mod beside;
mod mended;

fn demo(name: &str) -> Procedure {
    let files = text_files("public/demo").expect("demos");
    let file = files.iter().find(|file| file.path.ends_with(&format!("{name}.putback.json"))).expect(name);
    format::read(file.text.as_bytes()).expect(name)
}

fn today() -> Date {
    Date::parse("2026-11-25").expect("a date")
}

/// A demo of which only words of one step are changed; its actions and their spans stay.
fn changed(name: &str, step: usize, from: &str, to: &str) -> Procedure {
    let mut procedure = demo(name);
    let changed = Arc::make_mut(&mut procedure.steps[step - 1]);
    assert!(changed.words.contains(from), "step {step} of {name}: {}", changed.words);
    changed.words = changed.words.replacen(from, to, 1);
    procedure
}

fn differing(procedure: &Procedure) -> Vec<Finding> {
    let report = check(procedure, today());
    report.findings.into_iter().filter(|finding| finding.code == "words/differs").collect()
}

/// What is told of a step of a demo that is changed so.
fn told(name: &str, step: usize, from: &str, to: &str) -> Vec<String> {
    let procedure = changed(name, step, from, to);
    differing(&procedure)
        .into_iter()
        .map(|finding| {
            assert_eq!(finding.level, Level::Warn);
            assert_eq!(finding.step.as_ref(), Some(&procedure.steps[step - 1].id));
            let span = finding.span.expect("words").of(&procedure.steps[step - 1].words).to_owned();
            assert!(finding.title.contains(&span), "{}: {span}", finding.title);
            finding.title
        })
        .collect()
}

#[test]
fn what_words_say_otherwise_is_told() {
    let (pump, gas, store) = ("circulation-pump", "gas-valve", "hot-water-store");
    for (name, step, from, to, expected) in [
        (pump, 24, "40 N·m to 45 N·m", "90 N·m", "\"90 N·m\", and its action says 40 N·m to 45 N·m"),
        (pump, 24, "40 N·m to 45 N·m", "40 to 54 N·m", "\"40 to 54 N·m\""),
        (pump, 24, "40 N·m to 45 N·m", "40-54 Nm", "\"40-54 Nm\""),
        (pump, 24, "40 N·m to 45 N·m", "fifty-four Nm", "\"fifty-four Nm\""),
        (pump, 12, "30 min", "thirty-five minutes", "\"thirty-five minutes\""),
        (pump, 24, "40 N·m", "4 N·m", "\"4 N·m to 45 N·m\""),
        (pump, 24, "four bolts", "two bolts", "\"two bolts\", and its action says 4 of the suction flange"),
        (
            pump,
            24,
            "suction",
            "discharge",
            "\"the discharge flange\", and its action makes the suction flange",
        ),
        (
            pump,
            18,
            "discharge",
            "suction",
            "\"the suction flange\", and its action undoes the discharge flange",
        ),
        (pump, 18, "18 mm", "24 mm", "\"24 mm\", and the map says M12 · 18 mm of the discharge flange"),
        (pump, 18, "18 mm", "M10", "\"M10\", and the map says"),
        (pump, 7, "four lid screws", "six lid screws", "\"six lid screws\""),
        (pump, 12, "30 min", "3 min", "\"3 min\", and its action says 30 min"),
        (pump, 12, "30 min", "three minutes", "\"three minutes\""),
        (pump, 14, "43 °C", "63 °C", "\"63 °C\""),
        (pump, 14, "0.0 bar to 0.1 bar", "0.0 bar to 1.0 bar", "\"0.0 bar to 1.0 bar\""),
        (pump, 28, "drain cock", "hot cock", ""),
        (pump, 33, "1.5 bar", "2.5 bar", "\"1.2 bar to 2.5 bar\""),
        (gas, 8, "inlet valve", "gas valve", "\"the gas valve\", and its action isolates the inlet valve"),
        (gas, 20, "hexagon 4 mm", "hexagon 6 mm", "\"6 mm\""),
        (gas, 33, "20 mbar to 21 mbar", "30 mbar to 31 mbar", "\"30 mbar to 31 mbar\""),
        (store, 8, "0 V to 5 V", "0 V to 50 V", "\"0 V to 50 V\""),
        (store, 42, "90 min", "9 min", "\"9 min\""),
        // Limits of any quantity, from above and from below; figures in what is read and seen.
        (pump, 27, "0.2 Ω", "0.5 Ω", "\"0.5 Ω\", and its action says at most 0.2 Ω"),
        (pump, 27, "0.2 Ω", "0.1 Ω", "\"0.1 Ω\""),
        (pump, 27, "at most 0.2 Ω", "0.1 ohm at most", "\"0.1 ohm\""),
        (pump, 27, "at most", "at least", "\"0.2 Ω\""),
        (pump, 34, "10 min", "20 min", "\"20 min\", and its action says 10 min"),
        (pump, 34, "0.05 bar", "0.02 bar", "\"0.02 bar\", and its action says 0 bar to 0.05 bar"),
        (pump, 34, "at most 0.05 bar", "0.02 bar", "\"0.02 bar\""),
        (pump, 34, "at most 0.05 bar", "not above 20 mbar", "\"20 mbar\""),
        (pump, 14, "60 s", "30 s", "\"30 s\", and its action says 60 s"),
        (pump, 14, "43 °C", "40 °C", "\"40 °C\""),
        (pump, 33, "1.2 bar to 1.5 bar", "at most 1.4 bar", "\"1.4 bar\""),
        (pump, 42, "40 l/min", "60 l/min", "\"12 l/min to 60 l/min\""),
        (pump, 24, "crosswise in two passes, 40 N·m to 45 N·m", "first 20 N·m, then 60 N·m", "\"60 N·m\""),
    ] {
        let told = told(name, step, from, to);
        match told.as_slice() {
            [] => assert_eq!(expected, "", "step {step} of {name}: {from} -> {to}"),
            [only] => assert!(!expected.is_empty() && only.contains(expected), "{only}: not {expected}"),
            _ => panic!("{told:#?}"),
        }
    }
}

#[test]
fn what_only_looks_alike_is_not_told() {
    let (pump, gas, store) = ("circulation-pump", "gas-valve", "hot-water-store");
    for (name, step, from, to) in [
        // The same in other words.
        (pump, 24, "40 N·m to 45 N·m", "40 to 45 Nm"),
        (pump, 24, "40 N·m to 45 N·m", "between 40 and 45 N·m"),
        (pump, 24, "40 N·m to 45 N·m", "42 N·m"),
        (pump, 24, "40 N·m to 45 N·m", "40-45 Nm"),
        (pump, 24, "40 N·m to 45 N·m", "forty-two Nm"),
        (pump, 24, "40 N·m to 45 N·m", "forty to forty five Nm"),
        (pump, 12, "30 min", "thirty minutes"),
        (pump, 33, ": 1.2 bar to 1.5 bar", ": one point two to one and a half bar"),
        (pump, 24, "four bolts", "4 bolts"),
        (pump, 24, "four bolts", "four M12 x 40 bolts"),
        (pump, 24, "four bolts", "two upper and two lower bolts"),
        (pump, 24, "four bolts", "bolts"),
        (pump, 12, "30 min", "half an hour"),
        (pump, 12, "30 min", "0.5 h"),
        (pump, 14, "0.0 bar to 0.1 bar", "0 mbar to 100 mbar"),
        // Figures of other things, tools and people.
        (pump, 18, ", 18 mm", " with the 24 mm spanner"),
        (pump, 18, ", 18 mm", ", 24 mm spanner"),
        (pump, 18, ", 18 mm", ", 20 mm apart"),
        (pump, 19, "while a second person holds", "while two people hold"),
        (pump, 24, "crosswise in two passes, 40", "in two passes, first 20 N·m, then 40"),
        (pump, 24, "a new gasket", "a new gasket for 6 bar"),
        (pump, 12, "Wait 30 min", "Wait (look each 5 min) 30 min"),
        (pump, 33, "Check the fill pressure", "Check the fill pressure at the 6 bar gauge"),
        (pump, 33, ": 1.2 bar to 1.5 bar", " at the 6 bar gauge"),
        (pump, 17, "four bolts", "four bolts by two turns"),
        (pump, 17, "four bolts", "two of the four bolts"),
        // Other things that are named beside the one that is meant.
        (pump, 24, "the suction flange", "the suction flange, which is under the discharge flange,"),
        (pump, 24, "the suction flange", "the flange opposite the discharge flange"),
        (gas, 8, "the inlet valve", "the inlet, which is beside the gas valve"),
        (pump, 30, "slowly", "slowly while the drain cock stays closed"),
        (gas, 8, "the inlet valve", "the valve before the gas valve"),
        (gas, 20, "four screws", "screws"),
        (store, 16, "86 mm box spanner", "90 mm box spanner"),
        (store, 29, "three heater terminals", "heater terminals"),
        // Limits said another way, and figures beside them that tell of something else.
        (pump, 27, "at most 0.2 Ω", "0.2 ohm or less"),
        (pump, 27, "at most 0.2 Ω", "not more than 0.2 Ω, with 0.1 Ω of test lead"),
        (pump, 27, ": at most 0.2 Ω", ""),
        (pump, 34, "at most 0.05 bar", "not above 50 mbar"),
        (pump, 34, "10 min", "600 s"),
        (pump, 34, "10 min", "10 min, looking every 2 min"),
        (pump, 34, ": 10 min, drop", ", rated 6 bar: 10 min, drop"),
        (pump, 34, ": 10 min, drop at most 0.05 bar, tissue dry", ""),
        (pump, 14, "60 s", "1 min"),
        (pump, 14, "for 60 s", "for a while"),
        (pump, 14, "no flow at the open drain for 60 s", "hose led away over 5 min"),
        (pump, 14, "0.0 bar to 0.1 bar", "at most 0.1 bar"),
        (pump, 13, "open", "open, below 60 °C"),
        (pump, 33, "1.2 bar to 1.5 bar", "at least 1.2 bar, at most 1.5 bar"),
        (pump, 33, "1.2 bar to 1.5 bar", "1.3 bar"),
        (pump, 20, "old pump", "old pump of 24 kg"),
    ] {
        assert_eq!(told(name, step, from, to), Vec::<String>::new(), "step {step} of {name}: {to}");
    }
}

#[test]
fn inside_a_question_it_is_told_once() {
    let fixture = Fixture::read("map: pump\nUndo the four cover screws. | undo cover_screws 2");
    let of_rule = |fixture: &Fixture| {
        fixture.findings().into_iter().filter(|finding| finding.code == "words/differs").count()
    };
    assert_eq!(of_rule(&fixture), 1);
    assert_eq!(of_rule(&fixture.inside_a_question()), 1);
}
