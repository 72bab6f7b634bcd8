//! The Procedures screen as a whole.

use super::shelf_row::ShelfRow;
use crate::components::caution::Caution;
use crate::route::{Screen, Tabs, go};
use crate::state::shelf::{OnShelf, SAMPLES, on_shelf};
use crate::state::{EditorStore, files};
use leptos::prelude::*;
use leptos::task::spawn_local;

/// What is on this device, as far as it has been looked at.
type Shelf = RwSignal<Option<Result<Vec<OnShelf>, String>>>;

/// Everything of Procedures.
#[component]
pub fn ProceduresScreen(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let shelf: Shelf = RwSignal::new(None);
    let look = move || spawn_local(async move { shelf.set(Some(on_shelf().await)) });
    look();
    view! {
        <div class="procedures">
            <header class="plain-head">
                <h1 class="name">"Putback"</h1>
                <Tabs shown=Screen::Procedures />
            </header>
            <main>
                <Notice store />
                <Begin store />
                <section aria-labelledby="on-device">
                    <h2 id="on-device" class="stage">"On this device"</h2>
                    {move || shelf.get().map(|found| listed(store, found, look))}
                </section>
                <Samples store />
                <Caution />
            </main>
        </div>
    }
}

/// The list, those that were removed below the others.
fn listed(
    store: EditorStore,
    found: Result<Vec<OnShelf>, String>,
    look: impl Fn() + Copy + Send + Sync + 'static,
) -> AnyView {
    let all = match found {
        Ok(all) => all,
        Err(reason) => return view! { <p class="notice" role="alert">{reason}</p> }.into_any(),
    };
    if all.is_empty() {
        let words = "Nothing here yet. What you write is kept on this device from the first key on.";
        return view! { <p class="empty">{words}</p> }.into_any();
    }
    let (removed, here): (Vec<_>, Vec<_>) = all.into_iter().partition(|one| one.removed_ms.is_some());
    let rows = move |list: Vec<OnShelf>| {
        list.into_iter().map(|one| view! { <ShelfRow store one changed=look /> }).collect_view()
    };
    let bin = (!removed.is_empty()).then(|| {
        view! { <h3 class="removed-heading">"Removed; can be brought back for 30 days"</h3><ul class="shelf">{rows(removed)}</ul> }
    });
    view! { <ul class="shelf">{rows(here)}</ul> {bin} }.into_any()
}

/// The keys that begin something.
#[component]
fn Begin(store: EditorStore) -> impl IntoView {
    let input = NodeRef::<leptos::html::Input>::new();
    let picked = move |event: web_sys::Event| {
        let field: web_sys::HtmlInputElement = event_target(&event);
        if let Some(file) = field.files().and_then(|files| files.get(0)) {
            files::open_file(store, file);
            go(Screen::Write);
        }
        field.set_value("");
    };
    let new = move |_| {
        store.open_new();
        go(Screen::Appliance);
    };
    let copy = move |_| {
        store.open_new_from_this();
        go(Screen::Write);
    };
    let open = move |_| {
        if let Some(input) = input.get_untracked() {
            input.click();
        }
    };
    let this = move || store.document().with(|document| format!("New from \"{}\"", document.title));
    view! {
        <div class="begin">
            <button type="button" class="key first" on:click=new>"New procedure"</button>
            <button type="button" class="key" on:click=copy>{this}</button>
            <button type="button" class="key" on:click=open>"Open a file"</button>
            <input type="file" class="hidden" aria-label="File to open" tabindex="-1" node_ref=input on:change=picked />
        </div>
    }
}

/// The invented procedures that come with the page.
#[component]
fn Samples(store: EditorStore) -> impl IntoView {
    let open = move |name: &'static str| {
        spawn_local(async move {
            match store.open_sample(name).await {
                Ok(()) => go(Screen::Write),
                Err(reason) => store.notice().set(Some(reason)),
            }
        });
    };
    let row = move |(name, about): (&'static str, &'static str)| {
        view! {
            <li>
                <span class="about">{about}</span>
                <button type="button" class="key" aria-label=format!("Open a copy of {about}") on:click=move |_| open(name)>"Open a copy"</button>
            </li>
        }
    };
    view! {
        <section aria-labelledby="samples">
            <h2 id="samples" class="stage">"To look at: invented, with invented figures"</h2>
            <ul class="shelf">{SAMPLES.map(row)}</ul>
        </section>
    }
}

/// Why something was not done.
#[component]
fn Notice(store: EditorStore) -> impl IntoView {
    let notice = store.notice();
    view! { <div role="alert">{move || notice.get().map(|words| view! { <p class="notice">{words}</p> })}</div> }
}
