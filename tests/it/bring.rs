//! Laws of bringing a map: it is the same map there, and nothing of the map that it comes to changes.

use crate::laws::{Dice, good};
use procedures_schema::derive::bring::{bring, coming, whole};
use procedures_schema::edit::{Edit, Session};
use procedures_schema::model::{
    ApplianceMap, Circuit, Component, Connection, Id, Isolator, NumberedIds, Procedure, References, SUPPLY,
    Seal, Setting, Temporary,
};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// Changes every id of a map, and takes the pictures off, which belong to a document.
fn with_ids(map: &ApplianceMap, other: &BTreeMap<Id, Id>) -> ApplianceMap {
    let mut map = map.clone();
    let change = |id: &mut Id| {
        if let Some(other) = other.get(id) {
            *id = other.clone();
        }
    };
    for section in map.circuits.iter_mut().flat_map(|circuit| &mut circuit.sections) {
        change(&mut section.id);
        section.images.clear();
    }
    macro_rules! each {
        ($($list:ident: $thing:ident),*) => {$(
            for thing in &mut map.$list {
                change(&mut thing.id);
                $thing::each_thing(thing, &mut |id| change(id));
                thing.images.clear();
            }
        )*};
    }
    each!(
        circuits: Circuit, isolators: Isolator, components: Component, connections: Connection, seals: Seal,
        temporary: Temporary, settings: Setting
    );
    map
}

/// The ids that a map names and does not have.
fn dangling(map: &ApplianceMap) -> Vec<Id> {
    let known = whole(map);
    let mut found = Vec::new();
    let note = |id: &mut Id| {
        if id.as_str() != SUPPLY && !known.contains(id) {
            found.push(id.clone());
        }
    };
    let mut note = note;
    let mut map = map.clone();
    map.circuits.iter_mut().for_each(|thing| thing.each_thing(&mut note));
    map.isolators.iter_mut().for_each(|thing| thing.each_thing(&mut note));
    map.components.iter_mut().for_each(|thing| thing.each_thing(&mut note));
    map.connections.iter_mut().for_each(|thing| thing.each_thing(&mut note));
    map.temporary.iter_mut().for_each(|thing| thing.each_thing(&mut note));
    map.settings.iter_mut().for_each(|thing| thing.each_thing(&mut note));
    found
}

fn brought(document: &Arc<Procedure>, edits: &[Edit]) -> Session {
    let mut session = Session::new(document.clone());
    session.edit(edits, "bring the map", None, 0).expect("applies");
    session
}

#[test]
fn a_brought_map_is_the_original_up_to_ids_and_every_reference_is_inside() {
    for from in good() {
        let empty = Arc::new(Procedure::new("empty".into(), "Empty"));
        let everything = whole(&from.map);
        let mut ids = NumberedIds::default();
        let bringing = bring(&from, &empty, &everything, &BTreeSet::new(), &mut ids);
        let mut session = brought(&empty, &bringing.edits);
        let there = session.document().map.clone();
        let pairs = from.map.things().zip(there.things());
        let other: BTreeMap<Id, Id> =
            pairs.map(|((_, old, ..), (_, new, ..))| (old.clone(), new.clone())).collect();
        assert_eq!(with_ids(&from.map, &other), *there, "{}", from.title);
        assert!(other.iter().all(|(old, new)| old != new), "{}: new ids", from.title);
        assert_eq!(dangling(&there), dangling(&from.map), "{}", from.title);
        assert!(session.document().note.contains(&format!("from \"{}\" ({})", from.title, from.id)));
        session.undo().expect("one entry");
        assert!(Arc::ptr_eq(session.document(), &empty), "{}: one undo takes all back", from.title);
    }
}

#[test]
fn nothing_of_the_map_that_it_comes_to_changes() {
    let all: Vec<Arc<Procedure>> = good().into_iter().map(Arc::new).collect();
    let mut dice = Dice(11);
    for round in 0..400 {
        let (from, into) = (&all[dice.roll(all.len())], &all[dice.roll(all.len())]);
        let pick = |dice: &mut Dice, one_in: usize| -> BTreeSet<Id> {
            whole(&from.map).into_iter().filter(|_| dice.roll(one_in) == 0).collect()
        };
        let (chosen, apart) = (pick(&mut dice, 3), pick(&mut dice, 6));
        let mut ids = NumberedIds::default();
        let bringing = bring(from, into, &chosen, &apart, &mut ids);
        let coming = coming(&from.map, &chosen).len();
        assert_eq!(
            bringing.n_same + bringing.new.len(),
            coming,
            "round {round}: each thing that comes is told"
        );
        if bringing.edits.is_empty() {
            assert!(bringing.new.is_empty());
            continue;
        }
        let session = brought(into, &bringing.edits);
        let after = session.document();
        assert_eq!(after.steps, into.steps);
        assert_eq!(dangling(&after.map), dangling(&into.map), "round {round}");
        assert_eq!(
            whole(&after.map).len(),
            after.map.things().count(),
            "round {round}: no id is there twice"
        );
        is_still_there(&into.map, &after.map);
    }
}

/// Whether every thing of a map is in another at its place, unchanged; a circuit may have gained sections.
fn is_still_there(before: &ApplianceMap, after: &ApplianceMap) {
    for (old, new) in before.circuits.iter().zip(&after.circuits) {
        let mut shortened = new.clone();
        shortened.sections.truncate(old.sections.len());
        assert_eq!(*old, shortened);
    }
    macro_rules! each {
        ($($list:ident),*) => {$(
            assert_eq!(Some(before.$list.as_slice()), after.$list.get(..before.$list.len()));
        )*};
    }
    each!(isolators, components, connections, seals, temporary, settings);
    assert!(after.circuits.len() >= before.circuits.len());
}

#[test]
fn a_map_that_comes_to_its_own_copy_is_there_already() {
    for from in good() {
        let copy = Procedure { id: "copy".into(), ..from.clone() };
        let bringing = bring(&from, &copy, &whole(&from.map), &BTreeSet::new(), &mut NumberedIds::default());
        assert_eq!(bringing.new, [], "{}", from.title);
        assert!(bringing.edits.is_empty());
    }
}
