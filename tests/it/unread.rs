//! What words say and no action holds: with a map and with none, declined, and how it is worded.

use crate::fixture::Fixture;
use procedures_schema::check::{Finding, check, fixes};
use procedures_schema::edit::Session;
use procedures_schema::format;
use procedures_schema::model::{Action, Date, Procedure, Span, Stage, Step, Verb};
use putback_tests::text_files;
use std::sync::Arc;

fn today() -> Date {
    Date::parse("2026-11-25").expect("a date")
}

fn of_rule(procedure: &Procedure, code: &str) -> Vec<Finding> {
    check(procedure, today()).findings.into_iter().filter(|finding| finding.code == code).collect()
}

fn alone(words: &str) -> Procedure {
    let mut procedure = Procedure::new("p".into(), "Invented");
    procedure.steps.push(Arc::new(Step::new("s".into(), Stage::Strip, words)));
    procedure
}

#[test]
fn what_changes_an_appliance_is_told_even_if_no_map_knows_the_thing() {
    for words in [
        "Close the ball valve.",
        "Fit a new flange gasket.",
        "Pull both plugs.",
        "Charge the vessel to 0.75 bar.",
        "Slacken the two lock nuts.",
        "Isolate the feed.",
        "Do the same on the right.",
        "Pump 2: the same.",
        "Same again on pump 2.",
        "Pump 2 likewise.",
    ] {
        assert_eq!(of_rule(&alone(words), "words/not-typed").len(), 1, "{words}");
    }
    for words in [
        "Put the tools away.",
        "Remove the tools.",
        "Open the windows.",
        "Tell the keeper that it will be cold.",
        "Compare the new pump with the plate.",
        "Take care of the paint.",
        "The valve closes by itself.",
        "Do not close the ball valve.",
        "Wait for the keeper.",
        "Put on gloves.",
        "Both are the same.",
        "The two look the same again.",
    ] {
        assert_eq!(of_rule(&alone(words), "words/not-typed"), [], "{words}");
    }
}

#[test]
fn what_a_word_stands_for_is_told_beside_other_actions_too() {
    for words in [
        "Wait 2 min, then open the bad one.",
        "Wait 2 min and plug the good one back in.",
        "Wait 2 min, then refit it.",
        "Wait 2 min, then put the remaining cover back.",
        "Wait 2 min and screw one back on.",
    ] {
        let mut procedure = alone(words);
        let step = Arc::make_mut(&mut procedure.steps[0]);
        step.actions.push(Action { says: vec![Span(0, 10)], ..Action::new(Verb::Wait, Vec::new()) });
        assert_eq!(of_rule(&procedure, "words/not-typed").len(), 1, "{words}");
    }
    // A word that moves a thing, by itself.
    for words in [
        "Pull the fuses F1, F2 and F3.",
        "Pull F1 and F2.",
        "Pull the three motor wires U, V and W off the inverter.",
    ] {
        assert_eq!(of_rule(&alone(words), "words/not-typed").len(), 1, "{words}");
    }
    // On a condition, and what is only put somewhere.
    for words in ["Look at it; if it is worn, renew it.", "Wait 2 min and put the probe in."] {
        assert_eq!(of_rule(&alone(words), "words/not-typed"), [], "{words}");
    }
}

fn pump() -> Procedure {
    let files = text_files("public/demo").expect("demos");
    let file = files.iter().find(|file| file.path.contains("circulation-pump")).expect("the pump");
    format::read(file.text.as_bytes()).expect("a demo")
}

#[test]
fn an_action_that_is_declined_leaves_no_finding() {
    let mut procedure = pump();
    let step = Arc::make_mut(&mut procedure.steps[6]);
    let action = step.actions.pop().expect("remove lid");
    let said = action.says[0].of(&step.words).to_owned();
    assert_eq!(said, "take off");
    let [before] = of_rule(&procedure, "words/not-typed").try_into().expect("one finding");
    assert_eq!(before.title, "Step 7 says \"take off\", and no action holds it");
    assert_eq!(before.span, Some(action.says[0]));
    let offered = fixes(&procedure, &before, today());
    let mut session = Session::new(Arc::new(procedure.clone()));
    session.edit(&offered[0].edits, &offered[0].label, None, 0).expect("an edit");
    assert_eq!(session.document().steps[6].declined, [said.as_str()]);
    assert_eq!(of_rule(session.document(), "words/not-typed"), []);
    // What was declined by its verb alone stays declined.
    for declined in ["take", "Take off"] {
        Arc::make_mut(&mut procedure.steps[6]).declined = vec![declined.to_owned()];
        assert_eq!(of_rule(&procedure, "words/not-typed"), [], "{declined}");
    }
}

