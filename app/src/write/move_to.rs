//! Where the selected steps can be moved to, as a list; so that nothing needs to be dragged.

use crate::components::fields::ChoiceField;
use crate::state::{Command, EditorStore};
use leptos::prelude::*;

/// Longer words are cut in the list.
const MOST_LETTERS: usize = 60;

/// The list and its key.
#[component]
pub fn MoveTo(
    /// The editor's state.
    store: EditorStore,
    /// Whether the list is shown.
    has_places: RwSignal<bool>,
) -> impl IntoView {
    let chosen = RwSignal::new(String::new());
    let places = Memo::new(move |_| places(store));
    Effect::new(move |_| {
        let first = places.with(|places| places.first().map(|(at, _)| at.clone()));
        chosen.set(first.unwrap_or_default());
    });
    let send = Callback::new(move |at| chosen.set(at));
    let go = move |_| {
        if let Ok(at) = chosen.get_untracked().parse() {
            has_places.set(false);
            store.run(Command::MoveTo(at));
        }
    };
    view! {
        <div class="move-to">
            <ChoiceField label="Move to" value=chosen.into() options=places.into() send />
            <button type="button" class="key" on:click=go>"Move"</button>
        </div>
    }
}

/// The positions that the first of the selected steps could have, and what it would stand before.
fn places(store: EditorStore) -> Vec<(String, String)> {
    let selection = store.selection().get();
    store.document().with(|document| {
        let from = selection.first().and_then(|step| document.position(step));
        let others = document.steps.iter().enumerate().filter(|(_, step)| !selection.contains(&step.id));
        let named = others.enumerate().map(|(to, (at, step))| {
            let cut: String = store.shown_words(step).chars().take(MOST_LETTERS).collect();
            (to, format!("before {}: {cut}", at + 1))
        });
        let n_others = document.steps.len().saturating_sub(selection.len());
        let all = named.chain([(n_others, "the end".to_owned())]);
        all.filter(|(to, _)| Some(*to) != from).map(|(to, name)| (to.to_string(), name)).collect()
    })
}
