//! Opening a file that a person picked or dropped.

use super::EditorStore;
use crate::storage::files;
use leptos::prelude::*;
use leptos::task::spawn_local;

/// Opens it; if it cannot be read, says why and changes nothing.
pub fn open_file(store: EditorStore, file: web_sys::File) {
    spawn_local(async move {
        match files::bytes_of(&file).await {
            Ok(bytes) => {
                store.open_bytes(&file.name(), &bytes);
            }
            Err(reason) => store.notice().set(Some(reason)),
        }
    });
}
