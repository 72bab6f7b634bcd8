//! What stands before a component or a connection, as a line from the outside in.

use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::derive::access::stands_before;
use procedures_schema::model::Id;

/// The line: `belt guard > delivery union > valve`.
#[component]
pub fn WayToIt(
    /// The editor's state.
    store: EditorStore,
    /// The thing.
    id: Id,
) -> impl IntoView {
    let id = StoredValue::new(id);
    let way = Memo::new(move |_| {
        let id = id.get_value();
        store.document().with(|document| {
            let before = stands_before(&document.map, &id);
            let names = before.iter().chain([&id]).map(|id| document.map.name_of(id).to_owned());
            (!before.is_empty()).then(|| names.collect::<Vec<_>>())
        })
    });
    let line = move |names: Vec<String>| {
        let inner = names.len() - 1;
        let part = move |(at, name): (usize, String)| {
            let then = (at < inner).then(|| view! { <span class="then" aria-hidden="true">" > "</span> });
            view! { <li>{name}{then}</li> }
        };
        view! { <ol class="way">{names.into_iter().enumerate().map(part).collect_view()}</ol> }
    };
    let shown = move || match way.get() {
        Some(names) => line(names).into_any(),
        None => view! { <span class="none">"nothing: it can be reached at once"</span> }.into_any(),
    };
    view! { <div class="field things way-to-it"><span>"What stands before it"</span>{shown}</div> }
}
