//! One key that offers the ladder of each circuit: the steps from live to proved, ready made.

use crate::state::{Command, EditorStore};
use leptos::prelude::*;
use procedures_schema::model::Id;

/// The key, and the circuits once it is pressed.
#[component]
pub fn LadderKeys(
    /// The editor's state.
    store: EditorStore,
    /// The step below which the ladder is written; at the end, if none.
    after: Option<Id>,
) -> impl IntoView {
    let is_open = RwSignal::new(false);
    let after = StoredValue::new(after);
    let circuits = move || {
        let named = |circuit: &procedures_schema::model::Circuit| {
            let command = Command::AddLadder { after: after.get_value(), circuit: circuit.id.clone() };
            let press = move |_| {
                is_open.set(false);
                store.run(command.clone());
            };
            view! { <button type="button" class="quiet" on:click=press>"Make safe: " {circuit.name.clone()}</button> }
        };
        store.document().with(|document| {
            if document.map.circuits.is_empty() {
                view! { <span class="none">"No circuit is on the map yet. A step that shuts one off makes it, such as \"Switch off at the wall switch.\""</span> }.into_any()
            } else {
                document.map.circuits.iter().map(named).collect_view().into_any()
            }
        })
    };
    view! {
        <button
            type="button" class="quiet" aria-expanded=move || if is_open.get() { "true" } else { "false" }
            on:click=move |_| is_open.update(|open| *open = !*open)
        >"Ladder"</button>
        {move || is_open.get().then(circuits)}
    }
}
