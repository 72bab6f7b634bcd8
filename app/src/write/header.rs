//! The head of Write: what is open, the verdict, whether it is kept, undo, files.

use crate::frame::judged_by::judged_by;
use crate::frame::later_key::LaterKey;
use crate::frame::stamp::{Besides, Stamp};
use crate::route::{Screen, Tabs, go};
use crate::state::filing::Filed;
use crate::state::keeping::Kept;
use crate::state::shelf::UNTITLED;
use crate::state::{Command, EditorStore, clock, files};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// The head, in two lines.
#[component]
pub fn Header(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let told = store.told();
    let title = Memo::new(move |_| told.with(|told| told.title.clone()));
    view! {
        <div class="head">
            <div class="first">
                <h1 class="name">"Putback"</h1>
                <Tabs shown=Screen::Write />
                <input
                    class="title" aria-label="Title" placeholder="Title" spellcheck="false"
                    prop:value=title
                    on:focus=select_untitled
                    on:input=move |event| store.run(Command::SetTitle(event_target_value(&event)))
                    on:blur=move |_| store.close_group()
                />
                <Verdict store />
            </div>
            <div class="second">
                <KeptLine store />
                <FileKeys store />
                <UndoKeys store />
                <LaterKey store />
                <NextFinding store />
                <ToldOf store />
            </div>
        </div>
    }
}

/// What stands for a title gives way to the first letter that is typed.
fn select_untitled(event: web_sys::FocusEvent) {
    let field: web_sys::HtmlInputElement = event_target(&event);
    if field.value() == UNTITLED {
        field.select();
    }
}

/// The verdict, and by what it was reached.
#[component]
fn Verdict(store: EditorStore) -> impl IntoView {
    let by = judged_by(store);
    view! {
        <div class="verdict" role="status">
            <Stamp store />
            <Besides store is_first=false />
            <span class="by">{by}</span>
        </div>
    }
}

/// The ways to what is wrong and to what was accepted, wherever it stands.
#[component]
fn NextFinding(store: EditorStore) -> impl IntoView {
    let finds = Memo::new(move |_| store.told().with(|told| told.has_findings));
    // It keeps its place, so that the head does not grow when something is found.
    let unseen = move || (!finds.get()).then_some("hidden");
    let key = view! {
        <button
            type="button" class="quiet" title="F8" style:visibility=unseen
            on:click=move |_| store.run(Command::NextFinding)
        >"Next finding"</button>
    };
    let n_accepted = store.n_accepted();
    let accepted = move || {
        let n = n_accepted.get();
        (n > 0).then(|| {
            let name = format!("{n} accepted");
            view! { <button type="button" class="quiet" on:click=move |_| store.run(Command::LookAtAccepted)>{name}</button> }
        })
    };
    view! { <span class="keys">{accepted} {key}</span> }
}

/// Whether the work is kept on this device.
#[component]
fn KeptLine(store: EditorStore) -> impl IntoView {
    let kept = store.keeper().state();
    let words = move || match kept.get() {
        Kept::Untouched => "nothing to keep yet".to_owned(),
        Kept::Keeping => "keeping …".to_owned(),
        Kept::At(at) => format!("kept {}", clock::to_the_second(at)),
        Kept::Slow => "not kept yet".to_owned(),
        Kept::Not(refusal) => format!("not kept since {}", clock::to_the_second(refusal.since_ms)),
    };
    let is_not = move || kept.with(|kept| matches!(kept, Kept::Slow | Kept::Not(_)));
    view! { <span id="kept" class="kept" class:not=is_not>{words}</span> }
}

#[component]
fn UndoKeys(store: EditorStore) -> impl IntoView {
    let labels = store.undo_labels();
    let undo = move || {
        labels.with(|(undo, _)| undo.as_ref().map_or("Undo".to_owned(), |label| format!("Undo: {label}")))
    };
    let cannot_undo = move || labels.with(|(undo, _)| undo.is_none());
    let cannot_redo = move || labels.with(|(_, redo)| redo.is_none());
    let redo_title = move || labels.with(|(_, redo)| redo.clone());
    view! {
        <span class="keys undo">
            <button type="button" class="quiet" title=undo disabled=cannot_undo on:click=move |_| store.run(Command::Undo)>{undo}</button>
            <button
                type="button" class="quiet" title=redo_title disabled=cannot_redo
                on:click=move |_| store.run(Command::Redo)
            >"Redo"</button>
        </span>
    }
}

#[component]
fn FileKeys(store: EditorStore) -> impl IntoView {
    let input = NodeRef::<leptos::html::Input>::new();
    let picked = move |event: web_sys::Event| {
        let field: web_sys::HtmlInputElement = event_target(&event);
        if let Some(file) = field.files().and_then(|files| files.get(0)) {
            files::open_file(store, file, || ());
        }
        // So that the same file can be picked again after it was mended.
        field.set_value("");
    };
    let open = move |_| {
        if EditorStore::has_files_in_hand() {
            store.open_in_hand(Callback::new(|()| ()));
        } else if let Some(input) = input.get_untracked() {
            input.unchecked_ref::<web_sys::HtmlElement>().click();
        }
    };
    // No `accept`: tablets grey out endings that they do not know.
    view! {
        <span class="keys">
            <input type="file" class="hidden" aria-label="File to open" tabindex="-1" node_ref=input on:change=picked />
            <button type="button" class="quiet" title="Ctrl+O" on:click=open>"Open"</button>
            <button type="button" class="quiet" title="Ctrl+S" on:click=move |_| store.save()>"Save"</button>
            <button type="button" class="quiet" on:click=move |_| go(Screen::Versions)>"Earlier"</button>
            <button type="button" class="quiet" on:click=move |_| go(Screen::Print)>"Print"</button>
            <FiledWords store />
        </span>
    }
}

/// Whether it is in a file as it is now, once there was a file.
#[component]
fn FiledWords(store: EditorStore) -> impl IntoView {
    let filed = store.filed();
    let words = move || match filed.get() {
        None | Some(Filed::Opened) => String::new(),
        Some(Filed::At(at)) => format!("saved {}", clock::to_the_second(at)),
        Some(Filed::NotSince(at)) => format!("not in a file since {}", clock::to_the_minute(at)),
    };
    view! { <span id="filed" class="filed" role="status">{words}</span> }
}

/// What the verdict rests on, and what it cannot know: read whole, on a line of its own where there is no room.
#[component]
fn ToldOf(store: EditorStore) -> impl IntoView {
    let told_of = move || {
        let circuits = store.told().with(|told| told.told_of.join(", "));
        if circuits.is_empty() { "told of no circuit yet".to_owned() } else { format!("told of: {circuits}") }
    };
    let by = judged_by(store);
    let by = view! { <span class="by-narrow">{by}" · "</span> };
    view! { <p class="told">{by} {told_of} " · cannot know what nobody named"</p> }
}
