//! The heads of the lanes: the names of the circuits, and of the curve beside them.

use crate::components::lane::{code_stripe, colour};
use crate::state::EditorStore;
use leptos::prelude::*;

/// The heads; they stay in sight while the rows scroll.
#[component]
pub fn Heads(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let heads = move || {
        store.heads().with(|heads| {
            let head = |head: &procedures_schema::derive::lanes::LaneHead| {
                let stripe = code_stripe(&head.kind).map(|colour| view! { <i class=format!("stripe {colour}")></i> });
                view! { <span class=format!("lane-head k-{}", colour(&head.kind))><span>{head.name.clone()}</span>{stripe}</span> }
            };
            heads.iter().map(head).collect_view()
        })
    };
    view! {
        <div class="heads" aria-hidden="true">
            <div class="lanes">{heads}<span class="lane-head apart"><span>"apart"</span></span></div>
        </div>
    }
}
