//! The screen Earlier versions as a whole.

use super::found::Found;
use super::list::VersionList;
use super::look::Look;
use crate::frame::plain_screen::PlainScreen;
use crate::route::{Screen, go};
use crate::state::EditorStore;
use leptos::prelude::*;

/// Everything of Earlier versions.
#[component]
pub fn VersionsScreen(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let found = Found::of(store);
    let chosen = RwSignal::new(None);
    let words = move || match found.stamps.get() {
        None => "Looking …".to_owned(),
        Some(Err(reason)) => reason,
        Some(Ok(stamps)) if stamps.is_empty() => {
            "There is none yet. One is kept whenever you go on writing after a \
                                                 pause, at most every five minutes."
                .to_owned()
        }
        Some(Ok(_)) => {
            "The last twenty, and the last of each of the last fourteen days. To look changes nothing."
                .to_owned()
        }
    };
    view! {
        <PlainScreen store shown=Screen::Versions class="versions">
            <div class="versions-line">
                <h2 class="stage">"Earlier versions"</h2>
                <p class="empty">{words}</p>
                <VersionList store found chosen />
                <button type="button" class="key" on:click=move |_| go(Screen::Write)>"Back to Write"</button>
            </div>
            <Look store found chosen />
        </PlainScreen>
    }
}
