//! Equal questions of a pasted text: asked once, and answered for all the steps that ask the same.
//!
//! The answer goes to each step that the writer has not taken out of it, and where it leaves nothing open in
//! others they are read to their end; all of that is one entry of undo.

use super::another::others_of;
use super::doubts::{Open, add_in_order, open_doubts, step_of, told};
use super::editor_store::EditorStore;
use super::ids::RandomIds;
use super::judged::Judged;
use super::making::{making, with_things};
use super::rereading;
use leptos::prelude::*;
use procedures_schema::capture::{Answer, Meaning, Question};
use procedures_schema::edit::{Edit, apply};
use procedures_schema::model::{Action, Id, Step};
use std::sync::Arc;

/// Another step in which the same is asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Alike {
    /// The step.
    pub step: Id,
    /// Its number, from 1.
    pub number: usize,
    /// Its words.
    pub words: String,
}

/// What makes two questions equal: the words, and what can be answered. The verb may be another: what is closed is
/// opened again.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Asked {
    Thing(String, Vec<Id>),
    Making(String, Vec<Meaning>),
}

impl Asked {
    /// Of a question about some words.
    pub(super) fn of(open: &Open, words: &str) -> Self {
        match open {
            Open::Thing(doubt) => {
                let mut things: Vec<Id> = doubt.choices.iter().map(|choice| choice.thing.clone()).collect();
                things.sort_unstable();
                Self::Thing(doubt.span.of(words).to_lowercase(), things)
            }
            Open::Making(Question { question, choices, .. }) => {
                Self::Making(question.clone(), choices.clone())
            }
        }
    }
}

impl EditorStore {
    /// The other steps of the text that was pasted last in which the same is asked.
    pub fn alike(self, id: &Id, open: &Open) -> Vec<Alike> {
        let Some(review) = self.review().get_untracked() else { return Vec::new() };
        let judged = self.judged_now();
        let Some((_, step)) = step_of(&judged.document, id) else { return Vec::new() };
        let asked = Asked::of(open, &step.words);
        let other = |other: &Id| {
            let (position, step) = step_of(&judged.document, other)?;
            let mut all = open_doubts(&judged, other).into_iter();
            let words = judged.document.words_of(step);
            all.any(|open| Asked::of(&open, &step.words) == asked).then(|| Alike {
                step: other.clone(),
                number: position + 1,
                words,
            })
        };
        let others = review.steps.iter().filter(|one| one.is_asked && one.step.id != *id);
        others.filter_map(|one| other(&one.step.id)).collect()
    }

    /// Takes one of the choices, or none of them, in several steps that ask the same.
    pub(super) fn settle_alike(self, steps: &[&Id], open: &Open, choice: Option<usize>) -> bool {
        let judged = self.judged_now();
        let Some((_, first)) = steps.first().and_then(|id| step_of(&judged.document, id)) else {
            return false;
        };
        let asked = Asked::of(open, &first.words);
        let Some((mut edits, what)) = edits(judged.clone(), steps, open, &asked, choice) else {
            return false;
        };
        if let Some(after) = after(&judged, &edits) {
            let asked: Vec<Id> =
                self.asked_in_review().into_iter().filter(|id| !steps.contains(&id)).collect();
            edits.extend(clear(after, &asked));
        }
        let label = match steps.len() {
            1 => what,
            n => format!("{what} in {n} steps"),
        };
        self.edit(&edits, &label, None)
    }
}

/// The edits, and what they do in words.
fn edits(
    judged: Arc<Judged>,
    steps: &[&Id],
    open: &Open,
    asked: &Asked,
    choice: Option<usize>,
) -> Option<(Vec<Edit>, String)> {
    match (open, choice) {
        (Open::Making(question), Some(choice)) => {
            let means = question.choices.get(choice)?;
            Some((with_answer(judged, steps, asked, means), format!("say that it is {}", told(means))))
        }
        (Open::Thing(doubt), Some(nth)) if nth >= doubt.choices.len() => {
            let first = steps.first()?;
            let nth = nth - doubt.choices.len();
            let new = others_of(&judged, first, doubt, &mut RandomIds).into_iter().nth(nth)?;
            let say = |step: &mut Step, open: &Open| {
                let Open::Thing(doubt) = open else { return };
                if let Some(own) = doubt.choices.first() {
                    let on = vec![new.thing.clone()];
                    let all = own.actions().map(|action| Action { on: on.clone(), ..action.clone() });
                    all.for_each(|action| add_in_order(&mut step.actions, action));
                }
            };
            let mut edits = vec![Edit::SetMap(new.map.clone())];
            edits.extend(in_each(&judged, steps, asked, &say));
            Some((edits, format!("say that it means a new {}", new.name)))
        }
        (Open::Thing(doubt), Some(choice)) => {
            let choice = doubt.choices.get(choice)?;
            let say = |step: &mut Step, open: &Open| {
                let Open::Thing(doubt) = open else { return };
                if let Some(own) = doubt.choices.iter().find(|own| own.thing == choice.thing) {
                    own.actions().for_each(|action| add_in_order(&mut step.actions, action.clone()));
                }
            };
            Some((in_each(&judged, steps, asked, &say), format!("say that it means the {}", choice.name)))
        }
        (_, None) => {
            let decline =
                |step: &mut Step, open: &Open| step.declined.push(open.span().of(&step.words).to_owned());
            Some((in_each(&judged, steps, asked, &decline), "leave words as text".to_owned()))
        }
    }
}

