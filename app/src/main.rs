//! Mounts the application, and says which of it is fetched later.
//!
//! The build splits the program at the function [`make_editor`]: what only that reaches is a file of its own.

use leptos::prelude::{Owner, ReadSignal};
use putback_app::app;
use putback_app::desk::{Desk, Later, Source, Start};
use putback_app::editor;
use std::rc::Rc;
use wasm_split_helpers::{SplitLoaderError, wasm_split};

/// The second part of the page.
#[allow(clippy::unnecessary_wraps, reason = "the error is that of fetching it")]
#[wasm_split(editor, fallible, preload(fetch_editor))]
fn make_editor(
    start: Start,
    offline: ReadSignal<String>,
    owner: Owner,
) -> Result<Later<Rc<dyn Desk>>, SplitLoaderError> {
    Ok(Box::pin(editor::make(start, offline, owner)))
}

const SOURCE: Source = Source {
    fetch: || Box::pin(async { fetch_editor().await.map_err(|error| in_words(&error)) }),
    make: |start, offline, owner| {
        Box::pin(async move {
            match make_editor(start, offline, owner).await {
                Ok(editor) => Ok(editor.await),
                Err(error) => Err(in_words(&error)),
            }
        })
    },
};

/// The browser's log has the cause; the one who hears of it can only look at the network.
fn in_words(_: &SplitLoaderError) -> String {
    "The editor could not be fetched. Look whether this device has a network, and try again; if it has one, reload \
     the page."
        .to_owned()
}

fn main() {
    putback_app::panic_notice::install();
    app::mount(SOURCE);
}
