//! Warnings that somebody has accepted: what each is, why, who and when, and the key that takes it back. In the margin
//! of their rows, and at the end as a list for whoever approves the procedure.

use super::why::Why;
use crate::state::accepting::Accepted;
use crate::state::{Command, EditorStore};
use leptos::prelude::*;

/// One in the margin of its row.
#[component]
pub fn AcceptedText(
    /// The editor's state.
    store: EditorStore,
    /// What was accepted.
    accepted: Accepted,
) -> impl IntoView {
    let told = told(&accepted);
    let Accepted { code, title, at, .. } = accepted;
    view! {
        <div class="finding accepted">
            <span class="title">{title}</span>
            <p>{told}</p>
            <div class="code">{code.clone()} " " <Why code /> {take_back(store, at)}</div>
        </div>
    }
}

/// All of them.
#[component]
pub fn AcceptedList(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let all = store.accepted();
    let one = move |accepted: Accepted| {
        let told = told(&accepted);
        let Accepted { step, code, title, at, .. } = accepted;
        let title = title.unwrap_or_else(|| "This is found no more, and its acceptance can go".to_owned());
        let title = match step {
            Some((step, _)) => {
                let go = move |_| store.run(Command::Select(Some(step.clone())));
                view! { <button type="button" class="link title" on:click=go>{title}</button> }.into_any()
            }
            None => view! { <span class="title">{title}</span> }.into_any(),
        };
        view! { <li>{title} <p>{told}</p> <div class="code">{code} " " {take_back(store, at)}</div></li> }
    };
    move || {
        let all = all.get();
        (!all.is_empty()).then(|| {
            view! {
                <section class="accepted-list" aria-labelledby="accepted-head">
                    <h2 id="accepted-head">"Accepted warnings"</h2>
                    <ul>{all.into_iter().map(one).collect_view()}</ul>
                </section>
            }
        })
    }
}

fn told(accepted: &Accepted) -> String {
    let when = accepted.date.map(|date| format!(", {date}")).unwrap_or_default();
    format!("Accepted by {}{when}: {}", accepted.by, accepted.reason)
}

fn take_back(store: EditorStore, at: usize) -> impl IntoView {
    view! {
        <button type="button" class="quiet why-key" on:click=move |_| store.take_acceptance_back(at)>"Take back"</button>
    }
}
