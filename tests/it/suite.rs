//! Whole procedures: those that must be accepted, and what each of them becomes when a step is missing.

use procedures_schema::check::{Level, Report, Verdict, check};
use procedures_schema::derive::ladder::ladder;
use procedures_schema::derive::lanes::{LaneLevel, lane_states};
use procedures_schema::derive::way_back::{missing_tests, way_back};
use procedures_schema::format;
use procedures_schema::model::{
    Circuit, CircuitKind, Country, Date, Id, NumberedIds, Procedure, Reading, Step, TestKind,
};
use procedures_schema::simulate::{Place, Run, simulate};
use putback_tests::{TextFile, suite, text_files};
use std::sync::Arc;

fn today() -> Date {
    Date::parse("2026-11-25").expect("a date")
}

fn read(file: &TextFile) -> Procedure {
    format::read(file.text.as_bytes()).unwrap_or_else(|error| panic!("{}: {error}", file.path))
}

fn accepted() -> Vec<TextFile> {
    let mut files = suite("accepted", ".putback.json").expect("accepted samples");
    files.extend(text_files("public/demo").expect("demos").into_iter().filter(|f| f.is(".putback.json")));
    files
}

fn named(name: &str) -> Procedure {
    let files = accepted();
    read(files.iter().find(|file| file.path.contains(name)).expect(name))
}

fn titles(report: &Report) -> Vec<String> {
    report.findings.iter().map(|f| format!("{} {}: {}", f.level.word(), f.code, f.title)).collect()
}

#[test]
fn every_sample_is_laid_out_as_the_editor_saves_it() {
    let maps = suite("maps", ".putback.json").expect("maps");
    for file in accepted().iter().chain(&maps) {
        assert_eq!(format::write(&read(file)), file.text, "{}", file.path);
    }
}

#[test]
fn every_good_procedure_is_accepted_with_nothing_but_advice() {
    for file in accepted() {
        let report = check(&read(&file), today());
        let advice = |title: &String| title.starts_with("advise");
        let told: Vec<String> = titles(&report).into_iter().filter(|title| !advice(title)).collect();
        assert_eq!(told, Vec::<String>::new(), "{}", file.path);
        assert_eq!(report.verdict, Verdict::Accepted);
    }
}

/// Takes out the step whose words begin so.
fn without(procedure: &Procedure, begin: &str) -> Procedure {
    let mut spoiled = procedure.clone();
    let before = spoiled.steps.len();
    spoiled.steps.retain(|step| !step.words.starts_with(begin));
    assert_eq!(spoiled.steps.len() + 1, before, "exactly one step begins \"{begin}\"");
    spoiled
}

#[test]
fn a_missing_step_is_rejected_by_the_rule_it_breaks() {
    for (name, begin, code) in [
        ("circulation-pump", "Switch off at the pump isolator", "isolation/guard-off-live"),
        ("circulation-pump", "Prove the box terminals", "isolation/not-proved"),
        ("circulation-pump", "Close the suction valve and", "pressure/still-fed"),
        ("circulation-pump", "Drain the pump body", "pressure/not-released"),
        ("circulation-pump", "Prove the pump body", "pressure/not-proved"),
        ("circulation-pump", "Make the suction flange", "putback/left-open"),
        ("circulation-pump", "Plug in the pump plug", "putback/left-open"),
        ("circulation-pump", "Close the drain cock", "putback/left-open"),
        ("circulation-pump", "Close the vent screw", "putback/left-open"),
        ("circulation-pump", "Fit the new pump", "putback/left-off"),
        ("circulation-pump", "Put back the insulation shell", "putback/left-off"),
        ("circulation-pump", "Fit the lid", "putback/left-off"),
        ("circulation-pump", "Take the drain hose", "putback/temp-left"),
        ("circulation-pump", "Take the notice", "putback/temp-left"),
        ("circulation-pump", "Open the suction valve", "putback/supply-off"),
        ("circulation-pump", "Check the fill pressure", "retest/missing"),
        ("circulation-pump", "Check for leaks cold", "retest/missing"),
        ("circulation-pump", "Check for leaks hot", "retest/missing"),
        ("circulation-pump", "Check that the pump works", "retest/missing"),
        ("gas-union", "Close the heater gas valve.", "gas/still-fed"),
        ("gas-union", "Prove the gas inlet", "gas/not-proved"),
        ("gas-union", "Test the gas for tightness at", "retest/missing"),
        ("gas-union", "Check the gas union and the test point", "retest/missing"),
        ("gas-union", "Close the test point", "putback/left-open"),
    ] {
        let report = check(&without(&named(name), begin), today());
        assert_eq!(report.verdict, Verdict::Rejected, "{name} without \"{begin}\"");
        let found = report
            .findings
            .iter()
            .any(|f| f.level == Level::Reject && (f.code == code || f.also.iter().any(|also| also == code)));
        assert!(found, "{name} without \"{begin}\" should break {code}: {:#?}", titles(&report));
    }
}

