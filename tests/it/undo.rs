//! Undo after edits is as if there had been none, on random documents with random edits of every kind.

use crate::laws::{Dice, random_action, spoiled};
use procedures_schema::edit::{Choice, Difference, Edit, Scope, Session, differences};
use procedures_schema::format;
use procedures_schema::model::{Id, Procedure, Step, ThingKind, names};
use std::collections::BTreeSet;
use std::sync::Arc;

/// Edits of one document before all are taken back.
const N_EDITS: u64 = 12;
/// The kinds of edits that are rolled.
pub(crate) const N_KINDS: usize = 11;

pub(crate) fn random_edit(dice: &mut Dice, kind: usize, n: u64, document: &Procedure) -> Edit {
    let at = dice.roll(document.steps.len());
    let to = dice.roll(document.steps.len());
    let step = &document.steps[at];
    match kind {
        0 => Edit::SetTitle(format!("Title {n}")),
        1 => {
            let added = Step { id: format!("added-{n}").as_str().into(), ..(**step).clone() };
            Edit::InsertStep { at: to, step: Arc::new(added) }
        }
        2 if document.steps.len() > 1 => Edit::RemoveStep { step: step.id.clone() },
        2 | 3 => Edit::MoveStep { step: step.id.clone(), to },
        4 => {
            let mut changed = (**step).clone();
            changed.words.push_str(" And more.");
            changed.actions.push(random_action(dice, document));
            Edit::SetStep { step: Arc::new(changed) }
        }
        5 => {
            let mut scope = Scope::of(document);
            scope.census.reverse();
            Edit::SetScope(Box::new(scope))
        }
        6 => {
            let mut map = (*document.map).clone();
            map.components.rotate_left(1);
            map.connections.reverse();
            Edit::SetMap(Arc::new(map))
        }
        7 => {
            let things: Vec<_> = document.map.things().map(|(_, id, ..)| id.clone()).collect();
            let thing = things[dice.roll(things.len())].clone();
            Edit::Rename { thing, name: format!("name {n}"), in_words: dice.roll(2) == 0 }
        }
        8 => {
            let [keep, gone] = two_of_a_kind(dice, document);
            let told = differences(document, &keep, &gone).unwrap_or_default();
            let choose = |told: &Difference| Choice { field: told.field, of_other: dice.roll(2) == 0 };
            let choices = told.iter().map(choose).collect();
            Edit::Merge { keep, gone, choices }
        }
        9 => {
            let mut other = document.clone();
            other.steps.rotate_left(at);
            other.title = format!("Earlier title {n}");
            Edit::Replace(Arc::new(other))
        }
        _ => {
            let [thing, _] = two_of_a_kind(dice, document);
            let naming = document.steps.iter().filter(|step| names(&***step, &thing));
            let steps = naming.skip(1).map(|step| step.id.clone()).collect();
            let (new, name) = (format!("new-{n}").as_str().into(), format!("copy {n}"));
            Edit::Split { thing, new, name, steps, in_words: dice.roll(2) == 0 }
        }
    }
}

/// Two things of one kind, which may be the same; not circuits, which are never merged.
fn two_of_a_kind(dice: &mut Dice, document: &Procedure) -> [Id; 2] {
    let circuits = [ThingKind::Circuit, ThingKind::Section];
    let things: Vec<_> = document.map.things().filter(|(kind, ..)| !circuits.contains(kind)).collect();
    let (kind, one, ..) = things[dice.roll(things.len())];
    let alike: Vec<_> = things.iter().filter(|(other, ..)| *other == kind).collect();
    [one.clone(), alike[dice.roll(alike.len())].1.clone()]
}

#[test]
fn undo_after_random_edits_gives_back_each_document_byte_by_byte() {
    let mut dice = Dice(0xD1B5_4A32_D192_ED03);
    let mut applied = BTreeSet::new();
    for procedure in spoiled().filter(|procedure| !procedure.steps.is_empty()) {
        let mut session = Session::new(Arc::new(procedure));
        let mut history = vec![(session.document().clone(), format::write(session.document()))];
        for n in 0..N_EDITS {
            let kind = dice.roll(N_KINDS);
            let edit = random_edit(&mut dice, kind, n, session.document());
            // A name that is taken and two things that are two are refused, and then nothing changes.
            if session.edit(&[edit], "edit", None, n * 10_000).is_ok() {
                applied.insert(kind);
                history.push((session.document().clone(), format::write(session.document())));
            }
        }
        for (document, text) in history.iter().rev().skip(1) {
            assert!(session.undo().is_some());
            assert!(Arc::ptr_eq(session.document(), document));
            assert_eq!(format::write(session.document()), *text);
        }
        assert!(session.undo().is_none(), "nothing is left to undo");
        for (document, text) in history.iter().skip(1) {
            assert!(session.redo().is_some());
            assert_eq!(session.document(), document);
            assert_eq!(format::write(session.document()), *text);
        }
    }
    assert_eq!(applied, (0..N_KINDS).collect(), "each kind of edit was done");
}
