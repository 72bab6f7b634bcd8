//! What is asked: the circuits that come into question, and things that people call by two names.

use super::{Names, Typed, made, type_all};
use procedures_schema::capture::{Another, Answer, Given, Making, Meaning, Question, another};
use procedures_schema::model::{CensusAnswer, CensusEntry, CircuitKind, Id, Rest, Stage, Verb};
use procedures_schema::notation::print;
use procedures_schema::simulate::{Place, Run, simulate};
use std::sync::Arc;

fn choices(question: &Question) -> Vec<String> {
    question.choices.iter().map(ToString::to_string).collect()
}

/// What becomes of a line behind others, with a census.
fn read(lines: &str, words: &str, census: &[(CircuitKind, CensusAnswer)]) -> Making {
    let (mut typed, _) = type_all(lines);
    let entry = |(kind, answer): &(CircuitKind, CensusAnswer)| CensusEntry {
        kind: kind.clone(),
        answer: answer.clone(),
        rest: Rest::default(),
    };
    typed.document.census = census.iter().map(entry).collect();
    typed.read(words, &Stage::Strip, &[])
}

/// The choices for a line behind others, with a census.
fn asked(lines: &str, words: &str, census: &[(CircuitKind, CensusAnswer)]) -> Vec<String> {
    let making = read(lines, words, census);
    let [question] = making.asked.as_slice() else { panic!("{:?}", making.asked) };
    assert!(making.made.is_empty());
    choices(question)
}

#[test]
fn the_circuits_of_the_map_and_of_the_census_come_into_question() {
    let touched = |kind| (kind, CensusAnswer::Touched);
    let absent = |kind| (kind, CensusAnswer::Absent);
    let both = "Close the gas cock.|Close the heating valve.|Open the gas cock.|Open the heating valve.";
    assert_eq!(
        asked(both, "Undo the union.", &[touched(CircuitKind::CompressedAir), absent(CircuitKind::Oil)]),
        ["fuel gas", "heating water", "compressed air"]
    );
    let several = [CircuitKind::Oil, CircuitKind::MainsElectricity, CircuitKind::Steam].map(touched);
    assert_eq!(
        asked("Take off the cover.", "Undo the union.", &several),
        ["steam", "oil"],
        "what carries nothing wet is not asked for"
    );
    let [oil, mains, _] = several;
    let one = read("Take off the cover.", "Undo the union.", &[oil, mains]);
    assert!(one.asked.is_empty(), "one answer is no question: {:?}", one.asked);
    assert!(made(&one).contains("Circuit oil"), "{}", made(&one));
    let left = asked(
        "Take off the cover.",
        "Undo the union.",
        &[
            absent(CircuitKind::FuelGas),
            absent(CircuitKind::Steam),
            (CircuitKind::Condensate, CensusAnswer::NotTouched),
        ],
    );
    assert_eq!(left.first().map(String::as_str), Some("heating water"));
    assert!(left.contains(&"compressed air".to_owned()) && left.contains(&"oil".to_owned()), "{left:?}");
    for gone in ["fuel gas", "steam", "condensate"] {
        assert!(!left.contains(&gone.to_owned()), "{gone}");
    }
    assert!(asked("Take off the cover.", "Undo the union.", &[]).len() < 10, "a digit picks one");
}

fn answered(typed: &mut Typed, words: &str, pick: impl Fn(&Meaning) -> bool) -> Making {
    let open = typed.read(words, &Stage::Refit, &[]);
    let [question] = open.asked.as_slice() else { panic!("{words}: {open:?}") };
    assert!(open.made.is_empty() && open.reading.actions.is_empty(), "nothing is done before it is answered");
    let means = question.choices.iter().find(|choice| pick(choice)).expect("a choice").clone();
    let settled = typed.read(words, &Stage::Refit, &[Answer { span: question.span, means }]);
    typed.keep(words, &Stage::Refit, &settled);
    settled
}

