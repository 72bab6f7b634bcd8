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
    // The style sheet sets them upright where the longest word is wider than a lane.
    let longest = move || {
        let heads = store.heads();
        heads.with(|heads| {
            heads.iter().map(|head| longest_word(&head.name)).max().unwrap_or(0).max(1).to_string()
        })
    };
    view! {
        <div class="heads" aria-hidden="true" style=("--word", longest)>
            <div class="lanes">{heads}<span class="lane-head apart"><span>"apart"</span></span></div>
        </div>
    }
}

/// How many letters its longest word has.
fn longest_word(name: &str) -> usize {
    name.split_whitespace().map(|word| word.chars().count()).max().unwrap_or(0)
}