#[test]
fn words_of_several_verbs_are_one_finding() {
    let mut procedure = pump();
    Arc::make_mut(&mut procedure.steps[35]).actions.remove(0);
    let titles: Vec<String> =
        of_rule(&procedure, "words/not-typed").into_iter().map(|finding| finding.title).collect();
    assert_eq!(titles, ["Step 36 says \"Take\", and no action holds it"]);
}

#[test]
fn readings_of_one_proof_without_a_source_are_one_finding() {
    let mut procedure = pump();
    let step = Arc::make_mut(&mut procedure.steps[32]);
    let reading = &mut step.actions[0].readings[0];
    reading.source.clear();
    let second = procedures_schema::model::Reading { what: "at the fill loop".to_owned(), ..reading.clone() };
    step.actions[0].readings.push(second);
    let [one] = of_rule(&procedure, "reading/no-source").try_into().expect("one finding");
    let expected = "Step 33 takes the readings \"fill pressure, cold\" and \"at the fill loop\" with limits of no source";
    assert_eq!(one.title, expected);
}

fn titles_of(steps: &str, code: &str) -> Vec<(String, Vec<String>)> {
    let found = Fixture::read(steps).findings().into_iter().filter(|finding| finding.code == code);
    found.map(|f| (f.title, f.because.into_iter().map(|because| because.text).collect())).collect()
}

#[test]
fn things_in_the_plural_take_their_verbs_and_no_step_is_its_own_beginning() {
    let safe = "map: pump\nshutdown · isolate spur · lock spur\n";
    let twice = titles_of(&format!("{safe}undo cover_screws\nundo cover_screws"), "putback/undone-twice");
    let expected = "Step 3 undoes the cover screws, which are not made any more";
    assert_eq!(twice, [(expected.to_owned(), vec!["the cover screws are open already".to_owned()])]);
    let made = titles_of(&format!("{safe}make cover_screws"), "putback/made-not-opened");
    let expected = "Step 2 makes the cover screws, which were not open";
    assert_eq!(made, [(expected.to_owned(), vec!["the cover screws were not undone".to_owned()])]);
    let gas = "map: gas, whole\nshutdown\nisolate spur · lock spur · isolate av\nundo union";
    let [(opened, _)] = titles_of(gas, "retest/no-baseline").try_into().expect("one finding");
    assert_eq!(opened, "The inlet union was opened at step 3 with no tightness test before");
}

#[test]
fn what_stands_behind_a_comma_in_a_name_does_not_run_into_the_sentence() {
    let mut fixture = Fixture::read("map: pump\nshutdown\nundo plug\nundo head");
    Arc::make_mut(&mut fixture.procedure.map).isolators[1].name = "feed, not named yet".to_owned();
    let found = fixture.findings();
    let remedies: Vec<&String> = found.iter().flat_map(|finding| &finding.remedy).collect();
    assert!(remedies.iter().any(|remedy| remedy.contains("the feed (not named yet)")), "{remedies:#?}");
    assert!(remedies.iter().all(|remedy| !remedy.contains(", not named yet")), "{remedies:#?}");
}

#[test]
fn what_may_mean_one_of_several_things_is_told_beside_another_action() {
    let with = |words: &str| {
        let mut procedure = pump();
        let mut step = Step::new("more".into(), Stage::HandOver, words);
        step.actions = vec![Action {
            says: vec![Span(0, 10)],
            text: Some("the plate".to_owned()),
            ..Action::new(Verb::Photograph, Vec::new())
        }];
        procedure.steps.push(Arc::new(step));
        of_rule(&procedure, "words/not-typed").len()
    };
    assert_eq!(with("Photograph the plate and close the valve."), 1, "there are two valves");
    for none in ["Photograph the plate and close the book.", "Photograph the plate and mind the valve."] {
        assert_eq!(with(none), 0, "{none}");
    }
}
