//! What the steps need of one list of the kit: a line each, with the steps that need it and a key that makes an entry of
//! it, to be said otherwise.

use crate::route::{Screen, go};
use crate::state::{Command, EditorStore};
use leptos::prelude::*;
use procedures_schema::derive::kit::Needed;

/// The lines of a list; nothing if the steps need nothing of it.
#[component]
pub fn FromSteps(
    /// The editor's state.
    store: EditorStore,
    /// What the steps need of this list.
    needed: Memo<Vec<Needed>>,
    /// What is done once one has become an entry.
    made: Callback<()>,
) -> impl IntoView {
    let line = move |one: Needed| view! { <Line store one made /> };
    let list = move || {
        let lines = needed.get().into_iter().map(line).collect_view();
        (!needed.with(Vec::is_empty))
            .then(|| view! { <ul class="from-steps" aria-label="From the steps">{lines}</ul> })
    };
    view! { {list} }
}

#[component]
fn Line(store: EditorStore, one: Needed, made: Callback<()>) -> impl IntoView {
    let words = one.to_string();
    let label = format!("Change {words}");
    let leads = one.steps.iter().map(|number| view! { <StepLead store number=*number /> }).collect_view();
    let word = if one.steps.len() == 1 { "for step" } else { "for steps" };
    let write = move |_| {
        store.write_into_kit(&one);
        made.run(());
    };
    view! {
        <li>
            <span class="needed">{words}</span>
            <span class="uses">{word}{leads}</span>
            <button type="button" class="quiet" aria-label=label on:click=write>"Change"</button>
        </li>
    }
}

/// A number that leads to its step in Write.
#[component]
fn StepLead(store: EditorStore, number: usize) -> impl IntoView {
    let lead = move |_| {
        let step = store.document().with_untracked(|document| {
            number.checked_sub(1).and_then(|at| document.steps.get(at)).map(|step| step.id.clone())
        });
        store.run(Command::Select(step));
        go(Screen::Write);
    };
    view! { <button type="button" class="link" aria-label=format!("Step {number}") on:click=lead>{number}</button> }
}
