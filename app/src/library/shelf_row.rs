//! One procedure of this device, with what can be done with it.

use crate::desk::{Begin, DeskPart};
use crate::route::{Screen, go};
use crate::state::clock;
use crate::state::filing::Filed;
use crate::state::on_shelf::{OnShelf, save_as_kept};
use crate::state::shelf::UNTITLED;
use leptos::prelude::*;
use leptos::task::spawn_local;

/// Its row.
#[component]
pub fn ShelfRow(
    /// The editor, which may not be there yet.
    part: DeskPart,
    /// The procedure.
    one: OnShelf,
    /// Called to put it into the bin.
    remove: Callback<OnShelf>,
) -> impl IntoView {
    let id = StoredValue::new(one.id.clone());
    let is_open = Memo::new(move |_| part.open_now().is_some_and(|open| open.id == id.get_value()));
    // Also what cannot be opened is not lost.
    let save = move |_| {
        spawn_local(async move {
            if let Err(reason) = save_as_kept(&id.get_value()).await {
                part.trouble().set(Some(reason));
            }
        });
    };
    let open = move |_| part.begin(Begin::Kept(id.get_value()));
    let when = |at_ms| clock::day_and_minute(at_ms, clock::now_ms());
    let filed = match one.filed {
        None => "in no file yet".to_owned(),
        Some(Filed::NotSince(at)) => format!("not in a file since {}", when(at)),
        Some(Filed::At(at)) => format!("saved as a file {}", when(at)),
        Some(Filed::Opened) => "as in its file".to_owned(),
    };
    let file = if one.name.is_empty() { String::new() } else { format!("{} · ", one.name) };
    // Those that nobody has named yet are told apart by how they begin.
    let is_named = one.title != UNTITLED || one.begins.is_empty();
    let begins = if is_named { String::new() } else { format!("begins \u{201c}{}\u{201d} · ", one.begins) };
    let steps = if one.n_steps == 1 { "step" } else { "steps" };
    let facts = format!("{file}{begins}{} {steps} · kept {} · {filed}", one.n_steps, when(one.at_ms));
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
                <button type="button" class="quiet" aria-label=named("Save") on:click=save>"Save"</button>
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
