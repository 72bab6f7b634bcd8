//! A step whose words are being typed, as it was before, with the map at that time: by both it is told what the words
//! said and what somebody has set otherwise.

use super::editor_store::EditorStore;
use leptos::prelude::{GetValue, SetValue};
use procedures_schema::capture::follow_words;
use procedures_schema::model::{ApplianceMap, Procedure, Step};
use std::sync::Arc;

/// Where typing began.
#[derive(Clone)]
pub(super) struct Retyped {
    /// The step.
    pub(super) step: Arc<Step>,
    /// The map.
    pub(super) map: Arc<ApplianceMap>,
}

impl EditorStore {
    /// After undo or redo: where the map is no longer what the words make of it, typing has begun where they led.
    pub(super) fn begin_anew(self, document: &Procedure) {
        let Some(typed) = self.retyped().get_value() else { return };
        let at = document.position(&typed.step.id);
        let found = at.and_then(|at| Some((at, document.steps.get(at)?)));
        let begun = found
            .filter(|(at, step)| follow_words(document, *at, &typed.step, &typed.map, &step.words).is_some());
        if let Some((_, step)) = begun {
            self.retyped().set_value(Some(Retyped { step: step.clone(), map: document.map.clone() }));
        }
    }
}
