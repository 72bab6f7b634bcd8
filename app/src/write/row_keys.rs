//! The keys of the selected row, for hands without a keyboard and for what has no key.

use super::copying::{copy_by_key, cut_by_key};
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
    let what = what_is_selected(store);
    let remove = move || match what.get() {
        "" => "Remove step".to_owned(),
        what => format!("Remove {what}"),
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
            <CopyKeys store what />
            <button type="button" class="quiet" title="Delete" on:click=move |_| store.run(Command::RemoveSelection)>{remove}</button>
            <LadderKeys store after=Some(id) />
        </div>
    }
}

/// What is selected beside the one step: nothing, several steps, a stage as a whole.
fn what_is_selected(store: EditorStore) -> Memo<&'static str> {
    let (is_stage, selection) = (store.is_stage_selected(), store.selection());
    Memo::new(move |_| match selection.with(Vec::len) {
        _ if is_stage.get() => "the stage",
        0 | 1 => "",
        _ => "the steps",
    })
}

/// Duplicating, copying, cutting and pasting without a keyboard.
#[component]
fn CopyKeys(store: EditorStore, what: Memo<&'static str>) -> impl IntoView {
    let copied = Memo::new(move |_| {
        store.copied().with(|copied| copied.as_ref().map_or((0, false), |c| (c.steps.len(), c.is_stage)))
    });
    let paste = move || {
        let name = match copied.get() {
            (0, _) => return None,
            (_, true) => "Paste the copied stage".to_owned(),
            (1, _) => "Paste the copied step".to_owned(),
            (n, _) => format!("Paste {n} copied steps"),
        };
        Some(view! {
            <button type="button" class="quiet" title="Ctrl+V" on:click=move |_| store.run(Command::PasteCopied)>{name}</button>
        })
    };
    let named = move |verb: &'static str| move || format!("{verb} {}", what.get()).trim().to_owned();
    view! {
        <button type="button" class="quiet" title="Ctrl+D" on:click=move |_| store.run(Command::Duplicate)>{named("Duplicate")}</button>
        <button type="button" class="quiet" title="Ctrl+C" on:click=move |_| copy_by_key(store)>{named("Copy")}</button>
        <button type="button" class="quiet" title="Ctrl+X" on:click=move |_| cut_by_key(store)>{named("Cut")}</button>
        {paste}
    }
}