/// Changes each step by what is asked in it.
fn in_each(judged: &Judged, steps: &[&Id], asked: &Asked, change: &dyn Fn(&mut Step, &Open)) -> Vec<Edit> {
    let changed = |id: &&Id| {
        let (_, step) = step_of(&judged.document, id)?;
        let mut changed = Step::clone(step);
        let same = |open: &Open| Asked::of(open, &step.words) == *asked;
        open_doubts(judged, id).iter().filter(|open| same(open)).for_each(|open| change(&mut changed, open));
        Some(Edit::SetStep { step: Arc::new(changed) })
    };
    steps.iter().filter_map(changed).collect()
}

/// Says what a name means, or of which circuit a new thing is. The first step makes it; the others are read again after it, because they
/// then name what is there.
fn with_answer(mut judged: Arc<Judged>, steps: &[&Id], asked: &Asked, means: &Meaning) -> Vec<Edit> {
    let mut edits = Vec::new();
    for id in steps {
        let Some((position, step)) = step_of(&judged.document, id) else { continue };
        if !rereading::is_as_read(&judged, position, step) {
            continue;
        }
        let open = open_doubts(&judged, id).into_iter().filter(|open| Asked::of(open, &step.words) == *asked);
        let answers: Vec<Answer> =
            open.map(|open| Answer { span: open.span(), means: means.clone() }).collect();
        let Some(next) = read_anew(&judged, position, step, &answers) else { continue };
        if let Some(after) = after(&judged, &next) {
            judged = after;
            edits.extend(next);
        }
    }
    edits
}

/// The edits by which a step does what its words say with these answers; none if they say nothing to do.
fn read_anew(judged: &Judged, position: usize, step: &Arc<Step>, answers: &[Answer]) -> Option<Vec<Edit>> {
    let mut made = making(judged, position, step, answers, &mut RandomIds);
    rereading::drop_declined(&mut made.reading.actions, &step.declined, &step.words);
    let actions = made.reading.actions.clone();
    let says_something = !actions.is_empty();
    let step = Arc::new(Step { actions, ..Step::clone(step) });
    says_something.then(|| with_things(&made, Edit::SetStep { step }))
}

/// What the document is after some edits; none if they cannot be applied.
fn after(judged: &Judged, edits: &[Edit]) -> Option<Arc<Judged>> {
    let apply_one = |document, edit| apply(&document, edit).map(|applied| applied.document);
    let document = edits.iter().try_fold(judged.document.clone(), apply_one).ok()?;
    Some(Arc::new(Judged::of(document)))
}

/// Reads those steps to their end in which nothing is open any more, because the answer has left one thing only.
fn clear(mut judged: Arc<Judged>, asked: &[Id]) -> Vec<Edit> {
    let mut edits = Vec::new();
    for id in asked {
        let Some((position, step)) = step_of(&judged.document, id) else { continue };
        let is_clear = step.actions.is_empty() && open_doubts(&judged, id).is_empty();
        if !is_clear {
            continue;
        }
        let Some(next) = read_anew(&judged, position, step, &[]) else { continue };
        if let Some(after) = after(&judged, &next) {
            judged = after;
            edits.extend(next);
        }
    }
    edits
}

#[cfg(test)]
mod tests {
    use super::{Asked, edits};
    use crate::state::doubts::{Open, open_doubts};
    use crate::state::judged::Judged;
    use procedures_schema::edit::apply;
    use procedures_schema::model::{Id, Procedure, Stage, Step};
    use std::sync::Arc;
    use wasm_bindgen_test::wasm_bindgen_test;

