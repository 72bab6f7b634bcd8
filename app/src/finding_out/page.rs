//! The Later screen as a whole.

use super::open_row::{OpenRow, focus_row};
use crate::frame::plain_screen::PlainScreen;
use crate::route::{Screen, go};
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::model::OpenValue;

/// Everything of Later.
#[component]
pub fn LaterScreen(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let open = store.open_values();
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
            <ol class="later-walk">
                <For each=move || open.get() key=key children=move |value| view! { <OpenRow store value /> } />
            </ol>
            {done}
        </PlainScreen>
    }
}

/// What tells one open value from the others as long as it is open.
fn key(open: &OpenValue) -> String {
    format!("{:?} {} {}", open.place, open.what, open.who)
}
