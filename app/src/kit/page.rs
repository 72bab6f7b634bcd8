//! The Kit screen as a whole.

use super::columns::LISTS;
use super::list::KitListing;
use crate::frame::not_kept::NotKept;
use crate::frame::notice::Notice;
use crate::frame::other_tab::OtherTab;
use crate::frame::plain_foot::PlainFoot;
use crate::frame::plain_head::PlainHead;
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
        <div class="kit">
            <PlainHead store shown=Screen::Kit />
            <NotKept store />
            <OtherTab store />
            <Notice store />
            <main>
                <p class="empty">"What whoever does the job brings. A line \"bring: tool 17 mm spanner\" in Write adds to it too."</p>
                {LISTS.iter().map(listing).collect_view()}
            </main>
            <PlainFoot />
        </div>
    }
}
