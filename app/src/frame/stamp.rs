//! The verdict as a stamp, and what is found besides, as the heads of all screens of the editor show them.

use crate::route::{Screen, go};
use crate::state::{Command, EditorStore};
use leptos::prelude::*;

/// The verdict, like a stamp: double frame rejected, single frame accepted, dashed frame while it is a draft. It opens
/// the list of all that is found.
#[component]
pub fn Stamp(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let told = store.told();
    let is_rejected = Memo::new(move |_| told.with(|told| told.is_rejected));
    let is_draft = Memo::new(move |_| told.with(|told| told.is_draft));
    let stamp = Memo::new(move |_| told.with(|told| told.stamp.clone()));
    let open = move |_| store.lists_findings().set(true);
    view! {
        <button type="button" class="stamp-key" aria-haspopup="dialog" title="All findings, F9" on:click=open>
            <strong class="stamp" class:rejected=is_rejected class:draft=is_draft>{stamp}</strong>
        </button>
    }
}

/// How many doubts and how much advice there is besides: the way to the next of them, or from another screen than
/// Write to the first.
#[component]
pub fn Besides(
    /// The editor's state.
    store: EditorStore,
    /// Whether it leads to the first.
    is_first: bool,
) -> impl IntoView {
    let besides = Memo::new(move |_| store.told().with(|told| told.besides.clone()));
    let is_any = Memo::new(move |_| besides.with(|besides| !besides.is_empty()));
    let lead = move |_| {
        if is_first {
            store.run(Command::FirstDoubt);
            go(Screen::Write);
        } else {
            store.run(Command::NextDoubt);
        }
    };
    let title = if is_first { "To the first of them" } else { "To the next of them" };
    let key = move || {
        view! { <button type="button" class="quiet besides" title=title on:click=lead>{besides}</button> }
    };
    move || is_any.get().then(key)
}
