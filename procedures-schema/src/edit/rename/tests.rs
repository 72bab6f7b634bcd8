//! Laws of renaming: the words follow, the spans say the same, and the way back gives the same document.

use super::super::tests::next;
use super::super::{Edit, EditError, Session, apply, occurrences};
use crate::model::{
    Action, ApplianceMap, Circuit, CircuitKind, Component, Connection, Family, Id, OnFail, Procedure, Rest,
    Section, Span, Stage, Step, Verb,
};
use std::sync::Arc;

/// A map with a pump, its screws and a union of another name, and one step a sentence.
fn document(sentences: &[&str]) -> Arc<Procedure> {
    let mut procedure = Procedure::new("p".into(), "Renew the pump");
    let mut screws = Connection::new("screws".into(), "pump screws", Family::Fixing);
    screws.aliases = vec!["long bolts".to_owned()];
    procedure.map = Arc::new(ApplianceMap {
        components: vec![component("pump", "pump")],
        connections: vec![screws, Connection::new("union".into(), "union", Family::Joint)],
        ..ApplianceMap::default()
    });
    let steps = sentences.iter().enumerate();
    procedure.steps = steps.map(|(n, words)| Arc::new(step(&format!("s{n}"), words))).collect();
    Arc::new(procedure)
}

fn component(id: &str, name: &str) -> Component {
    serde_json::from_value(serde_json::json!({ "id": id, "name": name })).expect("a component")
}

/// A step with an action for each word, as a span in code points.
fn step(id: &str, words: &str) -> Step {
    let mut step = Step::new(id.into(), Stage::Strip, words);
    let mut from = 0;
    for word in words.split(' ') {
        let to = from + u32::try_from(word.chars().count()).unwrap_or(0);
        let mut action = Action::new(Verb::Inspect, vec!["pump".into()]);
        action.says = vec![Span(from, to)];
        step.actions.push(action);
        from = to + 1;
    }
    step
}

fn rename(document: &Arc<Procedure>, thing: &str, name: &str) -> Result<Arc<Procedure>, EditError> {
    let edit = Edit::Rename { thing: thing.into(), name: name.to_owned(), in_words: true };
    apply(document, &edit).map(|applied| applied.document)
}

fn words(document: &Procedure) -> Vec<&str> {
    document.steps.iter().map(|step| step.words.as_str()).collect()
}

/// What each span of a step says, spans of the steps after a failed test among them.
fn said(step: &Step) -> Vec<String> {
    let inner = step.actions.iter().filter_map(|action| action.on_fail.as_ref()).flat_map(|f| &f.steps);
    let own = step.actions.iter().flat_map(|action| &action.says).map(|span| span.of(&step.words).to_owned());
    own.chain(inner.flat_map(said)).collect()
}

#[test]
fn a_name_is_replaced_as_whole_words_and_keeps_the_capital_of_a_sentence() {
    for (before, after) in [
        ("Lift the pump out.", "Lift the mover out."),
        ("Pump off. Pump out: Pump it.", "Mover off. Mover out: Mover it."),
        ("(Pump, pump)", "(Mover, mover)"),
        (
            "The Pump maker pumps; pump-out stays, \u{fc}pump too.",
            "The Pump maker pumps; pump-out stays, \u{fc}pump too.",
        ),
        ("Undo the pump screws of the pump.", "Undo the pump screws of the mover."),
        ("As in {step:pump}, {step:pump pump} and pump.", "As in {step:pump}, {step:pump pump} and mover."),
        ("", ""),
    ] {
        let renamed = rename(&document(&[before]), "pump", "mover").expect("applies");
        assert_eq!(words(&renamed), [after]);
    }
}

#[test]
fn a_span_that_held_a_part_of_the_name_holds_the_whole_of_the_new_one() {
    let mut d = document(&["\u{dc}ber the union nut"]);
    let step = Arc::make_mut(&mut Arc::make_mut(&mut d).steps[0]);
    step.actions[0].says =
        vec![Span(0, 4), Span(9, 12), Span(11, 18), Span(0, 18), Span(14, 18), Span(10, 10)];
    let renamed = rename(&d, "union", "brass coupling").expect("applies");
    let said: Vec<&str> =
        renamed.steps[0].actions[0].says.iter().map(|s| s.of(&renamed.steps[0].words)).collect();
    let whole = "\u{dc}ber the brass coupling nut";
    assert_eq!(said, ["\u{dc}ber", "brass coupling", "brass coupling nut", whole, " nut", ""]);
}

#[test]
fn names_that_are_empty_or_taken_are_refused_and_say_what_to_do() {
    let d = document(&["Lift the pump out."]);
    for (thing, name, said) in [
        ("pump", "  ", "the name is empty: type what the trade calls the thing"),
        ("pump", "UNION", "another thing is called \"union\" already: choose a name that tells them apart"),
        (
            "pump",
            "Long Bolts",
            "\"Long Bolts\" is another name of the pump screws already: choose one that tells them apart",
        ),
        ("fan", "blower", "the appliance map has no \"fan\" any more"),
    ] {
        assert_eq!(rename(&d, thing, name).expect_err("refused").to_string(), said);
    }
    assert_eq!(words(&rename(&d, "pump", " Pump ").expect("its own name")), ["Lift the Pump out."]);
}

#[test]
fn without_words_only_the_map_changes() {
    let d = document(&["Lift the pump out."]);
    let edit = Edit::Rename { thing: "pump".into(), name: "mover".to_owned(), in_words: false };
    let applied = apply(&d, &edit).expect("applies");
    assert_eq!((words(&applied.document), applied.touched.len()), (vec!["Lift the pump out."], 0));
    assert_eq!(applied.document.map.name_of(&"pump".into()), "mover");
    assert!(Arc::ptr_eq(&applied.document.steps[0], &d.steps[0]));
}