#[test]
fn another_name_of_a_known_thing_is_asked_for_once() {
    let (typed, _) = type_all("Take off the pump cover.|Unplug the pump.");
    let open = typed.read("Lift out the circulator.", &Stage::Strip, &[]);
    let [question] = open.asked.as_slice() else { panic!("{open:?}") };
    assert_eq!(question.question, "Which one is \"circulator\"?");
    assert_eq!(choices(question), ["the pump", "a new circulator"]);

    let mut typed = typed;
    let known = |means: &Meaning| matches!(means, Meaning::Known { thing, .. } if *thing == Id::new("pump"));
    let settled = answered(&mut typed, "Lift out the circulator.", known);
    assert_eq!((print(&settled.reading.actions).as_str(), made(&settled).as_str()), ("remove pump", ""));
    assert!(
        settled.changes_map() && settled.map.components.iter().any(|part| part.aliases == ["circulator"])
    );
    // From now on it is a name like the other.
    let again = typed.type_line("Refit the circulator.", &Stage::Refit);
    assert_eq!(print(&again.reading.actions), "fit pump");
    assert!(again.asked.is_empty() && !again.changes_map());
}

#[test]
fn what_is_no_other_name_is_a_new_thing() {
    let (mut typed, _) = type_all("Unplug the pump.");
    let new = |means: &Meaning| matches!(means, Meaning::New { .. });
    let settled = answered(&mut typed, "Lift out the circulator.", new);
    assert_eq!(
        (print(&settled.reading.actions).as_str(), made(&settled).as_str()),
        ("remove circulator", "Component circulator")
    );
    // What cannot be done to the pump is not said of it.
    let (_, last) = type_all("Take out the pump.|Lift out the circulator.");
    assert!(last.asked.is_empty(), "{:?}", last.asked);
    let map = Arc::clone(&type_all("Take out the heating pump.").0.document.map);
    let (apart, _) = type_all("Unplug the solar pump.");
    let other = apart.read("Lift out the heating circulator.", &Stage::Strip, &[]);
    assert!(other.asked.is_empty() && map.components.len() == 1, "another circuit's pump has another name");
}

/// What is offered as new behind the choices of the only doubt of a line: name, circuit, the action.
fn offered(lines: &str, words: &str) -> Vec<String> {
    let (typed, _) = type_all(lines);
    let document = &typed.document;
    let making = typed.read(words, &Stage::Strip, &[]);
    let [doubt] = making.reading.doubts.as_slice() else { panic!("{words}: {:?}", making.reading) };
    let trace = simulate(document, &Run::of(document));
    let place = Place::after(document.steps.len() - 1);
    let given = Given::default();
    let all = another(words, doubt, &document.map, &trace, place, &Stage::Strip, given, &mut Names);
    let told = |new: &Another| {
        let n_more = new.map.things().count() - document.map.things().count();
        assert_eq!(n_more, new.made.len(), "what is made is told");
        let circuit = new.circuit.as_ref().map_or(String::new(), |kind| format!(" of {}", kind.word()));
        format!("{}{circuit}: {}", new.name, print(&new.actions))
    };
    all.iter().map(told).collect()
}

#[test]
fn what_words_in_doubt_may_mean_besides_is_one_more_of_the_kind() {
    let switches = "Unplug the start pressure switch.|Unplug the high-pressure switch.|\
                    Plug the start pressure switch in.|Plug the high-pressure switch in.";
    assert_eq!(
        offered(switches, "Unplug the pressure switch."),
        ["pressure switch plug: undo pressure-switch-plug"]
    );
    let valves =
        "Close the flow valve and the return valve of the heating.|Open the flow valve and the return valve.";
    assert_eq!(offered(valves, "Close the valve."), ["valve: isolate valve"]);
    let pump = "Close the two valves of the heating pump.|Open both valves.";
    assert_eq!(
        offered(pump, "Close the heating pump valve."),
        ["heating pump valve 3: isolate heating-pump-valve-3"],
        "it is told apart"
    );
    let unions = "Undo the gas union and the heating union.|Do up the gas union and the heating union.";
    let offers = offered(unions, "Undo the union.");
    let circuits = ["union of fuel gas: undo union", "union of heating water: undo union"];
    assert!(circuits.iter().all(|one| offers.iter().any(|offer| offer == one)), "{offers:?}");
    let off = "Close the flow valve and the return valve of the heating.";
    assert!(offered(off, "Open the valve.").is_empty(), "what is opened again is never new");
}

