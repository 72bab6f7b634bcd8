//! The sheet of a thing: its fields, what stands before it, and what can be done with the whole thing.

use super::finder::Finder;
use super::list::{Open, OpenedTo};
use super::name_field::NameField;
use super::same_as::SameAs;
use super::thing_row::{MOST_STEPS, step_links, to_row};
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

/// What is being done with the whole thing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Doing {
    Nothing,
    Merging,
    Splitting,
}

/// The sheet of the open thing.
pub fn open_sheet(
    store: EditorStore,
    kind: ThingKind,
    id: Id,
    opened: OpenedTo,
    open: Open,
    finder: Finder,
) -> AnyView {
    let is_new = opened == OpenedTo::Name;
    let (now, other) = match opened {
        OpenedTo::Merge(other) => (Doing::Merging, other),
        OpenedTo::Look | OpenedTo::Name => (Doing::Nothing, None),
    };
    let doing = RwSignal::new(now);
    let (thing, other) = (StoredValue::new(id.clone()), StoredValue::new(other));
    let panel = move || match doing.get() {
        Doing::Nothing => ().into_any(),
        Doing::Merging => {
            view! { <SameAs store id=thing.get_value() other=other.get_value() open /> }.into_any()
        }
        Doing::Splitting => view! { <TwoOfIt store id=thing.get_value() open finder /> }.into_any(),
    };
    let way = matches!(kind, ThingKind::Component | ThingKind::Connection)
        .then(|| view! { <WayToIt store id=id.clone() /> });
    let steps = move || {
        let numbers = finder.steps(&thing.get_value());
        (numbers.len() > MOST_STEPS).then(|| step_links(store, &numbers, usize::MAX))
    };
    let close = move |event: web_sys::KeyboardEvent| {
        if event.key() == "Escape" && !event.default_prevented() {
            event.prevent_default();
            open.set(None);
            to_row(&thing.get_value());
        }
    };
    view! {
        <div class="sheet" on:keydown=close>
            {fields(store, kind, id.clone(), is_new)}
            {way}
            <div class="field things named-in">{steps}</div>
            {keys(store, kind, id, open, doing)}
            {panel}
        </div>
    }
    .into_any()
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
