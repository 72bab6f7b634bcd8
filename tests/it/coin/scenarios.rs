//! Whole procedures typed from nothing, sentence by sentence, on invented appliances.

use super::{Typed, made};
use procedures_schema::check::{Level, check, fixes};
use procedures_schema::edit::apply;
use procedures_schema::format;
use procedures_schema::model::{Date, Stage};
use procedures_schema::notation::print;
use std::sync::Arc;

/// Stage, words, what they make, actions.
type Line = (Stage, &'static str, &'static str, &'static str);

/// The flow sensor of an invented boiler is renewed.
const SENSOR: &[Line] = &[
    (
        Stage::MakeSafe,
        "Switch off at the wall isolator and lock it off.",
        "Circuit mains · Section appliance mains · Isolator wall isolator",
        "shutdown · isolate wall-isolator · lock wall-isolator",
    ),
    (
        Stage::MakeSafe,
        "Close the gas cock and lock it.",
        "Circuit gas · Section appliance gas · Isolator gas cock",
        "isolate gas-cock · lock gas-cock",
    ),
    (
        Stage::MakeSafe,
        "Close the flow valve and the return valve of the heating and lock them.",
        "Circuit heating · Section heating system · Isolator flow valve · Isolator return valve",
        "isolate flow-valve return-valve · lock flow-valve return-valve",
    ),
    (
        Stage::Strip,
        "Take off the case: two screws, 8 mm.",
        "Component case · Connection case screws",
        "undo case-screws · remove case",
    ),
    (
        Stage::Strip,
        "Prove dead at the three mains terminals, all three pairs, 0 to 5 V.",
        "Connection mains terminals",
        "prove appliance-mains at=mains-terminals reading=\"L to N|0..5 V\" reading=\"L to E|0..5 V\" \
         reading=\"N to E|0..5 V\"",
    ),
    (Stage::Strip, "Place a tray under the flow sensor.", "Temporary tray", "place tray"),
    (
        Stage::Strip,
        "With the air vent of the heating open, drain the heating at the drain cock into a bucket.",
        "Connection air vent · Connection drain cock",
        "release heating-system what=pressure by=drain through=drain-cock vent=air-vent to=bucket",
    ),
    (
        Stage::Strip,
        "Prove the heating at zero: gauge 0 to 0.1 bar, no flow at the drain cock, water not above 43 °C.",
        "",
        "prove heating-system at=drain-cock reading=\"pressure|0..0.1 bar\" reading=\"drain||no flow\" \
         reading=\"temperature|..43 Cel\"",
    ),
    (
        Stage::Strip,
        "Unplug the flow sensor.",
        "Component flow sensor · Connection flow sensor plug",
        "undo flow-sensor-plug",
    ),
    (
        Stage::Strip,
        "Undo the union nut of the flow sensor, G 3/4, 30 mm.",
        "Seal washer G 3/4 · Connection flow sensor union nut",
        "undo flow-sensor-union-nut",
    ),
    (Stage::Strip, "Take out the flow sensor.", "", "remove flow-sensor"),
    (Stage::Refit, "Fit the new flow sensor.", "", "fit flow-sensor new"),
    (
        Stage::Refit,
        "Make the union nut with a new washer, 15 to 20 Nm.",
        "",
        "make flow-sensor-union-nut seal=new torque=15..20",
    ),
    (Stage::Refit, "Plug in the flow sensor.", "", "make flow-sensor-plug"),
    (Stage::Refit, "Close the drain cock and the air vent.", "", "make drain-cock air-vent"),
    (Stage::Refit, "Take the tray away.", "", "take tray"),
    (Stage::Recommission, "Open the flow valve and the return valve.", "", "restore flow-valve return-valve"),
    (Stage::Recommission, "Fill the heating to 1.2 bar.", "", "charge heating reading=\"pressure|1.2 bar\""),
    (Stage::Recommission, "Vent the heating at the air vent.", "", "purge heating through=air-vent"),
    (Stage::Recommission, "Close the air vent.", "", "make air-vent"),
    (
        Stage::Recommission,
        "Check the fill pressure, 1.0 to 1.5 bar.",
        "",
        "test fill-pressure reading=\"pressure|1.0..1.5 bar\"",
    ),
    (
        Stage::Recommission,
        "Check the union nut, the drain cock and the air vent for leaks.",
        "",
        "test leak-cold flow-sensor-union-nut drain-cock air-vent",
    ),
    (Stage::Recommission, "Fit the case and tighten the two case screws.", "", "fit case · make case-screws"),
    (Stage::Recommission, "Open the gas cock.", "", "restore gas-cock"),
    (Stage::Recommission, "Switch on at the wall isolator.", "", "restore wall-isolator"),
    (Stage::Recommission, "Start the boiler in heating and wait 10 minutes.", "", "start heat · wait 10"),
    (
        Stage::Recommission,
        "Check the union nut for leaks while it is hot.",
        "",
        "test leak-hot flow-sensor-union-nut",
    ),
    (Stage::Recommission, "Check that the boiler works.", "", "test function"),
    (Stage::HandOver, "Leave the boiler in service.", "", "finish in-service"),
];

/// What the checker has to say of it: the tester was not proved, and what no sentence can say.
const SENSOR_FINDINGS: &[(Level, &str, Option<&str>)] = &[
    (Level::Warn, "control/census-unanswered", None),
    (Level::Warn, "control/scope-missing", None),
    (Level::Reject, "isolation/proof-incomplete", Some("step-5")),
    (Level::Warn, "reading/no-source", Some("step-5")),
    (Level::Warn, "reading/no-source", Some("step-8")),
    (Level::Warn, "reading/no-source", Some("step-21")),
    (Level::Advise, "reading/no-on-fail", Some("step-21")),
];

/// Part of a job on an invented air dryer with its compressor.
const DRYER: &[Line] = &[
    (
        Stage::MakeSafe,
        "Switch off at the main switch and lock it.",
        "Circuit mains · Section appliance mains · Isolator main switch",
        "shutdown · isolate main-switch · lock main-switch",
    ),
    (
        Stage::MakeSafe,
        "Prove dead at the three motor terminals, all three pairs, 0 to 5 V.",
        "Component motor · Connection motor terminals",
        "prove appliance-mains at=motor-terminals reading=\"L to N|0..5 V\" reading=\"L to E|0..5 V\" \
         reading=\"N to E|0..5 V\"",
    ),
    (
        Stage::MakeSafe,
        "Close the shut-off valve to the compressed air network and lock it.",
        "Circuit compressed air · Section air pipes · Isolator shut-off valve",
        "isolate shut-off-valve · lock shut-off-valve",
    ),
    (
        Stage::MakeSafe,
        "Open the drain valve under the vessel until the gauge reads 0 to 0.1 bar.",
        "Connection drain valve",
        "release air-pipes what=pressure by=drain through=drain-valve · prove air-pipes \
         reading=\"gauge|0..0.1 bar\"",
    ),
    (
        Stage::Strip,
        "Take off the fan guard: six M5 screws, 8 mm.",
        "Component fan guard · Connection fan guard screws",
        "undo fan-guard-screws · remove fan-guard",
    ),
    (
        Stage::Strip,
        "Slacken the four bolts of the motor, 13 mm.",
        "Connection motor bolts",
        "slacken motor-bolts",
    ),
    (
        Stage::Strip,
        "Undo the outlet union at the cooler, G 1/2, 27 mm; aluminium washer, always new.",
        "Component cooler · Seal aluminium washer G 1/2 · Connection cooler outlet union",
        "undo cooler-outlet-union",
    ),
    (
        Stage::Strip,
        "Unplug the pressure switch.",
        "Component pressure switch · Connection pressure switch plug",
        "undo pressure-switch-plug",
    ),
    (
        Stage::Strip,
        "Unplug the second pressure switch.",
        "Component second pressure switch · Connection second pressure switch plug",
        "undo second-pressure-switch-plug",
    ),
    (Stage::Refit, "Plug in the pressure switch.", "", "make pressure-switch-plug"),
];

fn type_out(lines: &[Line]) -> Typed {
    let mut typed = Typed::new();
    for (stage, words, things, actions) in lines {
        let making = typed.type_line(words, stage);
        assert_eq!(
            (made(&making).as_str(), print(&making.reading.actions).as_str()),
            (*things, *actions),
            "{words}"
        );
        assert!(making.asked.is_empty() && making.reading.doubts.is_empty(), "{words}");
    }
    typed
}

#[test]
fn a_sensor_is_renewed_from_nothing() {
    let typed = type_out(SENSOR);
    let today = Date::parse("2026-11-25").expect("a date");
    let report = check(&typed.document, today);
    let found: Vec<(Level, &str, Option<&str>)> = report
        .findings
        .iter()
        .map(|finding| {
            (finding.level, finding.code, finding.step.as_ref().map(procedures_schema::model::Id::as_str))
        })
        .collect();
    assert_eq!(found, SENSOR_FINDINGS);
    assert!(report.n_later > 0, "the number of the washer is still to be found out");
    let read = format::read(format::write(&typed.document).as_bytes()).expect("readable");
    assert_eq!(read, typed.document);
}

#[test]
fn a_dryer_is_taken_apart_from_nothing() {
    let typed = type_out(DRYER);
    let found = check(&typed.document, Date::parse("2026-11-25").expect("a date")).findings;
    let of_step = |step: &str, code: &str| {
        found.iter().any(|f| f.code == code && f.step.as_ref().is_some_and(|id| id.as_str() == step))
    };
    assert!(of_step("step-4", "pressure/nowhere-to-go"), "the words do not say where the air goes");
    assert!(of_step("step-4", "pressure/proof-incomplete"), "a gauge alone proves no compressed air");
    assert!(of_step("step-9", "putback/left-open") && !of_step("step-8", "putback/left-open"));
}

#[test]
fn a_proof_that_is_completed_says_what_it_now_does() {
    let mut typed = Typed::new();
    for words in [
        "Switch off at the wall isolator and lock it off.",
        "Take off the case: two screws, 8 mm.",
        "Prove dead at the three mains terminals, L to N and L to E, 0 to 5 V.",
    ] {
        typed.type_line(words, &Stage::Strip);
    }
    let today = Date::parse("2026-11-25").expect("a date");
    let report = check(&typed.document, today);
    let finding = report.findings.iter().find(|finding| finding.code == "isolation/proof-incomplete");
    let offered = fixes(&typed.document, finding.expect("it lacks readings"), today);
    let [fix] = offered.as_slice() else { panic!("{offered:?}") };
    assert_eq!(
        fix.label,
        "prove in step 3 with tester on a known source, N to E and tester on the known source again"
    );
    let mended = apply(&Arc::new(typed.document.clone()), &fix.edits[0]).expect("it applies").document;
    let step = mended.steps.last().expect("three steps");
    assert_eq!(
        step.words,
        "Prove dead at the three mains terminals, L to N and L to E, 0 to 5 V. Prove it with: tester on a known \
         source, L to N 0 V to 5 V, L to E 0 V to 5 V, N to E 0 V to 5 V, tester on the known source again."
    );
    typed.document.steps.pop();
    let read = typed.read(&step.words, &Stage::Strip, &[]).reading.actions;
    assert_eq!(super::without_sources(read), super::without_sources(step.actions.clone()));
}