#[test]
fn a_tightness_test_behind_a_shut_valve_covers_nothing() {
    let mut spoiled = named("gas-union");
    let at = |procedure: &Procedure, begin: &str| {
        procedure.steps.iter().position(|step| step.words.starts_with(begin)).expect("a step")
    };
    let opening = spoiled.steps.remove(at(&spoiled, "Open the heater gas valve."));
    let test = at(&spoiled, "Test the gas for tightness at");
    spoiled.steps.insert(test + 1, opening);
    let report = check(&spoiled, today());
    let tightness = |f: &procedures_schema::check::Finding| {
        f.title.contains("the gas union") && f.title.contains("tightness")
    };
    assert!(report.findings.iter().any(tightness), "{:#?}", titles(&report));
}

#[test]
fn words_that_say_the_reverse_of_their_action_are_rejected() {
    let mut spoiled = named("circulation-pump");
    let at = spoiled.steps.iter().position(|s| s.words.starts_with("Close the suction valve and"));
    let at = at.expect("a step");
    let mut step = (*spoiled.steps[at]).clone();
    step.words = step.words.replacen("Close", "Open!", 1);
    spoiled.steps[at] = Arc::new(step);
    let report = check(&spoiled, today());
    assert!(report.findings.iter().any(|f| f.code == "words/not-said"), "{:#?}", titles(&report));
    assert_eq!(report.verdict, Verdict::Rejected);
}

#[test]
fn one_forgotten_valve_is_one_finding() {
    let mut spoiled = named("circulation-pump");
    let at = spoiled.steps.iter().position(|s| s.words.starts_with("Close the suction valve and"));
    let at = at.expect("a step");
    let mut step = (*spoiled.steps[at]).clone();
    step.actions[0].on.retain(|id| id.as_str() != "v_discharge");
    spoiled.steps[at] = Arc::new(step);
    let report = check(&spoiled, today());
    let fed: Vec<_> = report.findings.iter().filter(|f| f.code == "pressure/still-fed").collect();
    assert_eq!(fed.len(), 1, "{:#?}", titles(&report));
    assert!(fed[0].title.contains("pump body"), "{}", fed[0].title);
    assert!(fed[0].because[0].text.contains("discharge valve"), "{}", fed[0].because[0].text);
    assert!(fed[0].again.len() >= 3, "met again at the proof and the joints: {:?}", fed[0].again);
}

#[test]
fn a_ready_ladder_makes_every_circuit_safe_in_words_that_say_so() {
    for country in [None, Some(Country::UnitedKingdom), Some(Country::UnitedStates)] {
        for file in accepted() {
            let whole = read(&file);
            // Circuits are made safe in the order of the map: nothing is drained beside what is live.
            let mut fresh = Procedure::new("fresh".into(), "A fresh procedure");
            fresh.map = whole.map.clone();
            fresh.country.clone_from(&country);
            for circuit in &whole.map.circuits {
                made_safe(&file.path, &mut fresh, circuit);
            }
        }
    }
}

fn made_safe(path: &str, fresh: &mut Procedure, circuit: &Circuit) {
    let mut ids = NumberedIds::default();
    let steps = ladder(fresh, &circuit.id, fresh.steps.len(), &mut ids);
    assert!(!steps.is_empty(), "{path} {}", circuit.name);
    let n = fresh.steps.len();
    let numbered = steps.into_iter().enumerate();
    let numbered = numbered.map(|(at, step)| Step { id: Id::new(&format!("s{}", n + at)), ..step });
    fresh.steps.extend(numbered.map(Arc::new));
    let report = check(fresh, today());
    let about_the_ladder = |code: &str| {
        ["isolation/", "gas/", "pressure/", "reading/", "words/"].iter().any(|f| code.starts_with(f))
    };
    let wrong: Vec<_> = report.findings.iter().filter(|f| about_the_ladder(f.code)).collect();
    assert!(wrong.is_empty(), "{path} {}: {:#?}", circuit.name, titles(&report));
    let trace = simulate(fresh, &Run::of(fresh));
    let lane = fresh.map.circuits.iter().position(|c| c.id == circuit.id).expect("the circuit");
    let state = lane_states(fresh, &trace, Place::END)[lane];
    assert_eq!(state.level, LaneLevel::Proved, "{path} {}", circuit.name);
    let again = ladder(fresh, &circuit.id, fresh.steps.len(), &mut ids);
    assert!(again.is_empty(), "{path} {}: {again:#?}", circuit.name);
}

#[test]
fn a_ladder_leaves_out_what_is_so_already_at_its_place() {
    let whole = named("circulation-pump");
    let at = |begin: &str| whole.steps.iter().position(|step| step.words.starts_with(begin)).expect("a step");
    let water = whole.map.circuits.iter().find(|c| c.kind == CircuitKind::HeatingWater).expect("water");
    let words = |at: usize| -> Vec<String> {
        let steps = ladder(&whole, &water.id, at, &mut NumberedIds::default());
        steps.iter().map(|step| step.words.split(' ').next().unwrap_or_default().to_owned()).collect()
    };
    let valves = at("Close the suction valve");
    assert_eq!(words(0), ["Shut", "Close", "Drain", "Prove"]);
    assert_eq!(words(valves), ["Close", "Drain", "Prove"]);
    assert_eq!(words(valves + 1), ["Drain", "Prove"]);
    assert_eq!(words(at("Drain the pump body") + 1), ["Prove"]);
    assert!(words(at("Prove the pump body") + 1).is_empty());
    // The valves are open at the end, and the appliance runs.
    assert_eq!(words(whole.steps.len()), words(0));
}

