//! What was to be remembered for the way back, at the row where its thing goes back, with the way to where it was
//! written.

use crate::state::reminders::AtStep;
use crate::state::{Command, EditorStore};
use leptos::prelude::*;
use procedures_schema::model::Id;

/// The reminders that come up at a step.
#[component]
pub fn Reminders(
    /// The editor's state.
    store: EditorStore,
    /// The step.
    id: Id,
) -> impl IntoView {
    let all = store.reminders();
    let here = Memo::new(move |_| {
        all.with(|all| all.iter().filter(|one| one.at == id).cloned().collect::<Vec<_>>())
    });
    let shown = move |AtStep { from, text, .. }: AtStep| {
        let position = store.position(from.clone());
        let number = move || position.get().map_or(0, |position| position + 1);
        let go = move |_| store.run(Command::Select(Some(from.clone())));
        view! {
            <p class="reminder">
                "Remember, from "
                <button type="button" class="quiet" on:click=go>"step " {number}</button>
                ": " {text}
            </p>
        }
    };
    move || here.get().into_iter().map(shown).collect_view()
}
