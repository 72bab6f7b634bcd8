//! The form in which a warning is accepted: why, and by whom.

use crate::state::EditorStore;
use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
use procedures_schema::check::Finding;

/// The form, opened and closed by its key.
#[component]
pub fn Accepting(
    /// The editor's state.
    store: EditorStore,
    /// The warning.
    finding: Finding,
    /// Whether the form is open.
    is_open: RwSignal<bool>,
) -> impl IntoView {
    let finding = StoredValue::new(finding);
    move || is_open.get().then(|| view! { <Form store finding is_open /> })
}

#[component]
fn Form(store: EditorStore, finding: StoredValue<Finding>, is_open: RwSignal<bool>) -> impl IntoView {
    let (reason, by) = (RwSignal::new(String::new()), RwSignal::new(store.last_to_accept()));
    let first = NodeRef::<leptos::html::Input>::new();
    Effect::new(move |_| {
        if let Some(first) = first.get() {
            // A field that cannot be focused has just gone.
            let _ = first.focus();
        }
    });
    let lacks = move || reason.with(|text| text.trim().is_empty()) || by.with(|text| text.trim().is_empty());
    let accept = move || {
        if !lacks() {
            finding.with_value(|finding| store.accept(finding, &reason.get_untracked(), &by.get_untracked()));
        }
    };
    let keydown = move |event: KeyboardEvent| {
        match event.key().as_str() {
            "Enter" if !event.is_composing() => accept(),
            "Escape" => is_open.set(false),
            _ => return,
        }
        event.prevent_default();
        event.stop_propagation();
    };
    let n = store.n_alike(&finding.get_value());
    let alike =
        (n > 1).then(|| view! { <p>{format!("This accepts all {n} findings of this rule here.")}</p> });
    view! {
        <div class="accepting" role="group" aria-label="Accept this warning" on:keydown=keydown>
            {alike}
            <label class="field">
                <span>"Why it can stay"</span>
                <input
                    type="text" node_ref=first autocomplete="off" prop:value=move || reason.get()
                    on:input=move |event| reason.set(event_target_value(&event))
                />
            </label>
            <label class="field">
                <span>"Who says so"</span>
                <input
                    type="text" autocomplete="off" spellcheck="false" prop:value=move || by.get()
                    on:input=move |event| by.set(event_target_value(&event))
                />
            </label>
            <button type="button" class="key first" disabled=lacks on:click=move |_| accept()>"Accept this warning"</button>
        </div>
    }
}
