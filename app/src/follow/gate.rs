//! The gate before a rejected procedure: nobody follows one without a name and a reason.

use super::job_store::JobStore;
use leptos::prelude::*;

/// The gate.
#[component]
pub fn Gate(
    /// The state of Follow.
    jobs: JobStore,
) -> impl IntoView {
    let reason = RwSignal::new(String::new());
    let stamp = move || jobs.standing().with(|standing| standing.stamp.clone());
    let is_empty = move || reason.with(|reason| reason.trim().is_empty());
    let start = move |_| {
        if !is_empty() {
            jobs.all_the_same().set(Some(reason.get_untracked().trim().to_owned()));
        }
    };
    view! {
        <section class="now gate" aria-label="Before the start">
            <h1><span class="stamp rejected">{stamp}</span></h1>
            <p>
                "This procedure is rejected: as it stands it leaves somebody exposed or something undone. \
                 Go back to Write and mend it."
            </p>
            <label for="all-the-same">"To look at it step by step all the same, write your name and the reason"</label>
            <input
                id="all-the-same" type="text" autocomplete="off"
                prop:value=move || reason.get() on:input=move |event| reason.set(event_target_value(&event))
            />
            <button
                type="button" class="key" aria-disabled=move || if is_empty() { "true" } else { "false" } on:click=start
            >"Start all the same"</button>
        </section>
    }
}
