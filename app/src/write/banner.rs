//! What the page has to tell above the rows: the step that the demonstration lacks, and what came of a
//! pasted text.

use crate::state::{Command, EditorStore};
use leptos::prelude::*;

/// Says that a step of the demonstration is out, and offers to put it back.
#[component]
pub fn Banner(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let taken_out = store.taken_out();
    move || {
        taken_out.get().map(|_| {
            view! {
                <p class="banner">
                    <span>
                        "One step of this procedure has been taken out. See what the lanes, the margin and the stamp \
                         say, then put it back. Appliance, people and figures are invented."
                    </span>
                    <button type="button" class="key first" on:click=move |_| store.run(Command::PutBack)>"Put it back"</button>
                </p>
            }
        })
    }
}

/// What came of a pasted text, with the way to what wants a look.
#[component]
pub fn PastedText(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let review = store.review();
    let left = store.left_of_review();
    let next = move || {
        let n = left.with(|left| left.steps.len());
        (n > 0).then(|| {
            let name = if n == 1 { "Look at the one left".to_owned() } else { format!("Next of {n} to look at") };
            view! { <button type="button" class="key" on:click=move |_| store.run(Command::NextOfReview)>{name}</button> }
        })
    };
    let undo = move |_| store.run(Command::UndoReview);
    // What was done since goes with it, so the key says so.
    let since = store.since_review();
    let is_there = Memo::new(move |_| since.with(Option::is_some));
    let undo_name = move || match since.get() {
        None | Some(0) => "Undo all".to_owned(),
        Some(1) => "Undo all, and one change since".to_owned(),
        Some(n) => format!("Undo all, and {n} changes since"),
    };
    let title =
        Memo::new(move |_| review.with(|review| review.as_ref().and_then(|review| review.title.clone())));
    let head = Memo::new(move |_| {
        left.with(|left| review.with(|review| review.as_ref().map(|review| review.head(left))))
            .unwrap_or_default()
    });
    let is_shown = Memo::new(move |_| review.with(Option::is_some) && is_there.get());
    move || {
        is_shown.get().then(|| {
            let title = move || title.get().map(|title| view! {
                <span class="named">"Its first line is the title: " <strong>{title}</strong></span>
                <button type="button" class="quiet" on:click=move |_| store.run(Command::TitleIsStep)>"It is a step"</button>
            });
            view! {
                <p class="banner pasted" role="status">
                    <span>{head}</span>
                    {title}
                    {next}
                    <button type="button" class="key" on:click=undo>{undo_name}</button>
                    <button
                        type="button" class="key" title="Esc at a question; undo brings back what was read"
                        on:click=move |_| store.run(Command::PlainReview)
                    >"As plain rows"</button>
                    <button type="button" class="key" on:click=move |_| review.set(None)>"Close"</button>
                </p>
            }
        })
    }
}