#[test]
fn where_two_things_share_a_name_only_steps_that_act_on_the_one_follow() {
    let mut d = document(&["Lift the pump out.", "Look at the pump.", "Fit both, pump and pump."]);
    let changed = Arc::make_mut(&mut d);
    Arc::make_mut(&mut changed.map).components.push(component("other", "Pump"));
    for (at, things) in [(0, vec!["pump"]), (1, vec!["other"]), (2, vec!["pump", "other"])] {
        for action in &mut Arc::make_mut(&mut changed.steps[at]).actions {
            action.on = things.iter().map(|id| Id::new(id)).collect();
        }
    }
    assert_eq!(occurrences(&d, &"pump".into()), 1);
    let renamed = rename(&d, "pump", "mover").expect("applies");
    assert_eq!(words(&renamed), ["Lift the mover out.", "Look at the pump.", "Fit both, pump and pump."]);
}

/// A sentence of random words, the name of a thing often among them.
#[test]
fn the_only_section_of_a_circuit_follows_it() {
    let mut procedure = Procedure::clone(&document(&["Drain the heating."]));
    let section = Section::new("s".into(), "heating");
    let circuit = Circuit::new("c".into(), "heating", CircuitKind::HeatingWater, section);
    Arc::make_mut(&mut procedure.map).circuits.push(circuit);
    let renamed = rename(&Arc::new(procedure), "c", "heating loop").expect("renamed");
    assert_eq!(renamed.map.name_of(&"s".into()), "heating loop");
    assert_eq!(words(&renamed), ["Drain the heating loop."]);
}

fn sentence(seed: &mut u64) -> String {
    const WORDS: &[&str] = &[
        "pump",
        "Pump",
        "pump.",
        "the",
        "screws",
        "pump,",
        "L\u{f6}se",
        "union",
        "{step:pump}",
        "out.",
        "(pump)",
    ];
    let n_words = 1 + next(seed) % 9;
    (0..n_words).map(|_| WORDS[next(seed) % WORDS.len()]).collect::<Vec<_>>().join(" ")
}

fn random(seed: &mut u64) -> Arc<Procedure> {
    let sentences: Vec<String> = (0..4).map(|_| sentence(seed)).collect();
    let mut d = document(&sentences.iter().map(String::as_str).collect::<Vec<_>>());
    let last = Arc::make_mut(&mut Arc::make_mut(&mut d).steps[3]);
    let steps = vec![step("after-failure", &sentence(seed))];
    last.actions[0].on_fail =
        Some(OnFail { again: String::new(), steps, leave_safe: false, rest: Rest::default() });
    d
}

#[test]
fn the_way_back_gives_the_same_document_and_spans_say_the_same_but_for_the_name() {
    let mut seed = 0x2545_F491_4F6C_DD1D;
    let mut n_changed = 0;
    for _ in 0..500 {
        let d = random(&mut seed);
        let name = ["m", "mover unit", "l\u{fc}fter"][next(&mut seed) % 3];
        let there = rename(&d, "pump", name).expect("applies");
        let back = rename(&there, "pump", "pump").expect("applies");
        assert!(back == d, "{name}: {:?} became {:?}", words(&d), words(&back));
        let capital = name.replacen(&name[..1], &name[..1].to_uppercase(), 1);
        for (before, after) in d.steps.iter().zip(&there.steps) {
            for (old, new) in said(before).iter().zip(said(after)) {
                let plain = [name, &capital].map(|name| new.replace(name, "pump"));
                let same = *old == new || plain.iter().any(|p| p.eq_ignore_ascii_case(old));
                assert!(same, "{old} became {new}: {:?}", words(&d));
            }
        }
        let changed = d.steps.iter().zip(&there.steps).filter(|(a, b)| a != b).count();
        assert_eq!(occurrences(&d, &"pump".into()), changed);
        n_changed += changed;
    }
    assert!(n_changed > 500, "the sentences name the thing: {n_changed}");
}

#[test]
fn undo_of_a_rename_goes_back_to_the_very_same_document() {
    let mut seed = 0x9E37_79B9_7F4A_7C15;
    for _ in 0..100 {
        let d = random(&mut seed);
        let mut session = Session::new(d.clone());
        let edit = Edit::Rename { thing: "pump".into(), name: "mover".to_owned(), in_words: true };
        session.edit(&[edit], "rename the pump", None, 0).expect("applies");
        assert!(session.undo().is_some());
        assert!(Arc::ptr_eq(session.document(), &d));
    }
}

#[test]
fn what_says_the_same_in_another_order_is_renamed_too() {
    let mut document = document(&[
        "Undo the four bolts of the pump flange, M10.",
        "Make the pump flange bolts.",
        "Undo the union.",
    ]);
    let changed = Arc::make_mut(&mut document);
    let mut bolts = Connection::new("bolts".into(), "pump flange bolts", Family::Fixing);
    bolts.aliases = vec!["bolts of the pump flange".to_owned()];
    let mut flange = Connection::new("flange".into(), "discharge side", Family::Joint);
    flange.aliases = vec!["nuts of the discharge side".to_owned()];
    Arc::make_mut(&mut changed.map).connections.extend([bolts, flange]);
    assert_eq!(occurrences(&document, &"bolts".into()), 2);
    let renamed = rename(&document, "bolts", "outlet bolts").expect("renamed");
    assert_eq!(
        words(&renamed),
        ["Undo the four outlet bolts, M10.", "Make the outlet bolts.", "Undo the union."]
    );
    let renamed = rename(&renamed, "flange", "outlet side").expect("renamed");
    assert_eq!(renamed.map.connection(&"flange".into()).expect("there").aliases, ["nuts of the outlet side"]);
}
