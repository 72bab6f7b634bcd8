//! What has to be told until it is read, such as why something was not done.

use super::changed_file::ChangedFileBar;
use crate::state::EditorStore;
use leptos::prelude::*;

/// Why something was not done; it stays until it is read.
#[component]
pub fn Notice(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let notice = store.notice();
    view! {
        <ChangedFileBar store />
        <div role="alert">
            {move || notice.get().map(|words| view! {
                <p class="banner notice">
                    <span>{words}</span>
                    <button type="button" class="key" on:click=move |_| notice.set(None)>"Close"</button>
                </p>
            })}
        </div>
    }
}
