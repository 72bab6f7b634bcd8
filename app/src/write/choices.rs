//! The question about words that can mean more than one thing, with its answers as numbered keys.

use super::also_for::AlsoFor;
use crate::state::doubts::Open;
use crate::state::heard::Heard;
use crate::state::{Command, EditorStore};
use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
use procedures_schema::model::Id;
use std::sync::Arc;

/// The character that a key types, if it types one.
fn letter(event: &KeyboardEvent) -> Option<String> {
    let key = event.key();
    let types = key.chars().count() == 1 && !event.ctrl_key() && !event.meta_key() && !event.alt_key();
    (types && !event.is_composing()).then_some(key)
}

/// How many answers a digit can pick.
const MOST: usize = 9;

/// The first open question of a step; the next follows when it is answered.
#[component]
pub fn Choices(
    /// The editor's state.
    store: EditorStore,
    /// The step.
    id: Id,
    /// What the line hears in its words.
    heard: Memo<Arc<Heard>>,
) -> impl IntoView {
    let first = Memo::new(move |_| heard.with(|heard| heard.open.first().cloned()));
    let id = StoredValue::new(id);
    move || first.get().map(|doubt| asked(store, id, doubt))
}

/// An answer as it is shown.
struct Numbered {
    name: String,
    /// Why it comes into question, or how it stands.
    stands: Option<String>,
    /// The number by which it is answered, among those that are not shown too.
    choice: usize,
}

/// The answers that digits pick: the things that are known, and what would be new last.
fn answers(store: EditorStore, id: &Id, doubt: &Open) -> Vec<Numbered> {
    let mut new = store.offered_as_new(id, doubt);
    let names = doubt.choices();
    let n_known = names.len();
    let stand = store.how_answers_stand(id, doubt).into_iter().chain(std::iter::repeat(None));
    let known = names.into_iter().zip(stand).enumerate();
    let known = known.map(|(choice, (name, stands))| Numbered { name, stands, choice });
    let mut answers: Vec<Numbered> = known.take(MOST - usize::from(!new.is_empty())).collect();
    new.truncate(MOST - answers.len());
    let new = new.into_iter().enumerate();
    answers.extend(new.map(|(at, new)| Numbered {
        name: new.name,
        stands: Some(new.stands),
        choice: n_known + at,
    }));
    answers
}

fn asked(store: EditorStore, id: StoredValue<Id>, doubt: Open) -> impl IntoView {
    let (label, question) = (doubt.question().to_owned(), doubt.question().to_owned());
    let answers = answers(store, &id.get_value(), &doubt);
    let none = match answers.len() {
        0 => "Leave it as text",
        1 => "Not that",
        _ => "None of these",
    };
    let picks = StoredValue::new(answers.iter().map(|answer| answer.choice).collect::<Vec<usize>>());
    let alike = store.alike(&id.get_value(), &doubt);
    let also = RwSignal::new(alike.iter().map(|other| other.step.clone()).collect::<Vec<Id>>());
    let doubt = StoredValue::new(doubt);
    let settle = move |choice: Option<usize>| {
        let (doubt, also) = (doubt.get_value(), also.get_untracked());
        store.run(Command::Settle { step: id.get_value(), doubt, choice, also });
    };
    let goes_on = StoredValue::new(None);
    let keydown = move |event: KeyboardEvent| {
        let letter = letter(&event)
            .filter(|key| goes_on.get_value().is_some() || key.chars().all(char::is_alphabetic));
        if let Some(letter) = letter {
            if goes_on.get_value().is_none() {
                goes_on.set_value(store.write_on(&id.get_value()));
            }
            // Until the keyboard has got there, what is typed is brought there.
            let Some(line) = goes_on.get_value() else { return };
            store.type_in_line(line, &letter);
            event.prevent_default();
            event.stop_propagation();
            return;
        }
        let digit = event.key().parse::<usize>().ok().and_then(|digit| digit.checked_sub(1));
        if let Some(choice) = digit.and_then(|at| picks.with_value(|picks| picks.get(at).copied())) {
            settle(Some(choice));
        } else if event.key() == "Escape" {
            store.run(if store.is_reviewing(&id.get_value()) {
                Command::PlainReview
            } else {
                Command::LeaveDoubts(id.get_value())
            });
        } else {
            return;
        }
        event.prevent_default();
        event.stop_propagation();
    };
    let choice = move |(at, Numbered { name, stands, choice }): (usize, Numbered)| {
        let key_id = (at == 0).then(|| format!("choice-{}", id.get_value()));
        view! {
            <button type="button" class="key" id=key_id on:click=move |_| settle(Some(choice))>
                <span class="nth" aria-hidden="true">{at + 1}</span> {name}
                {stands.map(|stands| view! { <span class="stands">" · " {stands}</span> })}
            </button>
        }
    };
    view! {
        <div class="choices" role="group" aria-label=label on:keydown=keydown>
            <p class="doubt">"?? " {question}</p>
            {(!alike.is_empty()).then(|| view! { <AlsoFor alike also /> })}
            {answers.into_iter().enumerate().map(choice).collect_view()}
            <button type="button" class="quiet" on:click=move |_| settle(None)>{none}</button>
        </div>
    }
}
