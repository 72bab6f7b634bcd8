//! The Later screen as a whole.

use super::open_row::OpenRow;
use crate::frame::not_kept::NotKept;
use crate::frame::notice::Notice;
use crate::frame::other_tab::OtherTab;
use crate::frame::plain_foot::PlainFoot;
use crate::frame::plain_head::PlainHead;
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
        <div class="finding-out">
            <PlainHead store shown=Screen::Later />
            <NotKept store />
            <OtherTab store />
            <Notice store />
            <main>
                <h2 class="stage" id="later-head" tabindex="-1">{head}</h2>
                {hint}
                <ol class="later-walk">
                    <For each=move || open.get() key=key children=move |value| view! { <OpenRow store value /> } />
                </ol>
                {done}
            </main>
            <PlainFoot />
        </div>
    }
}

/// What tells one open value from the others as long as it is open.
fn key(open: &OpenValue) -> String {
    format!("{:?} {} {}", open.place, open.what, open.who)
}