#[test]
fn what_is_unplugged_in_one_sentence_is_all_unplugged() {
    let parts = "Unplug the fan.|Unplug the pump.|Plug the fan in.|Plug the pump in.";
    for (words, read) in [
        ("Unplug the fan and the pump.", "undo fan-plug pump-plug"),
        ("Unplug the fan and pump.", "undo fan-plug pump-plug"),
        ("Unplug the fan, the pump and the sensor.", "undo fan-plug pump-plug sensor-plug"),
        ("Unplug the fan and take out the pump.", "undo fan-plug \u{b7} remove pump"),
        ("Unplug the fan, the pump is behind it.", "undo fan-plug"),
    ] {
        let (_, last) = type_all(&format!("{parts}|{words}"));
        assert_eq!(print(&last.reading.actions), read, "{words}");
    }
    let (_, back) = type_all("Unplug the fan and the pump.|Plug the fan and the pump in.");
    assert_eq!(print(&back.reading.actions), "make fan-plug pump-plug");
}

#[test]
fn what_words_say_weakly_is_asked_for() {
    let off = "Undo the eight pump head bolts and lift the pump head off.";
    let making = read(off, "Set the pump head on the crate.", &[]);
    assert!(making.reading.actions.is_empty(), "{}", print(&making.reading.actions));
    let [doubt] = making.reading.doubts.as_slice() else { panic!("{:?}", making.reading.doubts) };
    let [only] = doubt.choices.as_slice() else { panic!("{:?}", doubt.choices) };
    assert_eq!(print(std::slice::from_ref(&only.action)), "fit pump-head");
    assert_eq!(only.name, "fit pump head");
    let runs = read("Close the cold water valve.", "Run the spout for two minutes.", &[]);
    assert!(!runs.reading.actions.iter().any(|action| action.verb == Verb::Start));
    let [doubt] = runs.reading.doubts.as_slice() else { panic!("{:?}", runs.reading.doubts) };
    assert_eq!(doubt.choices.iter().map(|choice| choice.name.as_str()).collect::<Vec<_>>(), ["start"]);
    let plain = read(off, "Put the pump head back on the casing.", &[]);
    assert_eq!(print(&plain.reading.actions), "fit pump-head");
    assert!(plain.reading.doubts.is_empty(), "{:?}", plain.reading.doubts);
    // Of what may be meant by "it" there are two.
    let vessel = "Take the vessel out and put it back.";
    let both =
        read(vessel, "Supporting the vessel, take out the two screws of its bracket and draw it out.", &[]);
    let [doubt] = both.reading.doubts.as_slice() else { panic!("{:?}", both.reading.doubts) };
    let names: Vec<&str> = doubt.choices.iter().map(|choice| choice.name.as_str()).collect();
    assert_eq!(names, ["bracket", "vessel"]);
}

#[test]
fn a_question_is_told_once_and_nothing_beside_it_of_its_verb() {
    let typed = Typed::new();
    let making = typed.read("Open the drain cock on the left and the one on the right.", &Stage::Strip, &[]);
    assert_eq!(making.questions(), ["Which circuit does the drain cock open?"]);
    assert_eq!(making.unread().count(), 0, "what is asked about is not called unread too");
    let making = typed.read("Refit it, then open the drain cock.", &Stage::Strip, &[]);
    assert_eq!(making.unread().count(), 1);
}

#[test]
fn what_is_renewed_is_taken_out_and_fitted_whichever_is_meant() {
    let sensors = "Take out the flow sensor.|Take out the return sensor.|Put both sensors back.";
    let (typed, _) = type_all(sensors);
    let making = typed.read("Change the sensor.", &Stage::Strip, &[]);
    let [doubt] = making.reading.doubts.as_slice() else { panic!("{:?}", making.reading) };
    let all: Vec<String> =
        doubt.choices.iter().map(|choice| print(&choice.actions().cloned().collect::<Vec<_>>())).collect();
    assert_eq!(
        all,
        ["remove flow-sensor · fit flow-sensor new", "remove return-sensor · fit return-sensor new"]
    );
    let more = offered(sensors, "Change the sensor.");
    assert_eq!(more, ["sensor: remove sensor · fit sensor new"]);
}
