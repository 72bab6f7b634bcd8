//! The keys that begin something.

use crate::desk::{self, DeskPart};
use crate::storage::file_access;
use leptos::prelude::*;

/// A new procedure, one like the open one, a file.
#[component]
pub fn Begin(
    /// The editor, which may not be there yet.
    part: DeskPart,
) -> impl IntoView {
    let input = NodeRef::<leptos::html::Input>::new();
    let picked = move |event: web_sys::Event| {
        let field: web_sys::HtmlInputElement = event_target(&event);
        if let Some(file) = field.files().and_then(|files| files.get(0)) {
            part.begin(desk::Begin::File(file));
        }
        field.set_value("");
    };
    let open = move |_| {
        if file_access::is_there() {
            part.begin(desk::Begin::FileInHand);
        } else if let Some(input) = input.get_untracked() {
            input.click();
        }
    };
    let like_open = move || {
        part.open_now().filter(|open| !open.is_blank).map(|open| {
            let words = format!("New from \"{}\"", open.title);
            view! { <button type="button" class="key" on:click=move |_| part.begin(desk::Begin::LikeOpen)>{words}</button> }
        })
    };
    view! {
        <div class="begin">
            <button type="button" class="key first" on:click=move |_| part.begin(desk::Begin::New)>"New procedure"</button>
            {like_open}
            <button type="button" class="key" on:click=open>"Open a file"</button>
            <input type="file" class="hidden" aria-label="File to open" tabindex="-1" node_ref=input on:change=picked />
        </div>
    }
}
