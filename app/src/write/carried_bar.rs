//! What steps from another procedure were taken to name, and the way to say otherwise.

use crate::state::EditorStore;
use leptos::prelude::*;

/// Names each thing that was taken for one of the same name, with a key that makes it another.
#[component]
pub fn CarriedBar(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let same = store.carried_here();
    let bar = move || {
        let same = same.get();
        (!same.is_empty()).then(|| {
            let apart = move |(id, name): (procedures_schema::model::Id, String)| {
                let words = format!("No, the {name} is another one");
                view! { <button type="button" class="key" on:click=move |_| store.carry_apart(id.clone())>{words}</button> }
            };
            view! {
                <p class="banner carried">
                    <span>"What has the same name here was taken for the same. Is it?"</span>
                    <span class="keys">
                        {same.into_iter().map(apart).collect_view()}
                        <button type="button" class="key" on:click=move |_| store.carried_well()>"Yes, the same"</button>
                    </span>
                </p>
            }
        })
    };
    view! { <div role="status">{bar}</div> }
}
