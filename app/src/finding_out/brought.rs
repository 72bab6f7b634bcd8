//! Answers that come back: the keys for the sheet and for files, and what a file holds.

use crate::components::capital::capital;
use crate::route::{Screen, go};
use crate::state::found::FoundFile;
use crate::state::{EditorStore, clock, files};
use leptos::prelude::*;
use procedures_schema::model::Found;
use wasm_bindgen::JsCast;

/// The keys above the form.
#[component]
pub fn SheetKeys(
    /// The editor's state.
    store: EditorStore,
    /// Whether something is open.
    has_open: Signal<bool>,
    /// What stands before them.
    children: Children,
) -> impl IntoView {
    let input = NodeRef::<leptos::html::Input>::new();
    let picked = move |event: web_sys::Event| {
        let field: web_sys::HtmlInputElement = event_target(&event);
        if let Some(file) = field.files().and_then(|files| files.get(0)) {
            files::answers_from(store, file);
        }
        // So that the same file can be picked again.
        field.set_value("");
    };
    let pick = move |_| {
        if let Some(input) = input.get_untracked() {
            input.unchecked_ref::<web_sys::HtmlElement>().click();
        }
    };
    let print = move |_| {
        store.want_sheet();
        go(Screen::Print);
    };
    // No `accept`: tablets grey out endings that they do not know.
    view! {
        <p class="sheet-keys">
            <input type="file" class="hidden answers" aria-label="File with answers" tabindex="-1" node_ref=input on:change=picked />
            {children()}
            <button type="button" class="key" on:click=pick>"Answers from a file"</button>
            {move || has_open.get().then(|| view! {
                <button type="button" class="key" on:click=print>"Print the sheet"</button>
            })}
        </p>
    }
}

/// What each file of answers holds, and what has no place here.
#[component]
pub fn FoundFiles(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let files = store.found_files();
    move || files.with(|files| files.iter().map(told).collect_view())
}

fn told(file: &FoundFile) -> impl IntoView + use<> {
    let n = file.found.answers.len();
    let answers = if n == 1 { "one answer".to_owned() } else { format!("{n} answers") };
    let when = file.found.answers.iter().map(|found| found.time).max();
    let when = when.map(|time| clock::day_and_minute(clock::ms_of(&time), clock::now_ms()));
    let when = when.map(|when| format!(", {when}")).unwrap_or_default();
    let of = match file.found.revision.as_str() {
        "" => String::new(),
        revision => format!(", on revision {revision}"),
    };
    let without = |(found, reason): &(Found, String)| {
        view! { <li>{capital(&found.what)} ": " <strong>{found.answer.clone()}</strong> " – " {reason.clone()}</li> }
    };
    let without: Vec<_> = file.without_place.iter().map(without).collect();
    let without = (!without.is_empty()).then(|| {
        view! { <p>"Not to be taken here:"</p><ul>{without}</ul> }
    });
    view! {
        <section class="found-file" aria-label=file.name.clone()>
            <p role="status">{file.name.clone()} ": " {answers} " found on a job" {when} {of} "."</p>
            {without}
        </section>
    }
}
