//! What can be picked where, on an invented pump.

use super::{Readings, called, readings_at};
use crate::model::{Action, ApplianceMap, Id, Procedure, Span, Stage, Step, Verb};
use crate::notation::{parse, print};
use crate::simulate::{Place, Run, simulate};
use std::sync::Arc;

const PUMP: &str = r#"{
  "circuits": [{"id": "H", "name": "heating", "kind": "heating water",
     "sections": [{"id": "sys", "name": "heating system"}, {"id": "body", "name": "pump body"}]}],
  "isolators": [
    {"id": "va", "name": "flow valve", "between": ["sys", "body"], "handle": "valve"},
    {"id": "vb", "name": "return valve", "between": ["sys", "body"], "handle": "valve"}
  ],
  "components": [{"id": "cover", "name": "front cover"}, {"id": "pump", "name": "pump"}],
  "connections": [
    {"id": "screws", "name": "cover screws", "family": "fixing", "joins": ["cover"], "count": 4},
    {"id": "unions", "name": "pump unions", "family": "joint", "joins": ["pump"], "section": "body", "count": 2}
  ]
}"#;

fn map() -> ApplianceMap {
    serde_json::from_str(PUMP).expect("a map")
}

/// What can be picked where `|` stands in the words, or between two of them, after some actions were done.
fn at(words: &str, done: &str) -> (Readings, String) {
    let map = map();
    let mut procedure = Procedure::new(Id::new("p"), "Invented");
    let step = |(i, action): (usize, Action)| {
        let id = Id::new(&format!("s{i}"));
        Arc::new(Step { actions: vec![action], ..Step::new(id, Stage::Strip, "") })
    };
    procedure.steps = parse(done).expect(done).into_iter().enumerate().map(step).collect();
    procedure.map = Arc::new(map.clone());
    let trace = simulate(&procedure, &Run::of(&procedure));
    let mut marks = words.char_indices().filter(|(_, c)| *c == '|').map(|(at, _)| at);
    let from = marks.next().expect("a mark");
    let to = marks.next().map_or(from, |to| to - 1);
    let plain = words.replace('|', "");
    let span = Span(u32::try_from(from).expect("short"), u32::try_from(to).expect("short"));
    let read = readings_at(&plain, span, &map, &trace, Place::END, &Stage::Strip);
    (read, plain)
}

fn written(read: &Readings) -> Vec<String> {
    read.actions.iter().map(|action| print(std::slice::from_ref(action))).collect()
}

#[test]
fn what_the_line_would_take_comes_first_and_the_others_follow() {
    let (read, _) = at("Close the |valve.", "");
    assert_eq!(written(&read).get(..2).unwrap_or_default(), ["isolate va", "isolate vb"]);
    let (read, words) = at("Undo the |cover screws.", "");
    let all = written(&read);
    assert_eq!(all.first().map(String::as_str), Some("undo screws"), "{all:?}");
    assert!(all.contains(&"slacken screws".to_owned()) && all.contains(&"undo unions".to_owned()), "{all:?}");
    assert!(!all.contains(&"make screws".to_owned()), "they are made already: {all:?}");
    assert_eq!(read.span.of(&words), "Undo the cover screws");
}

#[test]
fn a_verb_that_is_not_known_is_said_of_what_is_named() {
    let (read, words) = at("Swivel the front |cover out of the way.", "undo screws");
    let all = written(&read);
    assert!(all.contains(&"aside cover".to_owned()) && all.contains(&"remove cover".to_owned()), "{all:?}");
    assert_eq!(read.span.of(&words), "front cover");
    let (read, words) = at("|Swivel the front cover out of the way|.", "undo screws");
    let aside = read.actions.iter().find(|action| action.verb == Verb::MoveAside).expect("offered");
    assert_eq!(
        aside.says.iter().map(|span| span.of(&words)).collect::<Vec<_>>(),
        ["Swivel the front cover out of the way"]
    );
}

#[test]
fn a_verb_whose_thing_is_not_known_is_offered_on_what_it_can_be_done_to() {
    let (read, _) = at("Undo| the gland nuts.", "");
    assert_eq!(written(&read), ["undo screws", "undo unions", "slacken screws", "slacken unions"]);
    let (read, _) = at("Close the flow valve, thump the front |cover off.", "");
    let inspect = read.actions.iter().find(|action| action.verb == Verb::Inspect).expect("offered");
    assert_eq!(inspect.says, [Span(32, 43)], "the verb of another part of the sentence does not say it");
}

#[test]
fn earlier_words_of_the_line_count_and_later_ones_do_not() {
    let (read, _) = at("Close the flow valve, then close the |valve.", "");
    assert_eq!(written(&read).first().map(String::as_str), Some("isolate vb"));
    let (read, _) = at("Close the |valve, then close the return valve.", "");
    assert_eq!(written(&read).get(..2).unwrap_or_default(), ["isolate va", "isolate vb"]);
}

#[test]
fn there_are_never_more_than_digits_and_nothing_is_said_twice() {
    for words in
        ["Close the |valve.", "Undo the |unions of the pump.", "Take the pump |out.", "|", "x|", "Warm| up."]
    {
        let (read, _) = at(words, "");
        let all = written(&read);
        assert!(all.len() <= 9, "{words}: {all:?}");
        assert!(
            (1..all.len()).all(|i| !all.get(..i).unwrap_or_default().contains(&all[i])),
            "{words}: {all:?}"
        );
    }
}

#[test]
fn the_words_that_call_a_thing_are_found_unless_they_are_its_name() {
    let named = |words: &str, action: &str, said: &str| {
        let mut action = parse(action).expect(action).remove(0);
        let from = words.find(said).and_then(|at| u32::try_from(at).ok()).expect(said);
        action.says = vec![Span(from, from + u32::try_from(said.len()).expect("short"))];
        called(words, &action, &map(), &Stage::Strip)
    };
    assert_eq!(named("Undo the gland nuts.", "undo unions", "Undo").as_deref(), Some("gland nuts"));
    assert_eq!(named("Lift out the circulator.", "remove pump", "Lift out").as_deref(), Some("circulator"));
    assert_eq!(named("Undo the unions.", "undo unions", "Undo the unions").as_deref(), Some("unions"));
    assert_eq!(named("Undo the pump unions.", "undo unions", "Undo the pump unions"), None);
    assert_eq!(named("Undo the cover screws.", "undo unions", "Undo"), None, "that is another thing's name");
}
