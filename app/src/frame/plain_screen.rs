//! A screen beside Write: the head, what there is to tell, what it is for, the foot.

use super::not_kept::NotKept;
use super::notice::Notice;
use super::other_tab::OtherTab;
use super::plain_foot::PlainFoot;
use super::plain_head::PlainHead;
use super::tall_head::is_tall;
use super::undo_keys::undo_keys;
use crate::route::Screen;
use crate::state::EditorStore;
use leptos::prelude::*;

/// The screen around what stands in it.
#[component]
pub fn PlainScreen(
    /// The editor's state.
    store: EditorStore,
    /// Which screen it is.
    shown: Screen,
    /// Its class in the style sheets.
    class: &'static str,
    /// What stands in it.
    children: Children,
) -> impl IntoView {
    let keys = window_event_listener(leptos::ev::keydown, move |event| {
        undo_keys(store, &event);
    });
    on_cleanup(move || keys.remove());
    let head = NodeRef::<leptos::html::Div>::new();
    let is_tall = is_tall(head);
    view! {
        <div class=class>
            <div class="plain-top" class:tall=is_tall node_ref=head>
                <PlainHead store shown />
                <NotKept store />
                <OtherTab store />
                <Notice store />
            </div>
            <main>{children()}</main>
            <PlainFoot />
        </div>
    }
}
