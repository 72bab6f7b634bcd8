//! Sentences and what they make, on invented appliances.

use super::{Answer, Making, line_making};
use crate::model::{
    ApplianceMap, CircuitKind, Grouping, Id, IdSource, Known, Procedure, SealPolicy, Span, Stage, Step,
};
use crate::notation::print;
use crate::simulate::{Place, Run, simulate};
use std::sync::Arc;

/// Identities that are the names themselves.
struct Names;

impl IdSource for Names {
    fn next_id(&mut self, hint: &str) -> Id {
        Id::new(hint)
    }
}

/// A document that is typed line by line.
struct Typed {
    document: Procedure,
}

impl Typed {
    fn new() -> Self {
        Self { document: Procedure::new(Id::new("p"), "Invented") }
    }

    fn read(&self, words: &str, stage: &Stage, answers: &[Answer]) -> Making {
        let trace = simulate(&self.document, &Run::of(&self.document));
        line_making(words, &self.document.map, &trace, Place::END, stage, answers, &mut Names)
    }

    fn keep(&mut self, words: &str, stage: &Stage, making: &Making) {
        let id = Id::new(&format!("step-{}", self.document.steps.len() + 1));
        let actions = making.reading.actions.clone();
        self.document.map = Arc::new(making.map.clone());
        self.document.steps.push(Arc::new(Step { actions, ..Step::new(id, stage.clone(), words) }));
    }

    fn type_line(&mut self, words: &str, stage: &Stage) -> Making {
        let making = self.read(words, stage, &[]);
        self.keep(words, stage, &making);
        making
    }
}

fn made(making: &Making) -> String {
    let each = making.made.iter().map(|made| format!("{:?} {}", made.kind, made.name));
    each.collect::<Vec<_>>().join(" · ")
}

/// Lines typed one after the other, split at "|", what the last one makes, and its actions.
const LINES: &[(&str, &str, &str)] = &[
    // Isolators, with their circuits.
    ("Close the gas valve.", "Circuit gas · Section appliance gas · Isolator gas valve", "isolate gas-valve"),
    (
        "Switch off at the wall isolator and lock it off.",
        "Circuit mains · Section appliance mains · Isolator wall isolator",
        "shutdown · isolate wall-isolator · lock wall-isolator",
    ),
    ("Close the gas cock.|Close the gas cock.", "", "isolate gas-cock"),
    ("Close the gas cock.|Open the cock.", "", "restore gas-cock"),
    (
        "Unplug the boiler at the wall socket.",
        "Circuit mains · Section appliance mains · Isolator wall socket",
        "isolate wall-socket",
    ),
    (
        "Pull the mains plug.",
        "Circuit mains · Section appliance mains · Isolator mains plug",
        "isolate mains-plug",
    ),
    ("Remove the fuse.", "Circuit mains · Section appliance mains · Isolator fuse", "isolate fuse"),
    (
        "Switch off the circuit breaker.",
        "Circuit mains · Section appliance mains · Isolator circuit breaker",
        "isolate circuit-breaker",
    ),
    (
        "Close the ball valve to the compressed air ring main.",
        "Circuit compressed air · Section air pipes · Isolator ball valve",
        "isolate ball-valve",
    ),
    (
        "Close both heating valves.",
        "Circuit heating · Section heating system · Isolator heating valve 1 · Isolator heating valve 2",
        "isolate heating-valve-1 heating-valve-2",
    ),
    (
        "Close the two pump valves.",
        "Circuit heating · Section heating system · Component pump · Section pump body · Isolator pump valve 1 · \
         Isolator pump valve 2",
        "isolate pump-valve-1 pump-valve-2",
    ),
    ("Close the two pump valves.|Open the heating pump valves.", "", "restore pump-valve-1 pump-valve-2"),
    (
        "Close the gas cock.|Close the cold water stop tap.",
        "Circuit domestic water · Section water pipes · \
         Isolator cold water stop tap",
        "isolate cold-water-stop-tap",
    ),
    // Components.
    ("Take the cover off.", "Component cover", "remove cover"),
    ("Take the cover off.|Refit the cover.", "", "fit cover"),
    ("Swing the door aside.", "Component door", "aside door"),
    ("Take out the siphon and clean it.", "Component siphon", "remove siphon · clean siphon"),
    ("Fit the new pump.", "Component pump", "fit pump new"),
    ("Clean the heat exchanger with a soft brush.", "Component heat exchanger", "clean heat-exchanger"),
    ("Take off the case.|Lift out the fan, 4 kg, from behind the case.", "Component fan", "remove fan"),
    // Fixings.
    (
        "Take off the belt guard: four M6 screws, 10 mm.",
        "Component belt guard · Connection belt guard screws",
        "undo belt-guard-screws · remove belt-guard",
    ),
    (
        "Undo the four M6 screws and take off the front panel.",
        "Component front panel · Connection front panel screws",
        "undo front-panel-screws · remove front-panel",
    ),
    (
        "Remove the four fixing screws and lift off the lid, then undo the two M4 screws of the circuit board.",
        "Component lid · Connection lid fixing screws · Component circuit board · Connection circuit board screws",
        "undo lid-fixing-screws · remove lid · undo circuit-board-screws",
    ),
    (
        "Undo two of the four cover screws.",
        "Component cover · Connection cover screws",
        "undo cover-screws 2",
    ),
    ("Undo two of the four cover screws.|Undo the other two cover screws.", "", "undo cover-screws 2"),
    (
        "Undo both bolts of the fan bracket, 8 mm.",
        "Component fan bracket · Connection fan bracket bolts",
        "undo fan-bracket-bolts",
    ),
    (
        "Pull out the clip and take out the flow sensor.",
        "Component flow sensor · Connection flow sensor clip",
        "undo flow-sensor-clip · remove flow-sensor",
    ),
    // Joints.
    (
        "Turn the gas cock off.|Undo the union nut of the gas valve, G 3/4, 30 mm.",
        "Component gas valve · Seal washer G 3/4 · Connection gas valve union nut",
        "undo gas-valve-union-nut",
    ),
    (
        "Close the two pump valves.|Undo the two union nuts of the pump, G 1, 37 mm.",
        "Seal washer G 1 · Connection pump union nuts",
        "undo pump-union-nuts",
    ),
    (
        "Close the two pump valves.|Undo the two union nuts of the pump.|Make the unions with new washers.",
        "",
        "make pump-union-nuts seal=new",
    ),
    ("Close the gas cock.|Undo the gas union.", "Seal washer · Connection gas union", "undo gas-union"),
];

