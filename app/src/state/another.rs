//! What words in doubt may mean besides the things that are known by them: one more of the kind, which is made when
//! somebody says so, together with what is done to it, as one entry of undo.

use super::doubts::{Open, add_in_order, step_of};
use super::editor_store::EditorStore;
use super::ids::RandomIds;
use super::judged::Judged;
use super::making::Fresh;
use super::rereading;
use leptos::prelude::*;
use procedures_schema::capture::{Another, Doubt, another};
use procedures_schema::edit::Edit;
use procedures_schema::model::{Id, IdSource, NumberedIds, Step};
use std::sync::Arc;

/// One more thing, as it is offered.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OneMore {
    /// "a new return valve".
    pub name: String,
    /// What is to be known of it: its circuit, or that nothing is known yet.
    pub stands: String,
}

/// What more a doubt in the words of a step may mean.
pub(super) fn others_of(judged: &Judged, id: &Id, doubt: &Doubt, ids: &mut dyn IdSource) -> Vec<Another> {
    let Some((position, step)) = step_of(&judged.document, id) else { return Vec::new() };
    let document = &judged.document;
    let (place, given) = (rereading::place_before(position), rereading::given_before(document, position));
    another(&step.words, doubt, &document.map, &judged.trace, place, &step.stage, given, ids)
}

/// The edits that make it and let a step do to it what its words say.
pub(super) fn with_another(step: &Step, new: &Another) -> Vec<Edit> {
    let mut step = Step::clone(step);
    new.actions.iter().for_each(|action| add_in_order(&mut step.actions, action.clone()));
    vec![Edit::SetMap(new.map.clone()), Edit::SetStep { step: Arc::new(step) }]
}

impl EditorStore {
    /// What is offered as new, behind the answers of a question about words of a step.
    pub fn offered_as_new(self, id: &Id, open: &Open) -> Vec<OneMore> {
        let Open::Thing(doubt) = open else { return Vec::new() };
        let judged = self.judged_now();
        let others = others_of(&judged, id, doubt, &mut NumberedIds::default());
        let offer = |new: Another| OneMore {
            name: format!("a new {}", new.name),
            stands: new
                .circuit
                .map_or_else(|| "not on the appliance yet".to_owned(), |kind| kind.word().to_owned()),
        };
        others.into_iter().map(offer).collect()
    }

    /// Makes one more thing and says that the words of a step mean it.
    pub(super) fn say_another(self, id: &Id, doubt: &Doubt, nth: usize) -> bool {
        let judged = self.judged_now();
        let Some(new) = others_of(&judged, id, doubt, &mut RandomIds).into_iter().nth(nth) else {
            return false;
        };
        let Some((position, step)) = step_of(&judged.document, id) else { return false };
        let label = format!("say that step {} means a new {}", position + 1, new.name);
        let done = self.edit(&with_another(step, &new), &label, None);
        if done {
            self.tell_another(id, &new);
        }
        done
    }

    pub(super) fn tell_another(self, step: &Id, new: &Another) {
        let names = new.made.iter().map(|made| made.name.clone()).collect();
        self.fresh().set(Some(Fresh { step: step.clone(), names, thing: new.thing.clone() }));
    }
}
