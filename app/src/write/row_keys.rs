//! The keys of the selected row, for hands without a keyboard and for what has no key.

use super::ladder_keys::LadderKeys;
use crate::state::{Command, EditorStore};
use leptos::prelude::*;
use procedures_schema::model::Id;

/// The keys of the selected row.
#[component]
pub fn RowKeys(
    /// The editor's state.
    store: EditorStore,
    /// The step.
    id: Id,
    /// Whether the fields of the step are shown.
    has_details: RwSignal<bool>,
    /// Whether the places to move it to are shown.
    has_places: RwSignal<bool>,
) -> impl IntoView {
    // What is pressed instead, for whoever has a keyboard.
    let key = move |name: &'static str, pressed: &'static str, command: Command| {
        view! {
            <button type="button" class="quiet" title=pressed on:click=move |_| store.run(command.clone())>{name}</button>
        }
    };
    view! {
        <div class="strip" role="group" aria-label="Keys for this step">
            <button
                type="button" class="quiet" aria-expanded=move || has_details.get().to_string()
                on:click=move |_| has_details.update(|has| *has = !*has)
            >"Details"</button>
            {key("New step below", "Ctrl+Enter", Command::DraftBelow(id.clone()))}
            <button type="button" class="quiet" aria-label="Move up" title="Alt+Up holds it there" on:click=move |_| store.run(Command::MoveUp)>"Up"</button>
            <button type="button" class="quiet" aria-label="Move down" title="Alt+Down holds it there" on:click=move |_| store.run(Command::MoveDown)>"Down"</button>
            <button
                type="button" class="quiet" aria-expanded=move || has_places.get().to_string()
                on:click=move |_| has_places.update(|has| *has = !*has)
            >"Move to…"</button>
            {key("Duplicate", "Ctrl+D", Command::Duplicate)}
            <CopyKeys store />
            {key("Remove step", "Delete", Command::RemoveSelection)}
            <LadderKeys store after=Some(id) />
        </div>
    }
}

/// Copying and pasting without a keyboard.
#[component]
fn CopyKeys(store: EditorStore) -> impl IntoView {
    let copied =
        Memo::new(move |_| store.copied().with(|copied| copied.as_ref().map_or(0, |c| c.steps.len())));
    let paste = move || {
        let name = match copied.get() {
            0 => return None,
            1 => "Paste the copied step".to_owned(),
            n => format!("Paste {n} copied steps"),
        };
        Some(view! {
            <button type="button" class="quiet" title="Ctrl+V" on:click=move |_| store.run(Command::PasteCopied)>{name}</button>
        })
    };
    let copy = move |_| {
        store.copy_selection();
    };
    view! { <button type="button" class="quiet" title="Ctrl+C" on:click=copy>"Copy"</button> {paste} }
}
