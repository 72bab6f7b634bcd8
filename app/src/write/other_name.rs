//! Another name for the thing of an action: the words that call it so, to be corrected or taken as they are.

use crate::state::EditorStore;
use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
use procedures_schema::model::Id;

/// The field with its key.
#[component]
pub fn OtherName(
    /// The editor's state.
    store: EditorStore,
    /// The thing.
    thing: Id,
    /// What the words call it.
    called: String,
    /// What follows when it is done or left.
    done: Callback<()>,
) -> impl IntoView {
    let name = store.map().with_untracked(|map| map.name_of(&thing).to_owned());
    let field = NodeRef::<leptos::html::Input>::new();
    Effect::new(move |_| {
        if let Some(field) = field.get() {
            // A field that cannot be focused has just gone.
            let _ = field.focus();
            field.select();
        }
    });
    let add = move || {
        let typed = field.get_untracked().map(|field| field.value()).unwrap_or_default();
        if store.add_other_name(&thing, &typed) {
            done.run(());
        }
    };
    let add_too = add.clone();
    let keydown = move |event: KeyboardEvent| {
        match event.key().as_str() {
            "Enter" if !event.is_composing() => add_too(),
            "Escape" => done.run(()),
            _ => return,
        }
        event.prevent_default();
        event.stop_propagation();
    };
    view! {
        <div class="whole other-name">
            <label class="field">
                <span>"Another name for the " {name}</span>
                <input type="text" spellcheck="false" autocomplete="off" node_ref=field value=called on:keydown=keydown />
            </label>
            <button type="button" class="key" on:click=move |_| add()>"Add the name"</button>
        </div>
    }
}
