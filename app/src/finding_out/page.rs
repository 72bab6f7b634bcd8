//! The Later screen as a whole.

use super::brought::{FoundFiles, SheetKeys};
use super::open_row::{OpenRow, focus_row, lead_to_head};
use crate::frame::plain_screen::PlainScreen;
use crate::route::{Screen, go};
use crate::state::EditorStore;
use crate::state::found::Offer;
use leptos::prelude::*;
use procedures_schema::model::{Found, OpenValue};

/// What was not taken of several answers, and why.
pub type Refused = RwSignal<Vec<(Found, String)>>;

/// Everything of Later.
#[component]
pub fn LaterScreen(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let open = store.open_values();
    look_for_found(store);
    let offers = store.offers();
    let refused: Refused = RwSignal::new(Vec::new());
    // The fields stand in the page by then.
    request_animation_frame(|| focus_row(0));
    let head = move || match open.with(Vec::len) {
        0 => "Nothing is left to find out".to_owned(),
        1 => "One value is still to be found out".to_owned(),
        n => format!("{n} values are still to be found out"),
    };
    let done = move || {
        open.with(Vec::is_empty).then(|| {
            view! { <button type="button" class="key" on:click=move |_| go(Screen::Write)>"Back to Write"</button> }
        })
    };
    let hint = move || {
        (!open.with(Vec::is_empty))
            .then(|| view! { <p class="empty">"Enter keeps an answer and goes to the next. Tab leaves one open."</p> })
    };
    view! {
        <PlainScreen store shown=Screen::Later class="finding-out">
            <h2 class="stage" id="later-head" tabindex="-1">{head}</h2>
            {hint}
            <SheetKeys store has_open=Signal::derive(move || !open.with(Vec::is_empty))>
                <TakeAll store offers refused />
            </SheetKeys>
            <FoundFiles store />
            <ol class="later-walk">
                <For
                    each=move || open.get() key=key
                    children=move |value| view! { <OpenRow store value offers refused /> }
                />
            </ol>
            {done}
        </PlainScreen>
    }
}

/// What tells one open value from the others as long as it is open.
fn key(open: &OpenValue) -> String {
    format!("{:?} {} {}", open.place, open.what, open.who)
}

/// Asks the device for what was found on jobs of the procedure that is open.
fn look_for_found(store: EditorStore) {
    let document = store.document();
    let id = Memo::new(move |_| document.with(|document| document.id.clone()));
    Effect::new(move |_| store.look_for_found(id.get()));
}

/// The key that takes the latest answer to each value.
#[component]
fn TakeAll(
    store: EditorStore,
    offers: Memo<Vec<(OpenValue, Vec<Offer>)>>,
    refused: Refused,
) -> impl IntoView {
    let take = move |_| {
        let latest = |(_, offers): &(OpenValue, Vec<Offer>)| offers.first().map(|offer| offer.found.clone());
        let found: Vec<Found> = offers.with_untracked(|offers| offers.iter().filter_map(latest).collect());
        refused.set(store.take_found(&found));
        // If some are left, so is the key.
        request_animation_frame(lead_to_head);
    };
    let n = Memo::new(move |_| offers.with(Vec::len));
    move || {
        let name = match n.get() {
            0 | 1 => return None,
            2 => "Take both".to_owned(),
            n => format!("Take all {n}"),
        };
        Some(view! { <button type="button" class="key" on:click=take>{name}</button> })
    }
}
