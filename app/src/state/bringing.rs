//! The map of another procedure, of this device or of a file, brought into the open one.

use super::editor_store::EditorStore;
use super::ids::RandomIds;
use super::on_shelf::{OnShelf, kept, on_shelf};
use crate::storage::files;
use procedures_schema::derive::bring::{Bringing, bring};
use procedures_schema::format;
use procedures_schema::model::{Id, Procedure};
use std::collections::BTreeSet;
use std::sync::Arc;

/// A procedure of this device, to look at its map.
///
/// # Errors
/// In words, if it is not there any more or cannot be read.
pub async fn of_device(id: Id) -> Result<Arc<Procedure>, String> {
    with_map(kept(&id).await?.text.as_bytes())
}

/// The procedure in a file, to look at its map.
///
/// # Errors
/// In words, if it cannot be read.
pub async fn of_file(file: web_sys::File) -> Result<Arc<Procedure>, String> {
    let bytes = files::bytes_of(&file).await?;
    with_map(&bytes).map_err(|reason| format!("{}: {reason}", file.name()))
}

fn with_map(text: &[u8]) -> Result<Arc<Procedure>, String> {
    let document = format::read(text).map_err(|error| error.to_string())?;
    if document.map.things().next().is_none() {
        return Err(format!("There is nothing in the map of \"{}\".", document.title));
    }
    Ok(Arc::new(document))
}

impl EditorStore {
    /// The other procedures on this device that are not in the bin, the last kept first.
    ///
    /// # Errors
    /// In words, if the database cannot be read.
    pub async fn others_on_device(self) -> Result<Vec<OnShelf>, String> {
        let mut all = on_shelf().await?;
        let open = self.document_now().id.clone();
        all.retain(|one| one.id != open && one.removed_ms.is_none());
        Ok(all)
    }

    /// Brings what is chosen of another procedure's map into this one, as one entry of undo; says what came of it, if
    /// it was done.
    pub fn bring_map(
        self,
        from: &Procedure,
        chosen: &BTreeSet<Id>,
        apart: &BTreeSet<Id>,
    ) -> Option<Bringing> {
        let bringing = bring(from, &self.document_now(), chosen, apart, &mut RandomIds);
        let label = format!("bring the map from \"{}\"", from.title);
        (!bringing.edits.is_empty() && self.edit(&bringing.edits, &label, None)).then_some(bringing)
    }
}
