//! A figure of which the words say one thing and the map another: two keys, one for each.

use crate::state::heard::Heard;
use crate::state::{Command, EditorStore};
use leptos::prelude::*;
use procedures_schema::capture::Differing;
use procedures_schema::model::Id;
use std::sync::Arc;

/// The figures, while there are any.
#[component]
pub fn TwoFigures(
    /// The editor's state.
    store: EditorStore,
    /// The step.
    id: Id,
    /// What the line hears in its words.
    heard: Memo<Arc<Heard>>,
) -> impl IntoView {
    let id = StoredValue::new(id);
    let figures = Memo::new(move |_| heard.with(|heard| heard.differing.clone()));
    move || figures.get().into_iter().map(|figure| one(store, id, figure)).collect_view()
}

fn one(store: EditorStore, id: StoredValue<Id>, figure: Differing) -> impl IntoView {
    let name = store.map().with_untracked(|map| map.name_of(&figure.thing).to_owned());
    let label = format!("Two figures of the {name}");
    let (said, held) = (figure.said.to_string(), figure.held.to_string());
    let taken = figure.clone();
    let take = move |_| store.run(Command::TakeFigure { step: id.get_value(), figure: taken.clone() });
    let write = move |_| store.run(Command::WriteFigure { step: id.get_value(), figure: figure.clone() });
    view! {
        <p class="notation two-figures" role="group" aria-label=label>
            <span>{name} ": the words say " {said.clone()} ", the map says " {held.clone()}</span>
            <button type="button" class="quiet" on:click=take>"Put " {said} " on the map"</button>
            <button type="button" class="quiet" on:click=write>"Write " {held} " here"</button>
        </p>
    }
}
