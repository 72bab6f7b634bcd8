//! The Write screen as a whole.

use super::accepted::AcceptedList;
use super::banner::{Banner, PastedText};
use super::carried_bar::CarriedBar;
use super::copying;
use super::dock::{self, Room};
use super::foot::Foot;
use super::going_along::{GoingAlong, bring_into_sight};
use super::header::Header;
use super::heads::Heads;
use super::held_bar::HeldBar;
use super::keys;
use super::long_text::LongTextDialog;
use super::new_line::NewLine;
use super::row::Row;
use super::row_lanes::end_lanes;
use super::row_margin::RowMargin;
use super::sight::watch_rows;
use crate::components::drawn::once_drawn;
use crate::frame::not_kept::NotKept;
use crate::frame::notice::Notice;
use crate::frame::other_tab::OtherTab;
use crate::frame::tall_head::is_tall;
use crate::state::EditorStore;
use crate::state::attention::Focus;
use crate::state::files;
use leptos::prelude::*;
use procedures_schema::model::Id;
use wasm_bindgen::JsCast;

/// So many lanes have room for their signs beside each other.
const MANY_LANES: usize = 6;

/// Everything of Write.
#[component]
pub fn WriteScreen(
    /// The editor's state.
    store: EditorStore,
    /// The line about working offline.
    offline: ReadSignal<String>,
) -> impl IntoView {
    follow_focus(store);
    watch_rows(store);
    let shortcuts = window_event_listener(leptos::ev::keydown, move |event| keys::everywhere(store, &event));
    on_cleanup(move || shortcuts.remove());
    on_cleanup(move || store.drop_held());
    for name in ["copy", "cut", "paste"] {
        let listener = window_event_listener_untyped(name, move |event| copying::on_clipboard(store, &event));
        on_cleanup(move || listener.remove());
    }
    let head = NodeRef::<leptos::html::Header>::new();
    let (is_tall, room) = (is_tall(head), dock::room());
    let n_lanes = Memo::new(move |_| store.heads().with(|heads| heads.len()));
    let most_apart = move || store.most_apart().get().to_string();
    view! {
        <div
            class="write"
            class:docks=move || room.get() != Room::None
            class:low=move || room.get() == Room::Little
            class:crowd=move || { n_lanes.get() > MANY_LANES }
            style=("--n", move || n_lanes.get().to_string())
            style=("--most", most_apart)
            on:dragover=|event| event.prevent_default()
            on:drop=move |event| dropped(store, &event)
        >
            <header class="top" class:tall=is_tall node_ref=head>
                <Header store />
                <NotKept store />
                <OtherTab store />
                <Notice store />
                <PastedText store />
                <CarriedBar store />
                <Banner store />
                <Heads store />
            </header>
            <main>
                <ol class="rows">
                    <For each=move || drawn_rows(store) key=Clone::clone children=move |id| view! { <Row store id /> } />
                    <li class="row last">
                        {end_lanes(store, false)}
                        <div class="content"><NewLine store after=None /></div>
                    </li>
                    <EndRow store />
                </ol>
            </main>
            <Foot offline />
            <HeldBar store />
            <LongTextDialog store />
        </div>
    }
}

/// The rows that are drawn, in order.
fn drawn_rows(store: EditorStore) -> Vec<Id> {
    let n = store.drawn().get();
    store.order().with(|order| order.iter().take(n).cloned().collect())
}

/// What is so at the end of the procedure, and what is missing there.
#[component]
fn EndRow(store: EditorStore) -> impl IntoView {
    let findings = store.findings(None);
    view! {
        <li class="row end" id="end" tabindex="-1" class:found=move || findings.with(|findings| !findings.is_empty()) aria-label="End">
            {end_lanes(store, true)}
            <div class="content"><p class="end-words">"End"</p><AcceptedList store /></div>
            <RowMargin store findings lane_of=store.heads() />
        </li>
    }
}

/// Moves the keyboard where the last command wants it, once the page has been redrawn.
fn follow_focus(store: EditorStore) {
    let n_wishes = StoredValue::new(0_u32);
    let along = GoingAlong::new();
    Effect::new(move |before: Option<()>| {
        if store.focus().with(Option::is_none) {
            return;
        }
        n_wishes.update_value(|n| *n = n.wrapping_add(1));
        let this = n_wishes.get_value();
        // Only the last wish counts: a row that was passed must not take the selection back.
        let lead = move || {
            let Some(focus) = store.take_focus() else { return };
            // A screen that is shown again stays where it was.
            if before.is_some() {
                along.with(&focus);
            }
            if !lead_to(&focus) {
                // What is still to come stands in the page by the next frame.
                request_animation_frame(move || {
                    if n_wishes.try_get_value() == Some(this) {
                        lead_to(&focus);
                    }
                });
            }
        };
        // A screen that has just come is first brought to where it was, in the next frame.
        if before.is_none() { request_animation_frame(lead) } else { once_drawn(lead) }
    });
}

/// Puts the keyboard where it is wanted; says whether that is on the page.
fn lead_to(focus: &Focus) -> bool {
    let Some(element) = document().get_element_by_id(&focus.element_id()) else { return false };
    let element: web_sys::HtmlElement = element.unchecked_into();
    let has_it = document().active_element().is_some_and(|active| active.is_same_node(Some(&element)));
    // An element that cannot be focused has just gone; the next key begins at the page.
    let _ = element.focus();
    if has_it && !matches!(focus, Focus::LastLine | Focus::Words(..)) {
        // The browser scrolls only to what gets the keyboard.
        bring_into_sight(&element);
    }
    if let Focus::Words(_, Some(at)) = focus {
        place_caret(&element, *at);
    }
    true
}

/// Puts the caret where the words were pressed.
fn place_caret(field: &web_sys::HtmlElement, at: u32) {
    if let Some(field) = field.dyn_ref::<web_sys::HtmlTextAreaElement>() {
        // A field that is gone has no caret.
        let _ = field.set_selection_range(at, at);
    }
}

fn dropped(store: EditorStore, event: &web_sys::DragEvent) {
    event.prevent_default();
    let file = event.data_transfer().and_then(|data| data.files()).and_then(|files| files.get(0));
    if let Some(file) = file {
        files::open_file(store, file, || ());
    }
}
