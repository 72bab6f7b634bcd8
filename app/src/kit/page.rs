//! The Kit screen as a whole.

use super::columns::LISTS;
use super::list::KitListing;
use crate::frame::plain_screen::PlainScreen;
use crate::route::Screen;
use crate::state::EditorStore;
use leptos::prelude::*;

/// Everything of Kit.
#[component]
pub fn KitScreen(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let listing = move |listed| view! { <KitListing store listed /> };
    view! {
        <PlainScreen store shown=Screen::Kit class="kit">
            <p class="empty">"What whoever does the job brings. A line \"bring: tool 17 mm spanner\" in Write adds to it too."</p>
            {LISTS.iter().map(listing).collect_view()}
        </PlainScreen>
    }
}
