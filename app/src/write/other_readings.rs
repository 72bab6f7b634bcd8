//! What words of the selected step can be read as, as numbered keys; the one that holds now is marked.

use crate::components::notation_line::one_action;
use crate::state::readings::Offered;
use crate::state::{Command, EditorStore};
use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
use procedures_schema::model::{Action, Id};

/// The readings, while they are asked for.
#[component]
pub fn OtherReadings(
    /// The editor's state.
    store: EditorStore,
    /// The step.
    id: Id,
) -> impl IntoView {
    let offered = store.offered(id.clone());
    let id = StoredValue::new(id);
    move || offered.get().map(|offered| keys(store, id, offered))
}

fn keys(store: EditorStore, id: StoredValue<Id>, offered: Offered) -> impl IntoView {
    let Offered { said, choices, now } = offered;
    let n_choices = choices.len();
    let take = move |choice| store.run(Command::ReadAs { step: id.get_value(), choice });
    let keydown = move |event: KeyboardEvent| {
        let digit = event.key().parse::<usize>().ok().filter(|digit| (1..=n_choices).contains(digit));
        if let Some(digit) = digit {
            take(digit - 1);
        } else if event.key() == "Escape" {
            store.run(Command::CloseReadings);
        } else {
            return;
        }
        event.prevent_default();
        event.stop_propagation();
    };
    let first = move |at: usize| (at == 0).then(|| format!("reading-{}", id.get_value()));
    let choice = |(at, (action, is_now)): (usize, (Action, bool))| {
        let reading = store.map().with_untracked(|map| one_action(&action, map));
        view! {
            <button type="button" class="key" id=first(at) aria-pressed=is_now.to_string() on:click=move |_| take(at)>
                <span class="nth" aria-hidden="true">{at + 1}</span> {reading} {is_now.then_some(" (as it is)")}
            </button>
        }
    };
    let keys = choices.into_iter().enumerate().map(choice).collect_view();
    let decline = now.map(|action| {
        let decline = move |_| store.run(Command::Decline { step: id.get_value(), action });
        view! { <button type="button" class="quiet" on:click=decline>"Not an action"</button> }
    });
    let says = if n_choices == 0 {
        "No reading is known of these words; mark those that say it, or name a thing in them."
    } else {
        "can say:"
    };
    let leave_id = if n_choices == 0 { first(0) } else { None };
    view! {
        <div class="choices readings" role="group" aria-label="Other readings" on:keydown=keydown>
            <p class="doubt">"\u{201c}" {said} "\u{201d} " {says}</p>
            {keys}
            {decline}
            <button type="button" class="quiet" id=leave_id on:click=move |_| store.run(Command::CloseReadings)>
                "Leave it"
            </button>
        </div>
    }
}
