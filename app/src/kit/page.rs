//! The Kit screen as a whole.

use super::columns::{LISTS, Listed};
use super::list::KitListing;
use crate::frame::plain_screen::PlainScreen;
use crate::route::Screen;
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::derive::kit::{Needed, needed};

/// Everything of Kit.
#[component]
pub fn KitScreen(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let document = store.document();
    let all = Memo::new(move |_| document.with(|document| needed(document)));
    let listing = move |listed: &'static Listed| {
        let of_list =
            move |all: &Vec<Needed>| all.iter().filter(|one| one.list == listed.list).cloned().collect();
        let needed = Memo::new(move |_| all.with(of_list));
        view! { <KitListing store listed needed /> }
    };
    view! {
        <PlainScreen store shown=Screen::Kit class="kit">
            <p class="empty">
                "What whoever does the job brings. What the steps need stands here by itself; add the rest, here or by a line such as \"bring: tool 17 mm spanner\" in Write."
            </p>
            {LISTS.iter().map(listing).collect_view()}
        </PlainScreen>
    }
}
