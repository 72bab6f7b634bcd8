//! What is still to be found out, and the answers.

use super::editor_store::EditorStore;
use leptos::prelude::*;
use procedures_schema::capture::found_out;
use procedures_schema::model::{OpenValue, open_values};

impl EditorStore {
    /// Every value that is still to be found out.
    pub fn open_values(self) -> Memo<Vec<OpenValue>> {
        let document = self.document();
        Memo::new(move |_| document.with(|document| open_values(document)))
    }

    /// Puts an answer where it was missing.
    ///
    /// # Errors
    /// If it is not taken; the reason is for people.
    pub fn answer_open(self, open: &OpenValue, typed: &str) -> Result<(), String> {
        let edit = found_out(&self.document_now(), &open.place, typed).map_err(|refused| refused.0)?;
        let label = format!("find out: {}", open.what);
        // Why nothing can be written here at all is shown as a notice.
        if self.edit(&[edit], &label, None) { Ok(()) } else { Err("nothing was changed".to_owned()) }
    }
}
