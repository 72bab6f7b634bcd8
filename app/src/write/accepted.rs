//! A warning that somebody has accepted: what it is, why, who and when, and the key that takes that back.

use super::why::Why;
use crate::state::EditorStore;
use crate::state::accepting::Accepted;
use leptos::prelude::*;

/// The text in the margin.
#[component]
pub fn AcceptedText(
    /// The editor's state.
    store: EditorStore,
    /// What was accepted.
    accepted: Accepted,
) -> impl IntoView {
    let Accepted { code, title, reason, by, date, at } = accepted;
    let when = date.map(|date| format!(", {date}")).unwrap_or_default();
    let what = title.unwrap_or_else(|| "This is found no more, and its acceptance can go.".to_owned());
    view! {
        <div class="finding accepted">
            <span class="title">{what}</span>
            <p>"Accepted by " {by} {when} ": " {reason}</p>
            <div class="code">
                {code.clone()} " " <Why code />
                <button type="button" class="quiet why-key" on:click=move |_| store.take_acceptance_back(at)>"Take back"</button>
            </div>
        </div>
    }
}
