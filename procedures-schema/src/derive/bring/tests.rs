//! What is chosen comes with what it needs, what is here stays, and what is said to be another one is another one.

use super::{bring, coming, differing, whole};
use crate::edit::apply;
use crate::model::{
    ApplianceMap, Circuit, CircuitKind, Component, Connection, Family, Handle, Id, Isolator, Later,
    NumberedIds, OwnPhrase, Procedure, SUPPLY, Section, ThingKind, Verb,
};
use std::collections::BTreeSet;
use std::sync::Arc;

/// A pump between two unions on a circuit of one kind, with the valve that shuts it.
fn with_pump(kind: CircuitKind) -> Procedure {
    let mut map = ApplianceMap::default();
    map.circuits.push(Circuit::new("c".into(), "circuit", kind, Section::new("s".into(), "pump side")));
    let between = (SUPPLY.into(), "s".into());
    map.isolators.push(Isolator::new("v".into(), "service valve", between, Handle::Valve));
    map.components.push(Component::new("pump".into(), "pump"));
    map.components.push(Component::new("lid".into(), "lid"));
    let mut union = Connection::new("u".into(), "pump unions", Family::Joint);
    union.joins = vec!["pump".into()];
    union.section = Some("s".into());
    union.count = 2;
    map.connections.push(union);
    let mut screws = Connection::new("k".into(), "lid screws", Family::Fixing);
    screws.joins = vec!["lid".into()];
    map.connections.push(screws);
    let mut document = Procedure::new("from".into(), "Renew the pump");
    document.map = Arc::new(map);
    document
}

fn these(ids: &[&str]) -> BTreeSet<Id> {
    ids.iter().copied().map(Id::from).collect()
}

fn after(from: &Procedure, into: &Procedure, chosen: &BTreeSet<Id>, apart: &[&str]) -> Arc<Procedure> {
    let brought = bring(from, into, chosen, &these(apart), &mut NumberedIds::default());
    let into = Arc::new(into.clone());
    brought.edits.iter().fold(into, |document, edit| apply(&document, edit).expect("applies").document)
}

fn names(document: &Procedure) -> Vec<&str> {
    document.map.things().map(|(_, _, name, _)| name).collect()
}

#[test]
fn a_component_comes_with_its_connections_and_what_those_need() {
    let from = with_pump(CircuitKind::HeatingWater);
    assert_eq!(coming(&from.map, &these(&["pump"])), these(&["pump", "u", "s", "c", "v"]));
    assert_eq!(coming(&from.map, &these(&["c"])), these(&["pump", "u", "s", "c", "v"]));
    let into = Procedure::new("into".into(), "Empty");
    let document = after(&from, &into, &these(&["pump"]), &[]);
    assert_eq!(names(&document), ["circuit", "pump side", "service valve", "pump", "pump unions"]);
    assert_eq!(document.note, "5 things of the map brought from \"Renew the pump\" (from).");
}

#[test]
fn what_has_the_same_name_is_asked_about_once_and_taken_for_the_same() {
    let (from, into) = (with_pump(CircuitKind::HeatingWater), with_pump(CircuitKind::HeatingWater));
    let all = whole(&from.map);
    let brought = bring(&from, &into, &all, &BTreeSet::new(), &mut NumberedIds::default());
    let asked: Vec<&str> = brought.meetings.iter().map(|meeting| meeting.name.as_str()).collect();
    assert_eq!(asked, ["circuit", "service valve", "pump", "lid", "pump unions", "lid screws"]);
    assert_eq!((brought.n_same, brought.new.len(), brought.edits.len()), (7, 0, 0));
}

#[test]
fn another_component_has_connections_of_its_own() {
    let (from, into) = (with_pump(CircuitKind::HeatingWater), with_pump(CircuitKind::HeatingWater));
    let document = after(&from, &into, &whole(&from.map), &["pump"]);
    let new = document.map.connections.last().expect("came");
    assert_eq!((new.name.as_str(), document.map.name_of(&new.joins[0])), ("pump unions 2", "pump 2"));
    assert_eq!(new.section, Some("s".into()), "the circuit is the one that is here");
    let brought = bring(&from, &into, &whole(&from.map), &these(&["pump"]), &mut NumberedIds::default());
    assert!(
        brought.meetings.iter().any(|meeting| meeting.thing == "pump".into()),
        "it can be answered again"
    );
    assert!(brought.meetings.iter().all(|meeting| meeting.thing != "u".into()), "its unions go with it");
}

#[test]
fn another_circuit_has_sections_valves_and_joints_of_its_own() {
    let (from, into) = (with_pump(CircuitKind::HeatingWater), with_pump(CircuitKind::HeatingWater));
    let document = after(&from, &into, &whole(&from.map), &["c"]);
    let [_, circuit] = document.map.circuits.as_slice() else { panic!("two circuits") };
    assert_eq!(circuit.name, "circuit 2");
    let [_, valve] = document.map.isolators.as_slice() else { panic!("two valves") };
    assert_eq!((&valve.between.1, valve.name.as_str()), (&circuit.sections[0].id, "service valve 2"));
    let union = document.map.connections.last().expect("came");
    assert_eq!((&union.section, &union.joins[0]), (&Some(circuit.sections[0].id.clone()), &"pump".into()));
}

