//! One procedure of this device, with what can be done with it.

use crate::route::{Screen, go};
use crate::state::filing::Filed;
use crate::state::shelf::OnShelf;
use crate::state::{EditorStore, clock};
use leptos::prelude::*;
use leptos::task::spawn_local;

/// Its row.
#[component]
pub fn ShelfRow(
    /// The editor's state.
    store: EditorStore,
    /// The procedure.
    one: OnShelf,
    /// Called to put it into the bin.
    remove: Callback<OnShelf>,
) -> impl IntoView {
    let id = StoredValue::new(one.id.clone());
    let is_open = Memo::new(move |_| store.document().with(|document| document.id == id.get_value()));
    let open = move |_| {
        spawn_local(async move {
            match store.open_kept(id.get_value()).await {
                Ok(()) => go(Screen::Write),
                Err(reason) => store.notice().set(Some(reason)),
            }
        });
    };
    let when = |at_ms| clock::day_and_minute(at_ms, clock::now_ms());
    let filed = match one.filed {
        None => "in no file yet".to_owned(),
        Some(Filed::NotSince(at)) => format!("not in a file since {}", when(at)),
        Some(Filed::At(at)) => format!("saved as a file {}", when(at)),
        Some(Filed::Opened) => "as in its file".to_owned(),
    };
    let facts = format!("{} · {} steps · kept {} · {filed}", one.name, one.n_steps, when(one.at_ms));
    let title = StoredValue::new(one.title.clone());
    let named = move |what: &str| format!("{what} {}", title.get_value());
    let removed = StoredValue::new(one.clone());
    let keys = move || {
        if is_open.get() {
            view! {
                <span class="open-now">"open now"</span>
                <button type="button" class="quiet" aria-label=named("Remove") on:click=move |_| remove.run(removed.get_value())>"Remove"</button>
                <button type="button" class="key" on:click=move |_| go(Screen::Versions)>"Earlier versions"</button>
            }
            .into_any()
        } else {
            view! {
                <button type="button" class="quiet" aria-label=named("Remove") on:click=move |_| remove.run(removed.get_value())>"Remove"</button>
                <button type="button" class="key" aria-label=named("Open") on:click=open>"Open"</button>
            }
            .into_any()
        }
    };
    view! {
        <li>
            <span class="about"><strong>{one.title.clone()}</strong><span class="facts">{facts}</span></span>
            <span class="do">{keys}</span>
        </li>
    }
}
