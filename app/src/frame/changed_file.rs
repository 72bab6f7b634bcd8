//! A file that is another state of what is here: changed by somebody else meanwhile, or opened over it; and what can be
//! done about it.

use crate::state::EditorStore;
use crate::state::filing::Meant;
use leptos::prelude::*;

/// Says what differs and asks what is to be done; nothing is written or opened before that.
#[component]
pub fn ChangedFileBar(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let changed = store.changed_file();
    let first = First::new();
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
        changed.get().map(|file| match file.meant {
            Meant::Save { can_be_opened } => not_saved(store, first, &file.name, &file.what, can_be_opened),
            Meant::Open(since) => not_opened(store, first, &file.name, &file.what, &since),
        })
    };
    view! { <div role="alert">{bar}</div> }
}

/// A key that the keyboard is led to.
type First = NodeRef<leptos::html::Button>;

fn not_saved(store: EditorStore, first: First, name: &str, what: &[String], can_be_opened: bool) -> AnyView {
    let what = format!(
        "It is not what was read here: {}. Saving over it would lose that.",
        what.join("; ").trim_end_matches('.')
    );
    let open = can_be_opened.then(|| {
        view! { <button type="button" class="key" on:click=move |_| store.open_changed()>"Open the file instead"</button> }
    });
    view! {
        <p class="banner refused">
            <span><strong>{format!("{name} was not saved. ")}</strong>{what}</span>
            <span class="keys">
                <button type="button" class="key" node_ref=first on:click=move |_| store.save_elsewhere()>"Save to another file"</button>
                {open}
                <button type="button" class="quiet" on:click=move |_| store.leave_changed()>"Leave it"</button>
                <button type="button" class="key grave apart-from" on:click=move |_| store.save_over()>"Save over it"</button>
            </span>
        </p>
    }
    .into_any()
}

fn not_opened(store: EditorStore, first: First, name: &str, what: &[String], since: &str) -> AnyView {
    let what = format!(
        "What is here of this procedure {since}. Opening the file would change it: {}.",
        what.join("; ").trim_end_matches('.')
    );
    view! {
        <p class="banner refused">
            <span><strong>{format!("{name} was not opened yet. ")}</strong>{what}</span>
            <span class="keys">
                <button type="button" class="key" node_ref=first on:click=move |_| store.leave_offered()>"Keep what is here"</button>
                <button type="button" class="key" on:click=move |_| store.open_offered_beside()>"Open it as another procedure"</button>
                <button type="button" class="key grave apart-from" on:click=move |_| store.open_offered()>"Open the file instead"</button>
            </span>
        </p>
    }
    .into_any()
}
