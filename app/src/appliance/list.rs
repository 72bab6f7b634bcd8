//! The things of one kind: a row each in the same columns, and under the open one its sheet.

use super::census::Answered;
use super::drag::Dragging;
use super::finder::Finder;
use super::open_sheet::open_sheet;
use super::thing_row::ThingRow;
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::derive::rows::columns;
use procedures_schema::model::{Id, ThingKind};

/// What a sheet was opened for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum OpenedTo {
    /// To be looked at.
    Look,
    /// To be named, since the thing has just been made.
    Name,
    /// To make it one with another, which may be known.
    Merge(Option<Id>),
}

/// Which thing is open, and what for.
pub type Open = RwSignal<Option<(Id, OpenedTo)>>;

/// What all lists share.
#[derive(Clone, Copy)]
pub struct Shared {
    /// Which thing is open.
    pub open: Open,
    /// What is looked for.
    pub finder: Finder,
    /// What is dragged onto what.
    pub dragging: Dragging,
}

/// The list of a kind with its heading and the key that adds one; of what is looked for, only that.
#[component]
pub fn Things(
    /// The editor's state.
    store: EditorStore,
    /// The kind.
    kind: ThingKind,
    /// Its heading.
    heading: &'static str,
    /// What stands there while there is none.
    empty: &'static str,
    /// What all lists share.
    shared: Shared,
) -> impl IntoView {
    let Shared { open, finder, .. } = shared;
    let ids = Memo::new(move |_| {
        let is_open = |id: &Id| open.with(|open| open.as_ref().is_some_and(|(known, _)| known == id));
        store.document().with(|document| {
            let things = document.map.things().filter(|(known, ..)| *known == kind);
            // What is being filled in does not go away under the hands.
            let shown = things.filter(|(_, id, ..)| finder.finds(id) || is_open(id));
            shown.map(|(_, id, ..)| id.clone()).collect::<Vec<Id>>()
        })
    });
    let add = move |_| open.set(Some((store.add_thing(kind, None), OpenedTo::Name)));
    let article = if kind == ThingKind::Isolator { "an" } else { "a" };
    let label = format!("Add {article} {}", kind.word());
    let key = StoredValue::new(label);
    let can_add = move || kind != ThingKind::Section && !finder.looks();
    let is_away = move || finder.looks() && ids.with(Vec::is_empty);
    let is_none = Memo::new(move |_| ids.with(Vec::is_empty));
    view! {
        <section class="things-of" class:away=is_away>
            <h2 class="stage">{heading} {(kind == ThingKind::Circuit).then(|| view! { <Answered store /> })}</h2>
            {move || is_none.get().then(|| view! { <p class="empty">{empty}</p> })}
            {move || (!is_none.get()).then(|| heads(kind))}
            <ul class="map-list">
                <For each=move || ids.get() key=Clone::clone children=move |id| view! { <Thing store kind id shared /> } />
            </ul>
            {move || can_add().then(|| view! {
                <button type="button" class="quiet add" on:click=add>{key.get_value()}</button>
            })}
        </section>
    }
}

/// The names of the columns. Each cell names its own too, for those who do not see them above it.
fn heads(kind: ThingKind) -> impl IntoView {
    let names = ["Name"].iter().chain(columns(kind)).chain(&["Steps"]);
    view! { <div class="thing-heads" aria-hidden="true">{names.map(|name| view! { <span>{*name}</span> }).collect_view()}</div> }
}

/// One thing: its row, and its sheet while it is open.
#[component]
fn Thing(store: EditorStore, kind: ThingKind, id: Id, shared: Shared) -> impl IntoView {
    let Shared { open, finder, dragging } = shared;
    let id = StoredValue::new(id);
    let opened = Memo::new(move |_| {
        open.with(|open| {
            open.as_ref().filter(|(known, _)| *known == id.get_value()).map(|(_, opened)| opened.clone())
        })
    });
    let is_open = Memo::new(move |_| opened.with(Option::is_some));
    let could_be = move || dragging.over(&id.get_value()) == Some(true);
    let stays_two = move || dragging.over(&id.get_value()) == Some(false);
    let sheet =
        move || opened.get().map(|opened| open_sheet(store, kind, id.get_value(), opened, open, finder));
    view! {
        <li
            class:open=is_open class:could-be=could_be class:stays-two=stays_two
            id=format!("thing-{}", id.get_value()) on:focusin=move |_| store.is_at_thing(&id.get_value())
        >
            <ThingRow store kind id is_open open finder dragging />
            {sheet}
        </li>
    }
}
