//! A pasted text of very many lines: whether it is to be read, and how far the reading is. Nothing else can be done
//! meanwhile, because the text is read where it stands.

use crate::state::pasted_text::Done;
use crate::state::{Command, EditorStore};
use leptos::prelude::*;

/// The question, and then the progress.
#[component]
pub fn LongTextDialog(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let long = store.long_text();
    let dialog = NodeRef::<leptos::html::Dialog>::new();
    let is_open = Memo::new(move |_| long.with(Option::is_some));
    Effect::new(move |_| {
        let Some(dialog) = dialog.get() else { return };
        if is_open.get() {
            // It is refused only while it is open already.
            let _ = dialog.show_modal();
        } else {
            dialog.close();
        }
    });
    let done = Memo::new(move |_| long.with(|long| long.as_ref().and_then(|long| long.done)));
    let stage = Memo::new(move |_| match done.get() {
        None => Stage::Asked,
        Some(Done::Read(..)) => Stage::Read,
        Some(Done::Drawn(..)) => Stage::Drawn,
    });
    let n_lines = Memo::new(move |_| long.with(|long| long.as_ref().map_or(0, |long| long.n_lines)));
    let words = move || {
        let n = n_lines.get();
        match stage.get() {
            Stage::Asked => format!(
                "The text has {n} lines. Reading them all takes a while; as plain rows they are words that nobody has read."
            ),
            Stage::Read => format!("The text has {n} lines. It is being read."),
            Stage::Drawn => format!("The text has {n} lines. Its rows are put in place."),
        }
    };
    let leave = move |event: web_sys::Event| {
        event.prevent_default();
        store.run(Command::LeaveLongText);
    };
    view! {
        <dialog class="long-text" node_ref=dialog aria-labelledby="long-text-words" on:cancel=leave>
            <p id="long-text-words">{words}</p>
            {move || (stage.get() != Stage::Asked).then(|| view! { <Progress done /> })}
            {move || (stage.get() != Stage::Drawn).then(|| view! {
                <div class="strip">
                    {(stage.get() == Stage::Asked).then(|| view! {
                        <button type="button" class="key" autofocus on:click=move |_| store.run(Command::ReadLongText)>"Read them all"</button>
                    })}
                    <button type="button" class="key" on:click=move |_| store.run(Command::LongTextPlain)>"As plain rows"</button>
                    <button type="button" class="key" title="Esc" on:click=move |_| store.run(Command::LeaveLongText)>"Leave it"</button>
                </div>
            })}
        </dialog>
    }
}

/// What is done with the text.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Stage {
    Asked,
    Read,
    Drawn,
}

/// How far that is.
#[component]
fn Progress(done: Memo<Option<Done>>) -> impl IntoView {
    let of = move || match done.get() {
        Some(Done::Read(n, of) | Done::Drawn(n, of)) => (n, of),
        None => (0, 1),
    };
    view! {
        <p>
            <progress aria-label="Done" max=move || of().1.to_string() prop:value=move || of().0.to_string()></progress>
            " " {move || format!("{} of {}", of().0, of().1)}
        </p>
    }
}
