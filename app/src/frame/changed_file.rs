//! A file that somebody else has changed meanwhile, and what can be done about it.

use crate::state::EditorStore;
use leptos::prelude::*;

/// Says what has become of the file and asks what is to be done; nothing is written before that.
#[component]
pub fn ChangedFileBar(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let changed = store.changed_file();
    let first = NodeRef::<leptos::html::Button>::new();
    Effect::new(move |_| {
        if changed.with(Option::is_some) {
            request_animation_frame(move || {
                if let Some(first) = first.get_untracked() {
                    // A key that cannot be focused has just gone.
                    let _ = first.focus();
                }
            });
        }
    });
    let bar = move || {
        changed.get().map(|file| {
            let what = format!("It is not what was read here: {}. Saving over it would lose that.", file.what.join("; ").trim_end_matches('.'));
            let open = file.can_be_opened.then(|| {
                view! { <button type="button" class="key" on:click=move |_| store.open_changed()>"Open the file instead"</button> }
            });
            view! {
                <p class="banner refused">
                    <span><strong>{format!("{} was not saved. ", file.name)}</strong>{what}</span>
                    <span class="keys">
                        <button type="button" class="key" node_ref=first on:click=move |_| store.save_elsewhere()>"Save to another file"</button>
                        {open}
                        <button type="button" class="quiet" on:click=move |_| store.leave_changed()>"Leave it"</button>
                        <button type="button" class="key grave apart-from" on:click=move |_| store.save_over()>"Save over it"</button>
                    </span>
                </p>
            }
        })
    };
    view! { <div role="alert">{bar}</div> }
}
