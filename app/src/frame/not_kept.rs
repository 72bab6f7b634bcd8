//! What is so while the device keeps nothing: why, what that means, and the way to a file.

use crate::state::{EditorStore, clock};
use leptos::prelude::*;

/// Says that nothing is kept, until it is kept again; then says that.
#[component]
pub fn NotKept(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let refusal = store.keeper().refusal();
    let again = store.keeper().kept_again();
    let refused = move || {
        refusal.get().map(|refusal| {
            let since = format!("Not kept on this device since {}: ", clock::to_the_second(refusal.since_ms));
            view! {
                <p class="banner refused">
                    <span>
                        <strong>{since}</strong>{refusal.reason}
                        ". What you write now is in this tab alone: leave it open, or save a file. Keeping is tried \
                         again every few seconds."
                    </span>
                    <button type="button" class="key first" on:click=move |_| store.save()>"Save as a file"</button>
                </p>
            }
        })
    };
    let kept_again = move || {
        again.get().map(|at| {
            view! {
                <p class="banner kept-again">
                    <span><strong>{format!("Kept again at {}", clock::to_the_second(at))}</strong>", with everything written meanwhile."</span>
                    <button type="button" class="key" on:click=move |_| again.set(None)>"Close"</button>
                </p>
            }
        })
    };
    view! { <div role="alert">{refused}</div><div role="status">{kept_again}</div> }
}
