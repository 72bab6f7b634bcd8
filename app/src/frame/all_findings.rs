//! The list of all that is found: each in two lines, with the way to its place. It is built only while it is open.

use super::level_mark::level_mark;
use crate::route::{Screen, go};
use crate::state::EditorStore;
use crate::state::all_findings::{Found, Group};
use crate::state::next_finding::ShownOn;
use leptos::prelude::*;
use procedures_schema::check::Level;
use wasm_bindgen::JsCast;

/// The list, while it is open.
#[component]
pub fn AllFindings(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let is_open = store.lists_findings();
    // It belongs to the screen on which it was opened.
    on_cleanup(move || is_open.set(false));
    move || is_open.get().then(|| view! { <List store /> })
}

/// Opens the list, or closes it with the keyboard back where it was.
pub fn open_or_close(store: EditorStore) {
    let sheet = document().query_selector("dialog.all-findings").ok().flatten();
    match sheet.and_then(|sheet| sheet.dyn_into::<web_sys::HtmlDialogElement>().ok()) {
        Some(sheet) => sheet.close(),
        None => store.lists_findings().set(true),
    }
}

#[component]
fn List(store: EditorStore) -> impl IntoView {
    let sheet = NodeRef::<leptos::html::Dialog>::new();
    let all = store.all_findings();
    let close = move || {
        if let Some(sheet) = sheet.get_untracked() {
            sheet.close();
        }
        store.lists_findings().set(false);
    };
    sheet.on_load(|sheet| request_animation_frame(move || show(&sheet)));
    let told = store.told();
    let told_of = move || {
        let circuits = told.with(|told| told.told_of.join(", "));
        if circuits.is_empty() { "told of no circuit yet".to_owned() } else { format!("told of: {circuits}") }
    };
    let stamp = move || told.with(|told| told.stamp.clone());
    let by = move || told.with(|told| told.judged_by.clone());
    let is_empty = move || all.with(Vec::is_empty);
    let go_to = Callback::new(move |found: Found| {
        close();
        go(match store.go_to_found(&found) {
            ShownOn::Appliance => Screen::Appliance,
            ShownOn::Write => Screen::Write,
        });
    });
    view! {
        <dialog class="all-findings" node_ref=sheet aria-labelledby="findings-title" on:close=move |_| store.lists_findings().set(false)>
            <div class="keys-head">
                <h2 id="findings-title">"All findings"</h2>
                <button type="button" class="key" on:click=move |_| close()>"Close"</button>
            </div>
            <p class="facts"><strong>{stamp}</strong>" "{by}</p>
            {move || is_empty().then(|| view! { <p class="empty">"Nothing is found."</p> })}
            {move || all.get().into_iter().map(|group| group_of(store, group, go_to)).collect_view()}
            <p class="facts">{told_of}" · cannot know what nobody named"</p>
        </dialog>
    }
}

/// Opens the list with the keyboard on the finding that somebody went from, or on the first.
fn show(sheet: &web_sys::HtmlDialogElement) {
    // It is refused only while it is open already, or gone.
    let _ = sheet.show_modal();
    let found = |selector: &str| sheet.query_selector(selector).ok().flatten();
    let first = found(".found-row[aria-current]").or_else(|| found(".found-row")).or_else(|| found("button"));
    if let Some(row) = first.and_then(|row| row.dyn_into::<web_sys::HtmlElement>().ok()) {
        // Only an element that is gone refuses.
        let _ = row.focus();
    }
}

fn group_of(store: EditorStore, group: Group, go_to: Callback<Found>) -> impl IntoView {
    let class = match group.level {
        Level::Reject => "reject",
        Level::Warn => "warn",
        Level::Advise => "advise",
    };
    let rows: Vec<_> = group.found.into_iter().map(|found| row(store, found, go_to)).collect();
    view! {
        <section class=format!("found-group {class}")>
            <h3>{group.heading}</h3>
            <ul>{rows}</ul>
        </section>
    }
}

fn row(store: EditorStore, found: Found, go_to: Callback<Found>) -> impl IntoView {
    let current = store.was_gone_to(&found).then_some("true");
    let Found { level, place, title, remedy, .. } = found.clone();
    let remedy = remedy.map(|remedy| view! { <span class="remedy">{remedy}</span> });
    let last = current.map(|_| view! { <span class="last">"gone to last"</span> });
    view! {
        <li>
            {level_mark(level)}
            <button type="button" class="found-row" aria-current=current on:click=move |_| go_to.run(found.clone())>
                <span class="place">{place}" "</span>
                <span class="says"><span class="title">{title}</span>" "{remedy}{last}</span>
            </button>
        </li>
    }
}