    const MAP: &str = r#"{
      "circuits": [{"id": "H", "name": "heating", "kind": "heating water", "sections": [{"id": "sys", "name": "system"}]},
        {"id": "G", "name": "gas", "kind": "fuel gas", "sections": [{"id": "g", "name": "pipes"}]}],
      "isolators": [{"id": "va", "name": "flow valve", "between": ["supply", "sys"], "handle": "valve"},
        {"id": "vb", "name": "return valve", "between": ["supply", "sys"], "handle": "valve"}]
    }"#;

    fn judged(steps: &[&str]) -> Arc<Judged> {
        let mut document = Procedure::new("p".into(), "P");
        document.map = procedures_schema::format::read_part(MAP).map(Arc::new).expect("a map");
        let step = |(at, words): (usize, &&str)| Step::new(Id::new(&format!("s{at}")), Stage::Strip, words);
        document.steps = steps.iter().enumerate().map(step).map(Arc::new).collect();
        Arc::new(Judged::of(Arc::new(document)))
    }

    fn after(judged: &Arc<Judged>, at: &[&str], choice: Option<usize>) -> Arc<Judged> {
        let ids: Vec<Id> = at.iter().copied().map(Id::new).collect();
        let ids: Vec<&Id> = ids.iter().collect();
        let open: Open = open_doubts(judged, ids[0]).remove(0);
        let words = &judged.document.steps.iter().find(|step| step.id == *ids[0]).expect("there").words;
        let (edits, _) =
            edits(judged.clone(), &ids, &open, &Asked::of(&open, words), choice).expect("answered");
        let document = edits.iter().fold(judged.document.clone(), |document, edit| {
            apply(&document, edit).expect("applies").document
        });
        Arc::new(Judged::of(document))
    }

    #[wasm_bindgen_test]
    fn one_answer_settles_all_that_ask_the_same_whatever_the_verb() {
        let judged = judged(&["Close the valve.", "Close the VALVE again.", "Close the valve."]);
        let after = after(&judged, &["s0", "s1"], Some(1));
        let on =
            |at: usize| after.document.steps[at].actions.iter().map(|a| a.on.clone()).collect::<Vec<_>>();
        assert_eq!(on(0), [vec![Id::new("vb")]]);
        assert_eq!(on(1), [vec![Id::new("vb")]]);
        assert!(on(2).is_empty(), "what was taken out of it stays open");
        assert!(open_doubts(&after, &"s0".into()).is_empty() && open_doubts(&after, &"s1".into()).is_empty());
    }

    #[wasm_bindgen_test]
    fn what_an_answer_leaves_one_thing_for_is_read_to_its_end() {
        let judged = judged(&["Close the valve.", "Close one of the valves."]);
        let after = after(&judged, &["s0"], Some(0));
        let edits = super::clear(after, &["s1".into()]);
        let [procedures_schema::edit::Edit::SetStep { step }] = edits.as_slice() else { panic!("{edits:?}") };
        assert_eq!(step.actions.iter().map(|a| a.on.clone()).collect::<Vec<_>>(), [vec![Id::new("vb")]]);
    }

    #[wasm_bindgen_test]
    fn a_new_thing_is_made_once_and_named_by_the_others() {
        let judged = judged(&["Undo the union nut.", "Do up the union nut."]);
        let after = after(&judged, &["s0", "s1"], Some(0));
        let [joint] = after.document.map.connections.as_slice() else {
            panic!("{:?}", after.document.map.connections)
        };
        for step in &after.document.steps {
            assert_eq!(
                step.actions.iter().map(|a| a.on.clone()).collect::<Vec<_>>(),
                [vec![joint.id.clone()]]
            );
        }
    }

    #[wasm_bindgen_test]
    fn what_is_none_of_them_is_made_once_and_meant_by_all() {
        let judged = judged(&["Close the valve.", "Close the valve again."]);
        let Open::Thing(doubt) = open_doubts(&judged, &"s0".into()).remove(0) else { panic!("a thing") };
        let after = after(&judged, &["s0", "s1"], Some(doubt.choices.len()));
        let [.., new] = after.document.map.isolators.as_slice() else { panic!("made") };
        assert_eq!((after.document.map.isolators.len(), new.name.as_str()), (3, "valve"));
        for step in &after.document.steps {
            assert_eq!(step.actions.iter().map(|a| a.on.clone()).collect::<Vec<_>>(), [vec![new.id.clone()]]);
        }
    }

    #[wasm_bindgen_test]
    fn none_of_them_leaves_the_words_of_all_as_text() {
        let judged = judged(&["Close the valve.", "Close the valve."]);
        let after = after(&judged, &["s0", "s1"], None);
        assert!(
            after.document.steps.iter().all(|step| step.declined == ["valve"] && step.actions.is_empty())
        );
    }
}
