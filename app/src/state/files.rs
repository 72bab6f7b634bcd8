//! Opening a file that a person picked or dropped.

use super::EditorStore;
use super::opening::Came;
use crate::storage::files;
use leptos::prelude::*;
use leptos::task::spawn_local;

/// Opens it, and goes on with `then`; if it cannot be read, says why and changes nothing. Answers found on a job lead
/// to where they are taken instead.
pub fn open_file(store: EditorStore, file: web_sys::File, then: impl FnOnce() + 'static) {
    spawn_local(async move {
        let came = match files::bytes_of(&file).await {
            Ok(bytes) => store.open_bytes(&file.name(), bytes, None).await,
            Err(reason) => {
                store.notice().set(Some(reason));
                Came::Nothing
            }
        };
        if came != Came::Answers {
            then();
        }
    });
}

/// Takes in a file that should hold answers found on a job.
pub fn answers_from(store: EditorStore, file: web_sys::File) {
    spawn_local(async move {
        match files::bytes_of(&file).await {
            Ok(bytes) => store.bring_found(&file.name(), &bytes),
            Err(reason) => store.notice().set(Some(reason)),
        }
    });
}
