//! Phrases that a procedure has of its own: offered where a meaning was picked for words of no known verb, kept if
//! somebody wants that, and taken out again under Appliance.

use super::attention::Focus;
use super::doubts::step_of;
use super::editor_store::EditorStore;
use super::readings::Asking;
use leptos::prelude::*;
use procedures_schema::capture::own_phrase;
use procedures_schema::edit::Edit;
use procedures_schema::model::{Action, ApplianceMap, Id, OwnPhrase, Step};
use std::sync::Arc;

/// A phrase that can be kept, as long as nothing else is done.
#[derive(Clone, Debug, PartialEq)]
pub struct PhraseOffer {
    /// The step whose words hold it.
    pub step: Id,
    /// The phrase.
    pub phrase: OwnPhrase,
    /// What was picked.
    action: Action,
    /// Where the meaning was asked for.
    asking: Asking,
}

impl EditorStore {
    /// The phrase that is offered for words of a step.
    pub fn phrase_offered(self, step: Id) -> Memo<Option<PhraseOffer>> {
        let offer = self.offering();
        Memo::new(move |_| offer.with(|offer| offer.clone().filter(|offer| offer.step == step)))
    }

    /// Offers to keep the words of a meaning that has been picked; says whether there is anything to keep.
    pub(super) fn offer_phrase(self, id: &Id, action: &Action, asking: &Asking) -> bool {
        let document = self.document_now();
        let phrase = step_of(&document, id)
            .and_then(|(_, step)| own_phrase(&step.words, action, &document.map, &step.stage));
        let Some(phrase) = phrase else { return false };
        let (step, action, asking) = (id.clone(), action.clone(), asking.clone());
        self.offering().set(Some(PhraseOffer { step, phrase, action, asking }));
        self.look_at(Focus::Reading(id.clone()));
        true
    }

    /// Keeps the phrase that is offered, for the whole procedure.
    pub(super) fn keep_phrase(self, id: &Id) {
        let Some(offer) = self.offering().get_untracked().filter(|offer| offer.step == *id) else { return };
        let document = self.document_now();
        let mut map = ApplianceMap::clone(&document.map);
        map.phrases.retain(|known| !known.is_called(&offer.phrase.words));
        map.phrases.push(offer.phrase.clone());
        let mut edits = vec![Edit::SetMap(Arc::new(map))];
        if let Some((_, step)) = step_of(&document, id) {
            // The phrase says it from now on.
            let mut step = Step::clone(step);
            let picked = step.actions.iter_mut().filter(|action| **action == offer.action);
            picked.for_each(|action| action.meant_by = None);
            edits.push(Edit::SetStep { step: Arc::new(step) });
        }
        let OwnPhrase { words, verb, .. } = &offer.phrase;
        self.edit(&edits, &format!("read \"{words}\" as {verb}"), None);
        self.leave_readings(&offer.asking);
    }

    /// Leaves the phrase that is offered to its own step.
    pub(super) fn leave_phrase(self) {
        if let Some(offer) = self.offering().get_untracked() {
            self.offering().set(None);
            self.leave_readings(&offer.asking);
        }
    }

    /// Takes a phrase out of the procedure.
    pub fn forget_phrase(self, words: &str) {
        let label = format!("take the phrase {words} out");
        self.change_map(&label, None, |map| map.phrases.retain(|known| !known.is_called(words)));
    }
}
