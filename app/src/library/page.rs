//! The Procedures screen as a whole.

use super::bin::{Bin, BinKeys};
use super::shelf_row::ShelfRow;
use super::undo_bar::UndoBar;
use crate::components::caution::Caution;
use crate::frame::changed_file::ChangedFileBar;
use crate::frame::not_kept::NotKept;
use crate::frame::versions_line::VersionsLine;
use crate::route::{Screen, Tabs, go};
use crate::state::shelf::{OnShelf, SAMPLES, delete_for_good, on_shelf, set_removed};
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
    let removed = RwSignal::new(None);
    let show = move |outcome: Result<Option<OnShelf>, String>| {
        match outcome {
            Ok(one) => removed.set(one),
            Err(reason) => store.notice().set(Some(reason)),
        }
        look();
    };
    let change = move |one: OnShelf, change: Change| {
        let is_open = store.document().with_untracked(|document| document.id == one.id);
        if is_open && change == Change::Remove {
            store.remove_open(move |outcome| show(outcome.map(|is_done| is_done.then_some(one.clone()))));
            return;
        }
        spawn_local(async move {
            let outcome = match change {
                Change::Remove => set_removed(&one.id, true).await,
                Change::PutBack => set_removed(&one.id, false).await,
                Change::Delete => delete_for_good(&one.id).await,
            };
            show(outcome.map(|()| (change == Change::Remove).then_some(one)));
        });
    };
    let remove = Callback::new(move |one| change(one, Change::Remove));
    let put_back = Callback::new(move |one| change(one, Change::PutBack));
    let keys = BinKeys { put_back, delete: Callback::new(move |one| change(one, Change::Delete)) };
    view! {
        <div class="procedures">
            <header class="plain-head">
                <h1 class="name">"Putback"</h1>
                <Tabs shown=Screen::Procedures />
            </header>
            <NotKept store />
            <ChangedFileBar store />
            <UndoBar removed put_back />
            <main>
                <Notice store />
                <Begin store />
                {move || shelf.get().map(|found| listed(store, found, remove, keys))}
                <Samples store />
                <Caution />
                <p class="foot-line"><VersionsLine /></p>
            </main>
        </div>
    }
}

/// What can be done with one of the list.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Change {
    Remove,
    PutBack,
    Delete,
}

/// The list, and below it the bin.
fn listed(
    store: EditorStore,
    found: Result<Vec<OnShelf>, String>,
    remove: Callback<OnShelf>,
    keys: BinKeys,
) -> AnyView {
    let all = match found {
        Ok(all) => all,
        Err(reason) => return view! { <p class="notice" role="alert">{reason}</p> }.into_any(),
    };
    let (removed, here): (Vec<_>, Vec<_>) = all.into_iter().partition(|one| one.removed_ms.is_some());
    let rows = if here.is_empty() {
        let words = "Nothing here yet. What you write is kept on this device from the first key on.";
        view! { <p class="empty">{words}</p> }.into_any()
    } else {
        let row = |one| view! { <ShelfRow store one remove /> };
        view! { <ul class="shelf">{here.into_iter().map(row).collect_view()}</ul> }.into_any()
    };
    view! {
        <section aria-labelledby="on-device">
            <h2 id="on-device" class="stage">"On this device"</h2>
            {rows}
        </section>
        <Bin removed keys />
    }
    .into_any()
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
        if EditorStore::has_files_in_hand() {
            store.open_in_hand(Callback::new(|()| go(Screen::Write)));
        } else if let Some(input) = input.get_untracked() {
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
