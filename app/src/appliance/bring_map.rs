//! "Bring the map from…": the procedure is chosen here, of this device or a file; then what comes of its map.

use super::bring_choice::BringChoice;
use crate::state::bringing::{of_device, of_file};
use crate::state::on_shelf::OnShelf;
use crate::state::{EditorStore, clock};
use leptos::prelude::*;
use leptos::task::spawn_local;
use procedures_schema::model::{Id, Procedure};
use std::sync::Arc;

/// The procedure that was chosen.
type Chosen = RwSignal<Option<Arc<Procedure>>>;

/// The key, what came of it, and the panel while it is open.
#[component]
pub fn BringMap(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let (is_open, told) = (RwSignal::new(false), RwSignal::new(None::<String>));
    let key = NodeRef::<leptos::html::Button>::new();
    let close = Callback::new(move |came: Option<String>| {
        told.set(came);
        is_open.set(false);
        if let Some(key) = key.get_untracked() {
            // A key that cannot be focused has just gone.
            let _ = key.focus();
        }
    });
    let toggle = move |_| {
        told.set(None);
        is_open.update(|is_open| *is_open = !*is_open);
    };
    let escape = move |event: web_sys::KeyboardEvent| {
        if event.key() == "Escape" && !event.default_prevented() {
            event.prevent_default();
            close.run(None);
        }
    };
    view! {
        <div class="bring">
            <button
                type="button" class="key" aria-expanded=move || is_open.get().to_string() node_ref=key on:click=toggle
            >"Bring the map from …"</button>
            <span class="count" role="status">{told}</span>
        </div>
        {move || is_open.get().then(|| view! {
            <section class="bringing" aria-label="Bring the map from another procedure" on:keydown=escape>
                <Panel store close />
            </section>
        })}
    }
}

/// First which procedure, then what of its map.
#[component]
fn Panel(store: EditorStore, close: Callback<Option<String>>) -> impl IntoView {
    let (chosen, trouble): (Chosen, _) = (RwSignal::new(None), RwSignal::new(None::<String>));
    let others = RwSignal::new(None::<Vec<OnShelf>>);
    spawn_local(async move {
        match store.others_on_device().await {
            Ok(all) => others.set(Some(all)),
            Err(reason) => trouble.set(Some(reason)),
        }
    });
    let take = Callback::new(move |read: Result<Arc<Procedure>, String>| match read {
        Ok(document) => {
            trouble.set(None);
            chosen.set(Some(document));
        }
        Err(reason) => trouble.set(Some(reason)),
    });
    let again = Callback::new(move |()| chosen.set(None));
    move || match chosen.get() {
        Some(from) => view! { <BringChoice store from again close /> }.into_any(),
        None => view! {
            <Sources others take close />
            <p class="refused" role="alert">{trouble}</p>
        }
        .into_any(),
    }
}

/// The procedures of this device, and the key for a file.
#[component]
fn Sources(
    others: RwSignal<Option<Vec<OnShelf>>>,
    take: Callback<Result<Arc<Procedure>, String>>,
    close: Callback<Option<String>>,
) -> impl IntoView {
    let input = NodeRef::<leptos::html::Input>::new();
    let picked = move |event: web_sys::Event| {
        let field: web_sys::HtmlInputElement = event_target(&event);
        if let Some(file) = field.files().and_then(|files| files.get(0)) {
            // The panel may have been closed while the file was read.
            spawn_local(async move {
                take.try_run(of_file(file).await);
            });
        }
        field.set_value("");
    };
    let open = move |_| {
        if let Some(input) = input.get_untracked() {
            input.click();
        }
    };
    let list = move || {
        let all = others.get()?;
        Some(if all.is_empty() {
            view! { <p class="empty">"No other procedure is on this device. A file has its map too."</p> }
                .into_any()
        } else {
            let rows = all.into_iter().map(|one| view! { <Source one take /> }).collect_view();
            view! { <ul class="shelf">{rows}</ul> }.into_any()
        })
    };
    view! {
        <h2 class="stage">"Whose map?"</h2>
        {list}
        <div class="strip">
            <input type="file" class="hidden" aria-label="File with the map" tabindex="-1" node_ref=input on:change=picked />
            <button type="button" class="key" on:click=open>"Of a file …"</button>
            <button type="button" class="quiet" on:click=move |_| close.run(None)>"Leave it"</button>
        </div>
    }
}

/// One procedure of this device.
#[component]
fn Source(one: OnShelf, take: Callback<Result<Arc<Procedure>, String>>) -> impl IntoView {
    let id: StoredValue<Id> = StoredValue::new(one.id);
    let kept = clock::day_and_minute(one.at_ms, clock::now_ms());
    let facts = format!("{} · {} steps · kept {kept}", one.name, one.n_steps);
    let label = format!("Take its map: {}", one.title);
    let read = move |_| {
        let id = id.get_value();
        spawn_local(async move {
            take.try_run(of_device(id).await);
        });
    };
    view! {
        <li>
            <span class="about"><strong>{one.title}</strong><span class="facts">{facts}</span></span>
            <span class="do"><button type="button" class="key" aria-label=label on:click=read>"Take its map"</button></span>
        </li>
    }
}
