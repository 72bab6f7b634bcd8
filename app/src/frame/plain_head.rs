//! The head of a screen beside Write: what is open, the tabs, the verdict, undo.

use super::judged_by::judged_by;
use super::later_key::LaterKey;
use super::stamp::{Besides, Stamp};
use crate::route::{Screen, Tabs};
use crate::state::{Command, EditorStore};
use leptos::prelude::*;

/// The head.
#[component]
pub fn PlainHead(
    /// The editor's state.
    store: EditorStore,
    /// The screen that is shown.
    shown: Screen,
) -> impl IntoView {
    let told = store.told();
    let title = Memo::new(move |_| told.with(|told| told.title.clone()));
    view! {
        <header class="plain-head">
            <h1 class="name">"Putback"</h1>
            <Tabs shown />
            <span class="title">{title}</span>
            <Standing store />
        </header>
    }
}

/// Verdict and undo, as on the other screens.
#[component]
fn Standing(store: EditorStore) -> impl IntoView {
    let labels = store.undo_labels();
    let undo = move || {
        labels.with(|(undo, _)| undo.as_ref().map_or("Undo".to_owned(), |label| format!("Undo: {label}")))
    };
    let cannot = move || labels.with(|(undo, _)| undo.is_none());
    let (cannot_redo, again) =
        (move || labels.with(|(_, redo)| redo.is_none()), move || labels.with(|(_, redo)| redo.clone()));
    view! {
        <button type="button" class="quiet undo" title=undo disabled=cannot on:click=move |_| store.run(Command::Undo)><span class="act">{undo}</span></button>
        <button type="button" class="quiet" title=again disabled=cannot_redo on:click=move |_| store.run(Command::Redo)>"Redo"</button>
        <div class="verdict"><LaterKey store /><span class="told" role="status"><Stamp store /><Besides store is_first=true /></span><span class="by">{judged_by(store)}</span></div>
    }
}
