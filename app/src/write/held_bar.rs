//! What is held, where it would go and what that would change; with the keys to drop it or to put it back.

use crate::state::{Command, EditorStore};
use leptos::prelude::*;

/// The bar at the foot of the screen, while something is held.
#[component]
pub fn HeldBar(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let change = store.held_change();
    let held = store.held();
    let is_holding = Memo::new(move |_| held.with(Option::is_some));
    let place = move || {
        held.with(|held| {
            held.as_ref().map(|held| {
                let (from, to) = (held.from + 1, held.to + 1);
                match (held.steps.len(), from == to) {
                    (1, true) => format!("Step {from} in hand"),
                    (1, false) => format!("Step {from} would be step {to}"),
                    (n, true) => format!("{n} steps in hand, from step {from} on"),
                    (n, false) => format!("{n} steps would begin at {to}, not at {from}"),
                }
            })
        })
    };
    let key = move |name: &'static str, class: &'static str, command: Command| {
        view! { <button type="button" class=class on:click=move |_| store.run(command.clone())>{name}</button> }
    };
    view! {
        <div role="status">
            {move || is_holding.get().then(|| view! {
                <div class="held-bar">
                    <p>{place} " · " <strong class="change-held">{move || change.get()}</strong></p>
                    {key("Drop here", "key", Command::Drop)}
                    {key("Put back", "quiet", Command::PutHeldBack)}
                    <span class="hint">"Enter · Esc"</span>
                </div>
            })}
        </div>
    }
}
