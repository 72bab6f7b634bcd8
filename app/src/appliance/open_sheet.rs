//! The sheet of a thing: its fields, what stands before it, and what can be done with the whole thing.

use super::finder::Finder;
use super::list::{Open, OpenedTo};
use super::name_field::NameField;
use super::same_as::SameAs;
use super::two_of_it::TwoOfIt;
use super::way_to_it::WayToIt;
use super::{
    circuit_sheet, component_sheet, connection_sheet, isolator_sheet, seal_sheet, section_sheet,
    setting_sheet, temporary_sheet,
};
use crate::frame::sheet::Sheet;
use crate::state::EditorStore;
use crate::state::map_edits::InMap;
use leptos::prelude::*;
use procedures_schema::model::{Id, ThingKind};
use wasm_bindgen::JsCast;

/// What is being done with the whole thing.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Doing {
    Nothing,
    Merging,
    Splitting,
}

/// The sheet of the open thing.
pub fn open_sheet(store: EditorStore, kind: ThingKind, id: Id, open: Open, finder: Finder) -> AnyView {
    let opened = open.get_untracked().map_or(OpenedTo::Look, |(_, opened)| opened);
    let is_new = opened == OpenedTo::Name;
    let doing = RwSignal::new(if opened == OpenedTo::Merge { Doing::Merging } else { Doing::Nothing });
    let thing = StoredValue::new(id.clone());
    let panel = move || match doing.get() {
        Doing::Nothing => ().into_any(),
        Doing::Merging => view! { <SameAs store id=thing.get_value() open /> }.into_any(),
        Doing::Splitting => view! { <TwoOfIt store id=thing.get_value() open finder /> }.into_any(),
    };
    let way = matches!(kind, ThingKind::Component | ThingKind::Connection)
        .then(|| view! { <WayToIt store id=id.clone() /> });
    let row = format!("thing-{id}");
    let close = move |event: web_sys::KeyboardEvent| {
        if event.key() == "Escape" && !event.default_prevented() {
            event.prevent_default();
            open.set(None);
            to_row(&row);
        }
    };
    view! {
        <div class="sheet" on:keydown=close>
            {fields(store, kind, id.clone(), is_new)}
            {way}
            {keys(store, kind, id, open, doing)}
            {panel}
        </div>
    }
    .into_any()
}

/// Leaves the keyboard on the row of the thing whose sheet was closed.
fn to_row(row: &str) {
    let key =
        document().get_element_by_id(row).and_then(|row| row.query_selector(".thing-row").ok().flatten());
    if let Some(key) = key.and_then(|key| key.dyn_into::<web_sys::HtmlElement>().ok()) {
        // A key that cannot be focused has just gone.
        let _ = key.focus();
    }
}

/// The keys below the fields.
fn keys(store: EditorStore, kind: ThingKind, id: Id, open: Open, doing: RwSignal<Doing>) -> AnyView {
    let add_section = {
        let owner = id.clone();
        (kind == ThingKind::Circuit).then(|| {
            let add =
                move |_| open.set(Some((store.add_thing(ThingKind::Section, Some(&owner)), OpenedTo::Name)));
            view! { <button type="button" class="quiet" on:click=add>"Add a section to it"</button> }
        })
    };
    let turn = move |what: Doing, name: &'static str| {
        let toggle = move |_| doing.update(|now| *now = if *now == what { Doing::Nothing } else { what });
        let is_open = move || (doing.get() == what).to_string();
        view! { <button type="button" class="quiet" aria-expanded=is_open on:click=toggle>{name}</button> }
    };
    let whole = (!matches!(kind, ThingKind::Circuit | ThingKind::Section))
        .then(|| (turn(Doing::Merging, "Same as …"), turn(Doing::Splitting, "It is two …")));
    let remove = move |_| store.remove_thing(&id);
    view! {
        <div class="strip">
            {add_section}
            {whole}
            <button type="button" class="quiet" on:click=remove>{format!("Take this {} out", kind.word())}</button>
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
    view! { <NameField store=sheet.store() id=sheet.id() value comes_first=is_new /> {rest(sheet)} }
        .into_any()
}