#[test]
fn a_ladder_writes_the_units_of_the_country() {
    let mut whole = named("circulation-pump");
    whole.country = Some(Country::UnitedStates);
    let water =
        whole.map.circuits.iter().find(|c| c.kind == CircuitKind::HeatingWater).expect("water").id.clone();
    let steps = ladder(&whole, &water, 0, &mut NumberedIds::default());
    let prove = steps.last().expect("a proof");
    assert!(prove.words.contains("gauge 0 to 1.4 psi"), "{}", prove.words);
    assert!(prove.words.contains("water temperature 32 to 109 °F"), "{}", prove.words);
    let limits = |reading: &Reading| reading.limits.as_ref().map(ToString::to_string);
    let held: Vec<String> = prove.actions[0].readings.iter().filter_map(limits).collect();
    assert_eq!(held, ["0 psi to 1.4 psi", "32 °F to 109 °F"]);
}

#[test]
fn a_proof_before_the_isolation_shows_nothing() {
    let whole = named("circulation-pump");
    let at = |procedure: &Procedure, id: &str| {
        procedure.steps.iter().position(|step| step.id.as_str() == id).expect("a step")
    };
    let levels = |procedure: &Procedure| {
        let trace = simulate(procedure, &Run::of(procedure));
        let mains = |place| lane_states(procedure, &trace, place)[0].level;
        (0..procedure.steps.len()).map(|execution| mains(Place::after(execution))).collect::<Vec<_>>()
    };
    let proved = |levels: &[LaneLevel]| levels.iter().position(|level| *level == LaneLevel::Proved);
    assert_eq!(proved(&levels(&whole)), Some(at(&whole, "s08")));
    let mut early = whole.clone();
    let proof = early.steps.remove(at(&early, "s08"));
    let isolation = at(&early, "s05");
    early.steps.insert(isolation, proof.clone());
    assert_eq!(proved(&levels(&early)), None, "{:?}", levels(&early));
    assert_eq!(levels(&early)[isolation + 1], LaneLevel::Isolated);
    // A second proof behind the isolation shows it.
    let mut again = early.clone();
    let second = Step { id: "again".into(), ..(*proof).clone() };
    let place = at(&again, "s09");
    again.steps.insert(place, Arc::new(second));
    assert_eq!(proved(&levels(&again)), Some(place));
}

#[test]
fn the_ready_way_back_of_a_joint_stands_in_for_the_written_one() {
    for (name, begin, connection) in [
        ("circulation-pump", "Make the suction flange", "f_suction"),
        ("circulation-pump", "Make the discharge flange", "f_discharge"),
        ("circulation-pump", "Plug in the pump plug", "plug"),
        ("circulation-pump", "Close the drain cock", "drain"),
        ("gas-union", "Make the gas union", "union"),
    ] {
        let mut procedure = named(name);
        let at = procedure.steps.iter().position(|step| step.words.starts_with(begin)).expect(begin);
        let ready = way_back(&procedure, &connection.into(), &mut NumberedIds::default()).expect(connection);
        let words = ready.words.clone();
        procedure.steps[at] = Arc::new(ready);
        let report = check(&procedure, today());
        let wrong: Vec<_> =
            titles(&report).into_iter().filter(|title| !title.starts_with("advise")).collect();
        assert_eq!(wrong, Vec::<String>::new(), "{words}");
    }
}

#[test]
fn missing_tests_are_offered_as_steps_that_mend_what_is_missing() {
    for (name, begin, kind) in [
        ("circulation-pump", "Check for leaks hot", TestKind::LeakHot),
        ("circulation-pump", "Check that the pump works", TestKind::Function),
        ("gas-union", "Check the gas union and the test point", TestKind::LeakFluid),
    ] {
        let whole = named(name);
        let at = whole.steps.iter().position(|step| step.words.starts_with(begin)).expect(begin);
        let mut procedure = without(&whole, begin);
        let trace = simulate(&procedure, &Run::of(&procedure));
        let ready = missing_tests(&trace, &mut NumberedIds::default());
        let test = ready.iter().find(|step| step.actions.iter().any(|a| a.test.as_ref() == Some(&kind)));
        let test = test.unwrap_or_else(|| panic!("{kind} is not offered: {ready:#?}")).clone();
        procedure.steps.insert(at, Arc::new(test));
        let report = check(&procedure, today());
        let wrong: Vec<_> =
            titles(&report).into_iter().filter(|title| !title.starts_with("advise")).collect();
        assert_eq!(wrong, Vec::<String>::new(), "{name} {kind}");
    }
}
