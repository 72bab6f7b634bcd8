//! One procedure of this device, with what can be done with it.

use crate::route::{Screen, go};
use crate::state::shelf::{OnShelf, set_removed};
use crate::state::{EditorStore, clock};
use leptos::prelude::*;
use leptos::task::spawn_local;

/// Its row. Both ways of removing are undone by the other; nothing is asked.
#[component]
pub fn ShelfRow(
    /// The editor's state.
    store: EditorStore,
    /// The procedure.
    one: OnShelf,
    /// Called when the list has to be looked at again.
    changed: impl Fn() + Copy + Send + Sync + 'static,
) -> impl IntoView {
    let id = StoredValue::new(one.id.clone());
    let is_removed = one.removed_ms.is_some();
    let is_open = Memo::new(move |_| store.document().with(|document| document.id == id.get_value()));
    let open = move |_| {
        spawn_local(async move {
            match store.open_kept(id.get_value()).await {
                Ok(()) => go(Screen::Write),
                Err(reason) => store.notice().set(Some(reason)),
            }
        });
    };
    let set = move |_| {
        spawn_local(async move {
            if let Err(reason) = set_removed(&id.get_value(), !is_removed).await {
                store.notice().set(Some(reason));
            }
            changed();
        });
    };
    let facts =
        format!("{} · {} steps · kept {}", one.name, one.n_steps, clock::ago(one.at_ms, clock::now_ms()));
    let named = |what: &str| format!("{what} {}", one.title);
    let (open_label, remove_label, back_label) = (named("Open"), named("Remove"), named("Bring back"));
    let keys = move || {
        if is_removed {
            view! { <button type="button" class="key" aria-label=back_label.clone() on:click=set>"Bring back"</button> }.into_any()
        } else if is_open.get() {
            view! { <span class="open-now">"open now"</span> }.into_any()
        } else {
            view! {
                <button type="button" class="quiet" aria-label=remove_label.clone() on:click=set>"Remove"</button>
                <button type="button" class="key" aria-label=open_label.clone() on:click=open>"Open"</button>
            }.into_any()
        }
    };
    view! {
        <li>
            <span class="about"><strong>{one.title.clone()}</strong><span class="facts">{facts}</span></span>
            <span class="do">{keys}</span>
        </li>
    }
}
