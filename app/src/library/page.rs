//! The Procedures screen as a whole.

use super::begin::Begin;
use super::bin::{Bin, BinKeys};
use super::fetching::{Fetching, KeptWithout, is_late};
use super::first_time::FirstTime;
use super::samples::Samples;
use super::shelf_row::ShelfRow;
use super::undo_bar::UndoBar;
use crate::components::caution::Caution;
use crate::components::keys_dialog::{KeyGroup, KeysDialog, open_sheet};
use crate::desk::{Coming, DeskPart, Start};
use crate::route::{Screen, Tabs};
use crate::state::on_shelf::{OnShelf, delete_for_good, on_shelf, set_removed};
use leptos::prelude::*;
use leptos::task::spawn_local;

/// What is on this device, as far as it has been looked at.
type Shelf = RwSignal<Option<Result<Vec<OnShelf>, String>>>;

const KEYS: KeyGroup = KeyGroup {
    heading: "Procedures",
    keys: &[
        ("Tab, Enter", "to the next key of the page, and to press it"),
        ("Ctrl+O", "open a file; one that is dropped here is opened too"),
        ("Ctrl+S", "save the open procedure as a file"),
        ("F1", "this sheet"),
    ],
};

/// Everything of Procedures.
#[component]
pub fn ProceduresScreen(
    /// The editor, which may not be there yet.
    part: DeskPart,
) -> impl IntoView {
    let (shelf, removed): (Shelf, _) = (RwSignal::new(None), RwSignal::new(None));
    look(shelf, part);
    listen_for_keys();
    let is_late = is_late(part);
    let trouble = part.trouble();
    let show = move |outcome: Result<Option<OnShelf>, String>| {
        match outcome {
            Ok(one) => {
                trouble.set(None);
                removed.set(one);
            }
            Err(reason) => trouble.set(Some(reason)),
        }
        look(shelf, part);
    };
    let change = move |one, change| carry_out(part, one, change, show);
    let remove = Callback::new(move |one| change(one, Change::Remove));
    let put_back = Callback::new(move |one| change(one, Change::PutBack));
    let keys = BinKeys { put_back, delete: Callback::new(move |one| change(one, Change::Delete)) };
    view! {
        <div class="procedures">
            <div class="plain-top">
                <header class="plain-head">
                    <h1 class="name">"Putback"</h1>
                    <Tabs shown=Screen::Procedures />
                </header>
                {move || part.get().map(|desk| desk.bars())}
                <UndoBar removed put_back />
                <Fetching part start=Start::Empty is_late />
                <Notice part />
            </div>
            <main>
                <KeptWithout part is_late />
                {move || is_bare(shelf).then(|| view! { <FirstTime part /> })}
                <Begin part />
                {move || shelf.get().map(|found| listed(part, found, remove, keys))}
                <Samples part />
                <Caution />
                <p class="foot-line">{move || part.get().map(|desk| desk.versions())}</p>
            </main>
            <KeysDialog title="Keys here" groups=vec![KEYS] />
        </div>
    }
}

/// F1 opens the sheet of keys, which on other screens is the editor's business.
fn listen_for_keys() {
    let listener = window_event_listener(leptos::ev::keydown, |event| {
        if event.key() == "F1" && !event.default_prevented() {
            event.prevent_default();
            open_sheet();
        }
    });
    on_cleanup(move || listener.remove());
}

/// Looks at what is on this device; then the editor is fetched, unless it is there.
fn look(shelf: Shelf, part: DeskPart) {
    spawn_local(async move {
        let found = on_shelf().await;
        let is_any = found.as_ref().is_ok_and(|found| !found.is_empty());
        shelf.set(Some(found));
        if is_any {
            // Which of them is open, the editor knows.
            part.ask(Start::Empty, |_| ());
        } else {
            part.fetch_soon();
        }
    });
}

/// Whether it is known that nothing is here.
fn is_bare(shelf: Shelf) -> bool {
    shelf.with(|shelf| matches!(shelf, Some(Ok(all)) if all.is_empty()))
}

/// Does it, the open one by the editor, and then shows what came of it.
fn carry_out(
    part: DeskPart,
    one: OnShelf,
    change: Change,
    show: impl Fn(Result<Option<OnShelf>, String>) + Copy + Send + Sync + 'static,
) {
    part.want(Start::Empty, move |desk| {
        let is_open = desk.open_now().with_untracked(|open| open.id == one.id);
        if is_open && change == Change::Remove {
            desk.remove_open(Box::new(move |outcome| {
                show(outcome.map(|is_done| is_done.then_some(one.clone())));
            }));
            return;
        }
        spawn_local(async move {
            let outcome = match change {
                Change::Remove => set_removed(&one.id, true).await,
                Change::PutBack => desk.put_back(one.id.clone()).await,
                Change::Delete => delete_for_good(&one.id).await,
            };
            show(outcome.map(|()| (change == Change::Remove).then_some(one)));
        });
    });
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
    part: DeskPart,
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
        let row = |one| view! { <ShelfRow part one remove /> };
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

/// Why something was not done; it stays until it is read.
#[component]
fn Notice(part: DeskPart) -> impl IntoView {
    let of_editor = move || part.get().and_then(|desk| desk.notice().get());
    // That it cannot be fetched is told elsewhere.
    let of_list = move || part.trouble().get().filter(|_| part.coming().get() != Coming::Failed);
    let words = move || of_editor().or_else(of_list);
    let close = move |_| {
        part.forget_trouble();
        if let Some(desk) = part.get() {
            desk.notice().set(None);
        }
    };
    let bar = move || {
        words().map(|words| {
            view! {
                <p class="banner notice">
                    <span>{words}</span>
                    <button type="button" class="key" on:click=close>"Close"</button>
                </p>
            }
        })
    };
    view! { <div role="alert">{bar}</div> }
}