/// Types lines and gives the last.
fn type_all(lines: &str) -> (Typed, Making) {
    let mut typed = Typed::new();
    let mut last = Making::default();
    for words in lines.split('|') {
        last = typed.type_line(words, &Stage::Strip);
    }
    (typed, last)
}

#[test]
fn sentences_make_what_they_name() {
    let mut wrong = Vec::new();
    for (lines, things, actions) in LINES {
        let (_, last) = type_all(lines);
        let read = (made(&last), print(&last.reading.actions));
        if (read.0.as_str(), read.1.as_str()) != (*things, *actions) || !last.reading.doubts.is_empty() {
            wrong.push(format!("{lines}\n   {}\n   {}\n   {:?}", read.0, read.1, last.reading.doubts));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn an_open_circuit_is_asked_for_and_the_answer_settles_it() {
    let typed = Typed::new();
    let words = "Undo the two union nuts of the pump, G 1, 37 mm.";
    let open = typed.read(words, &Stage::Strip, &[]);
    assert!(open.made.is_empty() && open.reading.actions.is_empty());
    assert_eq!(open.map, ApplianceMap::default());
    let [question] = open.asked.as_slice() else { panic!("{:?}", open.asked) };
    assert_eq!(question.span, Span(13, 23), "union nuts");
    assert_eq!(question.kinds, [CircuitKind::FuelGas, CircuitKind::HeatingWater, CircuitKind::DomesticWater]);
    let answer = Answer { span: question.span, kind: CircuitKind::HeatingWater };
    let settled = typed.read(words, &Stage::Strip, &[answer]);
    assert!(settled.asked.is_empty());
    assert_eq!(print(&settled.reading.actions), "undo pump-union-nuts");
    let unions = &settled.map.connections[0];
    assert_eq!((unions.count, unions.grouping.clone()), (2, Grouping::Each));
    assert_eq!(
        unions.size.as_ref().and_then(Known::value).map(ToString::to_string).as_deref(),
        Some("G 1 · 37 mm")
    );
    let seal = &settled.map.seals[0];
    assert_eq!((seal.name.as_str(), seal.policy.clone()), ("washer G 1", SealPolicy::AlwaysRenew));
    assert!(seal.number.as_ref().is_some_and(Known::is_later));
}

#[test]
fn a_count_that_is_not_said_is_asked_for() {
    let (_, making) = type_all("Undo all the screws of the burner door.");
    let [question] = making.asked.as_slice() else { panic!("{:?}", making.asked) };
    assert_eq!(question.question, "How many burner door screws? 2 are assumed.");
    assert_eq!(question.thing, Some(Id::new("burner-door-screws")));
}

/// Sentences that name no thing of an appliance, or none that can be told.
const NOTHING: &[&str] = &[
    "",
    "Take care of the hand and clean it with a cloth.",
    "Close the valve.",
    "Turn off the gas.",
    "Isolate the boiler.",
    "Do not open the gas valve.",
    "Tell the operator.",
    "Remove any dust.",
    "Remove dirt and grease from the hands.",
    "Open the window.",
    "Make sure that the valve is closed.",
    "Check the gas union for leaks.",
    "Release the pressure.",
    "Switch off the light.",
    "When the fan has stopped, wait ten minutes.",
];

#[test]
fn sentences_without_a_new_thing_make_none() {
    for words in NOTHING {
        let (_, making) = type_all(words);
        assert_eq!((made(&making).as_str(), &making.map), ("", &ApplianceMap::default()), "{words}");
    }
}
