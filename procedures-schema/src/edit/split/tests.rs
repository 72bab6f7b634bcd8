//! Splitting: only the chosen steps name the copy, and undo makes it one again.

use crate::edit::{Edit, EditError, Session, apply};
use crate::model::{
    Action, ApplianceMap, Circuit, CircuitKind, Connection, Family, Id, Procedure, Section, Span, Stage,
    Step, Verb,
};
use std::sync::Arc;

fn document() -> Arc<Procedure> {
    let mut procedure = Procedure::new("p".into(), "Renew the pump");
    let mut screws = Connection::new("screws".into(), "cover screws", Family::Fixing);
    screws.aliases = vec!["long screws".to_owned()];
    screws.count = 4;
    let mains = Section::new("leg".into(), "mains");
    procedure.map = Arc::new(ApplianceMap {
        circuits: vec![Circuit::new("mains".into(), "mains", CircuitKind::MainsElectricity, mains)],
        connections: vec![screws, Connection::new("union".into(), "union", Family::Joint)],
        ..ApplianceMap::default()
    });
    procedure.steps = ["s1", "s2", "s3"]
        .map(|id| {
            let mut step = Step::new(id.into(), Stage::Strip, "Undo the cover screws.");
            let mut action = Action::new(Verb::Undo, vec!["screws".into()]);
            action.says = vec![Span(9, 21)];
            step.actions.push(action);
            Arc::new(step)
        })
        .to_vec();
    Arc::new(procedure)
}

fn split(thing: &str, name: &str, steps: &[&str], in_words: bool) -> Edit {
    Edit::Split {
        thing: thing.into(),
        new: "new".into(),
        name: name.to_owned(),
        steps: steps.iter().map(|id| Id::new(id)).collect(),
        in_words,
    }
}

#[test]
fn the_chosen_steps_name_the_copy() {
    let before = document();
    let applied = apply(&before, &split("screws", " side screws ", &["s2"], false)).expect("applies");
    assert_eq!(applied.touched, [Id::new("s2")]);
    let after = applied.document;
    let names: Vec<&str> = after.map.connections.iter().map(|k| k.name.as_str()).collect();
    assert_eq!(names, ["cover screws", "side screws", "union"]);
    assert_eq!(after.map.connections[1].count, 4);
    assert!(after.map.connections[1].aliases.is_empty());
    let on: Vec<&str> = after.steps.iter().map(|step| step.actions[0].on[0].as_str()).collect();
    assert_eq!(on, ["screws", "new", "screws"]);
    assert_eq!(after.steps[1].words, "Undo the cover screws.");
}

#[test]
fn the_words_follow_if_that_is_wanted() {
    let after = apply(&document(), &split("screws", "side screws", &["s2"], true)).expect("applies").document;
    let words: Vec<&str> = after.steps.iter().map(|step| step.words.as_str()).collect();
    assert_eq!(words, ["Undo the cover screws.", "Undo the side screws.", "Undo the cover screws."]);
    let step = &after.steps[1];
    assert_eq!(step.actions[0].says[0].of(&step.words), "side screws");
}

#[test]
fn one_that_is_one_stays_one() {
    let d = document();
    let refused = |edit: Edit| apply(&d, &edit).expect_err("it is refused");
    let told = |edit: Edit| refused(edit).to_string();
    assert!(told(split("screws", "side screws", &[], false)).contains("choose the steps"));
    assert!(told(split("screws", "side screws", &["s1", "s2", "s3"], false)).contains("another name"));
    assert!(told(split("union", "other union", &["s1"], false)).contains("step 1 does not name it"));
    assert!(told(split("mains", "other mains", &["s1"], false)).contains("cut into sections"));
    assert_eq!(refused(split("screws", " ", &["s1"], false)), EditError::NameEmpty);
    assert!(matches!(refused(split("screws", "Union", &["s1"], false)), EditError::NameTaken { .. }));
    assert!(matches!(refused(split("screws", "long screws", &["s1"], false)), EditError::NameTaken { .. }));
    assert_eq!(refused(split("screws", "x", &["s9"], false)), EditError::NoSuchStep("s9".into()));
    assert_eq!(refused(split("nothing", "x", &["s1"], false)), EditError::NoSuchThing("nothing".into()));
}

#[test]
fn undo_and_merging_both_make_one_of_them_again() {
    let before = document();
    let mut session = Session::new(before.clone());
    session.edit(&[split("screws", "side screws", &["s2"], true)], "split", None, 0).expect("applies");
    let after = session.document().clone();
    assert!(session.undo().is_some() && Arc::ptr_eq(session.document(), &before));
    assert!(session.redo().is_some() && Arc::ptr_eq(session.document(), &after));
    let merge = Edit::Merge { keep: "screws".into(), gone: "new".into(), choices: Vec::new() };
    let one = apply(&after, &merge).expect("a copy differs in nothing").document;
    assert_eq!(one.map.connections[0].aliases, ["long screws", "side screws"]);
    assert!(one.steps.iter().zip(&before.steps).all(|(now, then)| now.actions[0].on == then.actions[0].on));
}
