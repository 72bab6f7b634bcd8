//! Sentences and what they make, on invented appliances.

use procedures_schema::capture::{Answer, Doubt, Given, Making, Meaning, line_making};
use procedures_schema::model::{
    Action, ApplianceMap, CircuitKind, Grouping, Id, IdSource, Known, Procedure, SealPolicy, Span, Stage,
    Step, TestKind, Verb,
};
use procedures_schema::notation::print;
use procedures_schema::simulate::{Place, Run, simulate};
use std::sync::Arc;

mod acted;
mod agreed;
mod ambiguous;
mod asked;
mod laws;
mod left_out;
mod lines;
mod lists;
mod meant;
mod places;
mod reasons;
mod scenarios;
mod seeming;
mod several;
mod tests;
mod together;
mod told_apart;
mod whose;

/// Identities that are the names themselves.
struct Names;

impl IdSource for Names {
    fn next_id(&mut self, hint: &str) -> Id {
        Id::new(hint)
    }
}

/// A document that is typed line by line.
pub(crate) struct Typed {
    pub(crate) document: Procedure,
}

impl Typed {
    pub(crate) fn new() -> Self {
        Self { document: Procedure::new(Id::new("p"), "Invented") }
    }

    fn read(&self, words: &str, stage: &Stage, answers: &[Answer]) -> Making {
        let trace = simulate(&self.document, &Run::of(&self.document));
        let last = self.document.steps.len().checked_sub(1);
        let place = last.map_or(Place::START, Place::after);
        let given = Given { answers, census: &self.document.census, before: &self.document.steps };
        line_making(words, &self.document.map, &trace, place, stage, given, &mut Names)
    }

    fn keep(&mut self, words: &str, stage: &Stage, making: &Making) {
        let id = Id::new(&format!("step-{}", self.document.steps.len() + 1));
        let actions = making.reading.actions.clone();
        self.document.map = making.map.clone();
        self.document.steps.push(Arc::new(Step { actions, ..Step::new(id, stage.clone(), words) }));
    }

    pub(crate) fn type_line(&mut self, words: &str, stage: &Stage) -> Making {
        let making = self.read(words, stage, &[]);
        self.keep(words, stage, &making);
        making
    }
}

