//! The things of one kind: a row each, and under the open one its sheet.

use super::describe::describe;
use super::name_field::NameField;
use super::sheet::Sheet;
use super::{
    circuit_sheet, component_sheet, connection_sheet, isolator_sheet, seal_sheet, section_sheet,
    setting_sheet, temporary_sheet,
};
use crate::state::EditorStore;
use crate::state::map_edits::{InMap, used_in};
use leptos::prelude::*;
use procedures_schema::model::{Id, ThingKind};

/// Which thing is open, and whether it has just been made.
pub type Open = RwSignal<Option<(Id, bool)>>;

/// The list of a kind with its heading and the key that adds one.
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
) -> impl IntoView {
    let ids = Memo::new(move |_| {
        store.document().with(|document| {
            let things = document.map.things().filter(|(known, ..)| *known == kind);
            things.map(|(_, id, ..)| id.clone()).collect::<Vec<Id>>()
        })
    });
    let add = move |_| open.set(Some((store.add_thing(kind, None), true)));
    let article = if kind == ThingKind::Isolator { "an" } else { "a" };
    let label = format!("Add {article} {}", kind.word());
    let can_add = kind != ThingKind::Section;
    view! {
        <section class="things-of">
            <h2 class="stage">{heading}</h2>
            {move || ids.with(Vec::is_empty).then(|| view! { <p class="empty">{empty}</p> })}
            <ul class="map-list">
                <For each=move || ids.get() key=Clone::clone children=move |id| view! { <Thing store kind id open /> } />
            </ul>
            {can_add.then(|| view! { <button type="button" class="quiet add" on:click=add>{label}</button> })}
        </section>
    }
}

/// One thing: its row, and its sheet while it is open.
#[component]
fn Thing(store: EditorStore, kind: ThingKind, id: Id, open: Open) -> impl IntoView {
    let id = StoredValue::new(id);
    let is_open = Memo::new(move |_| {
        open.with(|open| open.as_ref().is_some_and(|(known, _)| *known == id.get_value()))
    });
    let name = move || store.document().with(|document| document.map.name_of(&id.get_value()).to_owned());
    let about = move || store.document().with(|document| describe(&document.map, kind, &id.get_value()));
    let uses = move || {
        let steps = store.document().with(|document| used_in(document, &id.get_value()));
        match steps.as_slice() {
            // Steps name mostly the isolators and joints of a circuit, so none says nothing about it.
            [] if matches!(kind, ThingKind::Circuit | ThingKind::Section) => String::new(),
            [] => "in no step yet".to_owned(),
            [one] => format!("in step {one}"),
            several => format!("in {} steps", several.len()),
        }
    };
    let toggle = move |_| open.set((!is_open.get_untracked()).then(|| (id.get_value(), false)));
    view! {
        <li class:open=is_open>
            <button type="button" class="thing-row" aria-expanded=move || is_open.get().to_string() on:click=toggle>
                <strong>{name}</strong>
                <span class="about">{about}</span>
                <span class="uses">{uses}</span>
            </button>
            {move || is_open.get().then(|| sheet(store, kind, id.get_value(), open))}
        </li>
    }
}

fn sheet(store: EditorStore, kind: ThingKind, id: Id, open: Open) -> AnyView {
    let is_new = open.get_untracked().is_some_and(|(_, is_new)| is_new);
    let add_section = {
        let owner = id.clone();
        (kind == ThingKind::Circuit).then(|| {
            let add = move |_| open.set(Some((store.add_thing(ThingKind::Section, Some(&owner)), true)));
            view! { <button type="button" class="quiet" on:click=add>"Add a section to it"</button> }
        })
    };
    let gone = id.clone();
    let remove = move |_| store.remove_thing(&gone);
    view! {
        <div class="sheet">
            {fields(store, kind, id, is_new)}
            <div class="strip">
                {add_section}
                <button type="button" class="quiet" on:click=remove>{format!("Take this {} out", kind.word())}</button>
            </div>
        </div>
    }
    .into_any()
}

fn fields(store: EditorStore, kind: ThingKind, id: Id, is_new: bool) -> AnyView {
    match kind {
        ThingKind::Circuit => with_name(Sheet::new(store, id), is_new, circuit_sheet::fields),
        ThingKind::Section => with_name(Sheet::new(store, id), is_new, section_sheet::fields),
        ThingKind::Isolator => with_name(Sheet::new(store, id), is_new, isolator_sheet::fields),
        ThingKind::Component => with_name(Sheet::new(store, id), is_new, component_sheet::fields),
        ThingKind::Connection => with_name(Sheet::new(store, id), is_new, connection_sheet::fields),
        ThingKind::Seal => with_name(Sheet::new(store, id), is_new, seal_sheet::fields),
        ThingKind::Temporary => with_name(Sheet::new(store, id), is_new, temporary_sheet::fields),
        ThingKind::Setting => with_name(Sheet::new(store, id), is_new, setting_sheet::fields),
    }
}

/// The name, and below it the fields of the kind.
fn with_name<T: InMap>(sheet: Sheet<T>, is_new: bool, rest: fn(Sheet<T>) -> AnyView) -> AnyView {
    let value = sheet.read(|thing| thing.name().to_owned());
    view! { <NameField store=sheet.store id=sheet.id() value comes_first=is_new /> {rest(sheet)} }.into_any()
}