#[test]
fn equal_names_on_two_kinds_of_circuit_are_two_things() {
    let (from, into) = (with_pump(CircuitKind::FuelGas), with_pump(CircuitKind::HeatingWater));
    let document = after(&from, &into, &whole(&from.map), &[]);
    let kinds: Vec<&CircuitKind> = document.map.circuits.iter().map(|circuit| &circuit.kind).collect();
    assert_eq!(kinds, [&CircuitKind::HeatingWater, &CircuitKind::FuelGas]);
    let new = document.map.isolators.last().expect("came");
    assert_eq!(
        (new.name.as_str(), &new.between.1),
        ("service valve 2", &document.map.circuits[1].sections[0].id)
    );
    assert_eq!(document.map.components.len(), 2, "pump and lid have the same names and may be the same");
}

#[test]
fn a_circuit_that_is_here_gains_the_sections_that_it_lacks() {
    let mut from = with_pump(CircuitKind::HeatingWater);
    let map = Arc::make_mut(&mut from.map);
    map.circuits[0].sections.push(Section::new("t".into(), "tank side"));
    let into = with_pump(CircuitKind::HeatingWater);
    let document = after(&from, &into, &whole(&from.map), &[]);
    let sections: Vec<&str> = document.map.sections().map(|(_, section)| section.name.as_str()).collect();
    assert_eq!(sections, ["pump side", "tank side"]);
    assert_eq!(document.map.circuits[0].sections[0], into.map.circuits[0].sections[0]);
}

#[test]
fn what_two_of_the_same_name_say_differently_is_told() {
    let (from, mut into) = (with_pump(CircuitKind::HeatingWater), with_pump(CircuitKind::HeatingWater));
    assert!(differing(&from, &into).is_empty());
    Arc::make_mut(&mut into.map).connections[0].count = 1;
    let told = differing(&from, &into);
    assert_eq!(told.keys().collect::<Vec<_>>(), [&Id::from("u")]);
    assert_eq!((told[&"u".into()][0].kept.as_str(), told[&"u".into()][0].other.as_str()), ("1", "2"));
}

#[test]
fn what_is_still_to_be_found_out_comes_along_and_the_origin_is_told_once() {
    let mut from = with_pump(CircuitKind::HeatingWater);
    let later = |thing: &str| Later {
        what: "the state of its seat".into(),
        who: "the first visit".into(),
        thing: Some(thing.into()),
        step: None,
        rest: crate::units::Rest::default(),
    };
    from.later = vec![later("pump"), later("lid")];
    let into = Procedure::new("into".into(), "Empty");
    let once = after(&from, &into, &these(&["pump"]), &[]);
    let pump = once.map.components[0].id.clone();
    assert_eq!(once.later.iter().map(|later| later.thing.clone()).collect::<Vec<_>>(), [Some(pump)]);
    let whole_map = after(&from, &into, &whole(&from.map), &[]);
    assert_eq!(whole_map.note, "Map brought from \"Renew the pump\" (from).");
    let again = after(&from, &whole_map, &whole(&from.map), &["lid"]);
    assert_eq!(again.note, whole_map.note);
    assert_eq!(again.map.things().filter(|(kind, ..)| *kind == ThingKind::Component).count(), 3);
}

#[test]
fn phrases_come_along_and_what_is_here_keeps_its_meaning() {
    let (mut from, mut into) = (with_pump(CircuitKind::HeatingWater), Procedure::new("into".into(), "Empty"));
    let phrases = [OwnPhrase::new("knock … off", Verb::Remove), OwnPhrase::new("twirl", Verb::Undo)];
    Arc::make_mut(&mut from.map).phrases.extend(phrases);
    let here = OwnPhrase::new("Twirl", Verb::Set);
    Arc::make_mut(&mut into.map).phrases.push(here.clone());
    let expected = [here, OwnPhrase::new("knock … off", Verb::Remove)];
    for chosen in [whole(&from.map), these(&["pump"])] {
        assert_eq!(after(&from, &into, &chosen, &[]).map.phrases, expected);
    }
    assert_eq!(after(&from, &into, &these(&[]), &[]).map.phrases.len(), 1, "nothing comes, and they do not");
    let mut same = into.clone();
    same.map = Arc::new(ApplianceMap { phrases: into.map.phrases.clone(), ..ApplianceMap::clone(&from.map) });
    let document = after(&from, &same, &whole(&from.map), &[]);
    assert_eq!(document.map.phrases, expected, "all things are here, and they come by themselves");
    assert_eq!(document.note, "", "of the map nothing was brought");
}