fn made(making: &Making) -> String {
    let each = making.made.iter().map(|made| format!("{:?} {}", made.kind, made.name));
    each.collect::<Vec<_>>().join(" · ")
}

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
    for (lines, things, actions) in lines::LINES {
        let (_, last) = type_all(lines);
        let read = (made(&last), print(&last.reading.actions));
        if (read.0.as_str(), read.1.as_str()) != (*things, *actions) || !last.reading.doubts.is_empty() {
            wrong.push(format!("{lines}\n   {}\n   {}\n   {:?}", read.0, read.1, last.reading.doubts));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// Actions without the sources of their limits, which no words say.
fn without_sources(mut actions: Vec<Action>) -> String {
    actions.iter_mut().flat_map(|action| &mut action.readings).for_each(|reading| reading.source.clear());
    print(&actions)
}

#[test]
fn common_sentences_are_heard_as_they_are_meant() {
    let mut wrong = Vec::new();
    let nothing = meant::NOT_MEANT
        .iter()
        .chain(together::NOTHING)
        .chain(lists::NOTHING)
        .chain(places::NOTHING)
        .map(|lines| (*lines, ""));
    let agreed = agreed::AGREED.iter().chain(agreed::REVIEWED).copied();
    for (lines, actions) in meant::MEANT
        .iter()
        .copied()
        .chain(several::SEVERAL.iter().copied())
        .chain(together::TOGETHER.iter().copied())
        .chain(lists::TOLD.iter().copied())
        .chain(places::TOLD.iter().copied())
        .chain(whose::TOLD.iter().copied())
        .chain(agreed)
        .chain(nothing)
    {
        let (_, last) = type_all(lines);
        let read = without_sources(last.reading.actions.clone());
        if read != actions || !last.reading.doubts.is_empty() {
            wrong.push(format!("{lines}\n   {read}\n   {actions}\n   {:?}", last.reading.doubts));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn what_only_seems_to_be_said_is_not_heard() {
    let mut wrong = Vec::new();
    for (lines, actions) in seeming::SEEMING.iter().chain(acted::ACTED) {
        let (_, last) = type_all(lines);
        let read = without_sources(last.reading.actions.clone());
        if read != *actions {
            wrong.push(format!("{lines}\n   {read}\n   {actions}"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn of_several_things_that_can_be_meant_none_is_taken() {
    let mut wrong = Vec::new();
    for (lines, names) in ambiguous::AMBIGUOUS {
        let (typed, last) = type_all(lines);
        let of = |id: &Id| typed.document.map.name_of(id).to_owned();
        let asked =
            |doubt: &Doubt| doubt.choices.iter().map(|choice| of(&choice.thing)).eq(names.iter().copied());
        let takes = |doubt: &Doubt| {
            let verb = &doubt.choices[0].action.verb;
            let mut same = last.reading.actions.iter().filter(|action| action.verb == *verb);
            same.any(|action| action.on.iter().any(|id| names.contains(&&*of(id))))
        };
        if !last.reading.doubts.iter().any(|doubt| asked(doubt) && !takes(doubt)) {
            wrong.push(format!("{lines}\n   {:?}\n   {}", last.reading.doubts, print(&last.reading.actions)));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn figures_are_heard_as_they_are_said() {
    for (figure, torque) in seeming::SPOKEN {
        let lines =
            format!("Close the gas cock.|Undo the gas union.|Make the gas union and torque it to {figure}.");
        let (_, last) = type_all(&lines);
        assert_eq!(print(&last.reading.actions), format!("make gas-union torque={torque}"), "{figure}");
    }
}

#[test]
fn whether_an_unheard_of_word_is_a_part_is_asked() {
    let last = Typed::new().read("Take out thingummy.", &Stage::Strip, &[]);
    assert_eq!((made(&last).as_str(), last.reading.actions.len()), ("", 0));
    let [asked] = last.asked.as_slice() else { panic!("{:?}", last.asked) };
    let name = "thingummy".to_owned();
    assert_eq!(asked.choices, [Meaning::New { name }], "{}", asked.question);
    let answer = Answer { span: asked.span, means: asked.choices[0].clone() };
    let answered = Typed::new().read("Take out thingummy.", &Stage::Strip, &[answer]);
    assert_eq!(print(&answered.reading.actions), "remove thingummy");
    // An article says that it is one, and what cannot be a noun is not asked about.
    assert_eq!(print(&type_all("Take out the thingummy.").1.reading.actions), "remove thingummy");
    assert!(type_all("Push it home upright.").1.asked.is_empty());
}

#[test]
fn what_is_put_back_is_never_new_where_a_part_of_its_name_is_said() {
    for (lines, actions) in agreed::BY_PART {
        let (_, last) = type_all(lines);
        let read = (made(&last), print(&last.reading.actions));
        assert_eq!((read.0.as_str(), read.1.as_str()), ("", *actions), "{lines}");
        assert!(last.asked.is_empty() && last.reading.doubts.is_empty(), "{lines}");
    }
    // Of two that may be meant one is asked for, and none is made.
    let (_, last) =
        type_all("Close the left flow valve and the right flow valve of the heating.|Open the flow tap.");
    assert_eq!((made(&last).as_str(), last.reading.actions.len()), ("", 0));
    let [doubt] = last.reading.doubts.as_slice() else { panic!("{:?}", last.reading) };
    assert_eq!(doubt.choices.len(), 2);
}

#[test]
fn what_an_unread_order_may_have_named_is_asked_for() {
    let asked = |lines: &str| {
        let (_, last) = type_all(lines);
        let asked = last.reading.doubts.iter().map(|doubt| (doubt.question.clone(), doubt.choices.len()));
        (print(&last.reading.actions), asked.collect::<Vec<_>>())
    };
    let question =
        "Is the cover the front cover? Nothing is read of the cover of the control box in a step before";
    assert_eq!(
        asked("Take off the front cover.|Prise away the cover of the control box.|Put the cover back."),
        (String::new(), vec![(question.to_owned(), 1)])
    );
    // What the words do to it stays together.
    assert_eq!(
        asked("Change the tube of the first pump.|Change the tube here as well."),
        (String::new(), vec![("Is the tube the pump tube? \"here\" may mean another".to_owned(), 1)])
    );
    let (_, last) = type_all("Change the tube of the first pump.|Change the tube here as well.");
    let all: Vec<Action> = last.reading.doubts[0].choices[0].actions().cloned().collect();
    assert_eq!(print(&all), "remove pump-tube · fit pump-tube new");
    // Nothing is ordered of the other; the words say it in full; it was worked on since.
    for (lines, read) in [
        (
            "Take off the front cover.|The cover of the control box stays on.|Put the cover back.",
            "fit front-cover",
        ),
        (
            "Take off the front cover.|Prise away the cover of the control box.|Put the front cover back.",
            "fit front-cover",
        ),
        (
            "Take off the front cover.|Prise away the cover of the control box.|Clean the front cover.\
             |Look at the wiring.|Put the cover back.",
            "fit front-cover",
        ),
        // It was not done before; it is done once more.
        ("Close the gas cock.|Open the gas cock here.", "restore gas-cock"),
        // Of something else.
        ("Remove the filter.|Refit the filter.|Remove the filter because it is too dirty.", "remove filter"),
        ("Remove the cover.|Refit the cover.|Remove the cover and the filter too.", "remove cover filter"),
        ("Undo the plug.|Connect the plug.|Undo the plug there.", "undo plug"),
        ("Close the gas cock.|Open the gas cock.|Close the gas cock again.", "isolate gas-cock"),
    ] {
        assert_eq!(asked(lines), (read.to_owned(), Vec::new()), "{lines}");
    }
}

#[test]
fn a_test_that_does_not_say_what_is_told() {
    let (_, last) = type_all("Switch off at the wall switch.|Switch on. Test.");
    assert_eq!(print(&last.reading.actions), "restore wall-switch");
    let [unknown] = last.reading.unknown.as_slice() else { panic!("{:?}", last.reading) };
    assert_eq!((unknown.verb.clone(), unknown.span), (Verb::Test, Span(11, 15)));
}

#[test]
fn a_pronoun_that_can_be_two_things_is_asked_for() {
    let (_, last) = type_all("Take off the cover and the filter.|Clean it.");
    assert_eq!(print(&last.reading.actions), "");
    let [doubt] = last.reading.doubts.as_slice() else { panic!("{:?}", last.reading.doubts) };
    assert_eq!((doubt.question.as_str(), doubt.span), ("Which one is \"it\"?", Span(6, 8)));
    let names: Vec<&str> = doubt.choices.iter().map(|choice| choice.name.as_str()).collect();
    assert_eq!(names, ["cover", "filter"]);
}

#[test]
fn each_kind_of_test_is_said_in_three_ways_at_least() {
    let tested = |words: &str| {
        let (mut typed, _) = type_all(tests::BEFORE);
        let last = typed.type_line(words, &Stage::Recommission);
        let of_tests = last.reading.actions.iter().filter_map(|action| action.test.as_ref());
        of_tests.map(|kind| kind.word().replace(' ', "-")).collect::<Vec<_>>().join(" ")
    };
    let mut wrong = Vec::new();
    for (kind, ways) in tests::TESTS {
        assert!(ways.len() >= 3, "{kind}");
        wrong.extend(ways.iter().map(|words| (*words, *kind, tested(words))));
    }
    wrong.extend(tests::NO_TESTS.iter().map(|words| (*words, "", tested(words))));
    wrong.retain(|(_, kind, tested)| kind != tested);
    assert!(wrong.is_empty(), "{wrong:#?}");
    let known: Vec<&str> = tests::TESTS.iter().map(|(kind, _)| *kind).collect();
    let missing: Vec<String> = TestKind::ALL.iter().map(|kind| kind.word().replace(' ', "-")).collect();
    assert_eq!(known, missing, "a kind of test without words, or in another order");
}

#[test]
fn an_open_circuit_is_asked_for_and_the_answer_settles_it() {
    let typed = Typed::new();
    let words = "Undo the two union nuts of the pump, G 1, 37 mm.";
    let open = typed.read(words, &Stage::Strip, &[]);
    assert!(open.made.is_empty() && open.reading.actions.is_empty());
    assert_eq!(*open.map, ApplianceMap::default());
    let [question] = open.asked.as_slice() else { panic!("{:?}", open.asked) };
    assert_eq!(question.question, "Which circuit do the union nuts carry?");
    assert_eq!(question.span, Span(13, 23), "union nuts");
    let first: Vec<String> = question.choices.iter().take(3).map(ToString::to_string).collect();
    assert_eq!(first, ["heating water", "domestic water", "condensate"]);
    let answer = Answer { span: question.span, means: Meaning::Circuit(CircuitKind::HeatingWater) };
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
fn a_size_behind_what_something_is_of_is_its_own() {
    let sized = |words: &str| {
        let (typed, _) = type_all(words);
        let known = typed.document.map.connections.last().expect("a connection");
        let size = known.size.as_ref().and_then(Known::value).map(ToString::to_string).unwrap_or_default();
        format!("{} {:?} {size}", known.name, known.family)
    };
    let said = [
        ("Undo the three M5 bolts of the vessel bracket, 8 mm.", "vessel bracket bolts Fixing M5 · 8 mm"),
        ("Undo the three M5 bolts of the motor, 8 mm.", "motor bolts Fixing M5 · 8 mm"),
        // The nut of a pipe holds in what runs there.
        (
            "Close the gas cock.|Undo the nut of the gas pipe, G 3/4, 24 mm.",
            "gas pipe nut Joint G 3/4 · 24 mm",
        ),
        (
            "Close the flow valve of the heating.|Undo the nut of the vent pipe, 24 mm.",
            "vent pipe nut Joint 24 mm",
        ),
    ];
    for (words, known) in said {
        assert_eq!(sized(words), known, "{words}");
    }
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
        assert_eq!((made(&making).as_str(), making.map.as_ref()), ("", &ApplianceMap::default()), "{words}");
    }
}

#[test]
fn what_a_sentence_names_is_held_or_told() {
    for (lines, named) in left_out::NAMED {
        let (typed, making) = type_all(lines);
        let words = lines.rsplit('|').next().unwrap_or_default();
        let left = &making.reading.left_out;
        let told = left.iter().map(|span| span.of(words));
        let held = making.reading.actions.iter().flat_map(|action| &action.on);
        let held = held.map(|id| typed.document.map.name_of(id));
        let mut known: Vec<&str> = told.chain(held).collect();
        for name in *named {
            let at = known.iter().position(|known| known.ends_with(name));
            let at = at.unwrap_or_else(|| panic!("{lines}: {name} is neither in an action nor told"));
            known.remove(at);
        }
        assert!(left.iter().all(|span| making.asked.iter().any(|asked| asked.span.0 <= span.0)), "{lines}");
    }
    for lines in left_out::WHOLE {
        let (_, making) = type_all(lines);
        let words = lines.rsplit('|').next().unwrap_or_default();
        let left: Vec<&str> = making.reading.left_out.iter().map(|span| span.of(words)).collect();
        assert!(left.is_empty(), "{lines}: {left:?}");
    }
}

#[test]
fn what_is_told_apart_elsewhere_is_asked_about_and_no_third() {
    for (lines, question) in told_apart::ASKED {
        let (_, making) = type_all(lines);
        let asked: Vec<&str> = making.asked.iter().map(|asked| asked.question.as_str()).collect();
        assert!(asked.contains(question), "{lines}: {asked:?}");
        // What is only read is read all the same.
        let read = print(&making.reading.actions);
        assert!(read.is_empty() || read.starts_with("read "), "{lines}: {read}");
        assert!(making.made.iter().all(|made| !made.name.ends_with("fan")), "{lines}");
    }
    // It may be none of them.
    let (typed, making) = type_all(told_apart::ASKED[0].0);
    let answer = Answer { span: making.asked[0].span, means: making.asked[0].choices[0].clone() };
    let answered = typed.read("Take out the fan.", &Stage::Strip, &[answer]);
    assert_eq!(print(&answered.reading.actions), "remove fan");
    for (lines, expected) in told_apart::ONE {
        let (_, making) = type_all(lines);
        assert_eq!(print(&making.reading.actions), *expected, "{lines}");
    }
}

#[test]
fn each_valve_is_of_the_supply_that_the_words_name_with_it() {
    for (lines, supplies) in together::SUPPLIES {
        let (_, making) = type_all(lines);
        let of = |id: &Id| {
            let isolator =
                making.map.isolators.iter().find(|isolator| isolator.id == *id).expect("an isolator");
            let (circuit, _) =
                making.map.sections().find(|(_, s)| s.id == isolator.between.1).expect("a section");
            circuit.name.clone()
        };
        let shut: Vec<String> = making.reading.actions.iter().flat_map(|action| &action.on).map(of).collect();
        assert_eq!(shut, *supplies, "{lines}");
    }
}
