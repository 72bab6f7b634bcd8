//! What stands before a component or a connection, as a line from the outside in.

use crate::components::fields::ChoiceField;
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::derive::access::stands_before;
use procedures_schema::model::{ApplianceMap, Id, ThingKind};

/// The line in the sheet of a thing: `belt guard > delivery union > valve`.
#[component]
pub fn WayToIt(
    /// The editor's state.
    store: EditorStore,
    /// The thing.
    id: Id,
) -> impl IntoView {
    let way = way(store, Signal::stored(Some(id)));
    view! { <div class="field things way-to-it"><span>"What stands before it"</span>{way}</div> }
}

/// The same for any thing of the map, which is chosen.
#[component]
pub fn Access(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let chosen = RwSignal::new(String::new());
    let options = Signal::derive(move || store.document().with(|document| with_a_way(&document.map)));
    // Until something is chosen, what is deepest inside.
    let thing = Memo::new(move |_| {
        let options = options.get();
        let known = |id: &String| options.iter().any(|(known, _)| known == id);
        chosen.with(|chosen| Some(chosen).filter(|id| known(id)).cloned()).or_else(|| deepest(store))
    });
    let value = Signal::derive(move || thing.get().unwrap_or_default());
    let send = Callback::new(move |id| chosen.set(id));
    let id = Signal::derive(move || thing.get().map(|id| Id::new(&id)));
    let is_there = Memo::new(move |_| options.with(|options| !options.is_empty()));
    move || {
        is_there.get().then(|| {
            view! {
                <section class="things-of access">
                    <h2 class="stage">"Access"</h2>
                    <ChoiceField label="What stands before" value options send />
                    {way(store, id)}
                </section>
            }
        })
    }
}

/// The components and connections of a map.
fn with_a_way(map: &ApplianceMap) -> Vec<(String, String)> {
    let things = map.things();
    let things = things.filter(|(kind, ..)| matches!(kind, ThingKind::Component | ThingKind::Connection));
    things.map(|(_, id, name, _)| (id.to_string(), name.to_owned())).collect()
}

/// The component before which most stands.
fn deepest(store: EditorStore) -> Option<String> {
    store.document().with(|document| {
        let parts = document.map.components.iter().map(|part| &part.id);
        let last = parts.max_by_key(|id| stands_before(&document.map, id).len())?;
        Some(last.to_string())
    })
}

/// The line, from the outside in.
fn way(store: EditorStore, id: Signal<Option<Id>>) -> impl IntoView {
    let way = Memo::new(move |_| {
        let id = id.get()?;
        store.document().with(|document| {
            let before = stands_before(&document.map, &id);
            let names = before.iter().chain([&id]).map(|id| document.map.name_of(id).to_owned());
            (!before.is_empty()).then(|| names.collect::<Vec<_>>())
        })
    });
    move || match way.get() {
        Some(names) => line(names).into_any(),
        None => view! { <span class="none">"nothing: it can be reached at once"</span> }.into_any(),
    }
}

fn line(names: Vec<String>) -> impl IntoView {
    let inner = names.len() - 1;
    let part = move |(at, name): (usize, String)| {
        let then = (at < inner).then(|| view! { <span class="then" aria-hidden="true">" > "</span> });
        view! { <li>{name}{then}</li> }
    };
    view! { <ol class="way">{names.into_iter().enumerate().map(part).collect_view()}</ol> }
}
