//! The things of one kind: a row each, and under the open one its sheet.

use super::describe::describe;
use super::finder::Finder;
use super::open_sheet::open_sheet;
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::model::{Id, ThingKind};

/// What a sheet was opened for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OpenedTo {
    /// To be looked at.
    Look,
    /// To be named, since the thing has just been made.
    Name,
    /// To make it one with another.
    Merge,
}

/// Which thing is open, and what for.
pub type Open = RwSignal<Option<(Id, OpenedTo)>>;

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
    /// Which thing is open.
    open: Open,
    /// What is looked for.
    finder: Finder,
) -> impl IntoView {
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
    view! {
        <section class="things-of" class:away=is_away>
            <h2 class="stage">{heading}</h2>
            {move || ids.with(Vec::is_empty).then(|| view! { <p class="empty">{empty}</p> })}
            <ul class="map-list">
                <For each=move || ids.get() key=Clone::clone children=move |id| view! { <Thing store kind id open finder /> } />
            </ul>
            {move || can_add().then(|| view! {
                <button type="button" class="quiet add" on:click=add>{key.get_value()}</button>
            })}
        </section>
    }
}

/// One thing: its row, and its sheet while it is open.
#[component]
fn Thing(store: EditorStore, kind: ThingKind, id: Id, open: Open, finder: Finder) -> impl IntoView {
    let id = StoredValue::new(id);
    let is_open = Memo::new(move |_| {
        open.with(|open| open.as_ref().is_some_and(|(known, _)| *known == id.get_value()))
    });
    let name = move || store.document().with(|document| document.map.name_of(&id.get_value()).to_owned());
    let about = move || store.document().with(|document| describe(&document.map, kind, &id.get_value()));
    let uses = move || finder.uses_in_words(kind, &id.get_value());
    let toggle = move |_| open.set((!is_open.get_untracked()).then(|| (id.get_value(), OpenedTo::Look)));
    let take_out = move || {
        let label = format!("Take out the {}", name());
        let remove = move |_| store.remove_thing(&id.get_value());
        view! { <button type="button" class="quiet" aria-label=label on:click=remove>"Take out"</button> }
    };
    view! {
        <li class:open=is_open id=format!("thing-{}", id.get_value())>
            <div class="thing-line">
                <button type="button" class="thing-row" aria-expanded=move || is_open.get().to_string() on:click=toggle>
                    <strong>{name}</strong>
                    <span class="about">{about}</span>
                    <span class="uses">{uses}</span>
                </button>
                {move || finder.shows_unused().then(take_out)}
            </div>
            {move || is_open.get().then(|| open_sheet(store, kind, id.get_value(), open, finder))}
        </li>
    }
}
