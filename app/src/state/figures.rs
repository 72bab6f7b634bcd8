//! A figure that words and map state differently: one of the two takes that of the other.

use super::attention::Focus;
use super::doubts::step_of;
use super::editor_store::EditorStore;
use super::rereading;
use procedures_schema::capture::{Differing, differing, take_words, write_value};
use procedures_schema::edit::Edit;
use procedures_schema::model::Id;
use std::sync::Arc;

impl EditorStore {
    /// Puts the figure of the words on the map.
    pub(super) fn take_figure(self, id: &Id, figure: &Differing) {
        let document = self.document_now();
        let is_so =
            step_of(&document, id).is_some_and(|(_, step)| differing(step, &document.map).contains(figure));
        if is_so {
            let label =
                format!("put {} of the {} on the map", figure.said, document.map.name_of(&figure.thing));
            if self.edit(&[Edit::SetMap(take_words(&document, figure))], &label, None) {
                self.look_at(Focus::Row(id.clone()));
            }
        }
    }

    /// Writes the figure of the map into the words.
    pub(super) fn write_figure(self, id: &Id, figure: &Differing) {
        let judged = self.judged_now();
        let Some((position, step)) = step_of(&judged.document, id) else { return };
        if differing(step, &judged.document.map).contains(figure) {
            let words = write_value(step, figure);
            let written = rereading::reread(&judged, position, step, step, &words);
            let label = format!("write {} in step {}", figure.held, position + 1);
            if self.edit(&[Edit::SetStep { step: Arc::new(written) }], &label, None) {
                self.look_at(Focus::Row(id.clone()));
            }
        }
    }
}
