//! What the selected step means, as keys: each action opens its few fields, and Backspace says that it is none.

use super::action_fields::ActionFields;
use super::keys::asked_at;
use super::leaving::{focus_on, is_left};
use crate::components::notation_line::one_action;
use crate::state::readings::AskedAt;
use crate::state::{Command, EditorStore};
use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
use procedures_schema::model::{Action, Id, Span, Step};
use std::sync::Arc;

/// The keys, and the fields of the one that is open.
#[component]
pub fn Tokens(
    /// The editor's state.
    store: EditorStore,
    /// The step.
    id: Id,
    /// Its contents.
    step: Memo<Option<Arc<Step>>>,
) -> impl IntoView {
    let id = StoredValue::new(id);
    let open = RwSignal::new(None::<usize>);
    let naming = RwSignal::new(false);
    let looked_at = RwSignal::new(None::<usize>);
    // Asked only where a key is looked at, for it reads the words once more.
    let reason = Memo::new(move |_| {
        let at = open.get().or_else(|| looked_at.get())?;
        store.reason_of(&id.get_value(), at)
    });
    let n_actions = Memo::new(move |_| step.with(|step| step.as_ref().map_or(0, |step| step.actions.len())));
    let action = move |at: usize| {
        Memo::new(move |_| step.with(|step| step.as_ref().and_then(|step| step.actions.get(at)).cloned()))
    };
    let why = Memo::new(move |_| step.with(|step| step.as_ref().map(|step| step.why.clone())));
    let back = Memo::new(move |_| step.with(|step| step.as_ref().map(|step| step.back.clone())));
    let back = move || {
        back.get().filter(|back| !back.is_empty()).map(|back| view! { <p class="why">"back: " {back}</p> })
    };
    let why =
        move || why.get().filter(|why| !why.is_empty()).map(|why| view! { <p class="why">"why: " {why}</p> });
    let key = move |at: usize| view! { <OneToken store id=id.get_value() at action=action(at) open naming looked_at /> };
    view! {
        <div
            class="notation tokens" role="group" aria-label="What it means"
            on:keydown=move |event| if is_left(&event) { store.run(Command::EditWords(id.get_value(), None)); }
        >
            <For each=move || 0..n_actions.get() key=|at| *at children=key />
            <button
                type="button" class="quiet other" title="Ctrl+." on:click=move |_| ask(store, &id.get_value())
                on:pointerdown=|event| event.prevent_default() on:mousedown=|event| event.prevent_default()
            >"Other readings"</button>
        </div>
        {move || reason.get().map(|reason| view! { <p class="reason">{reason}</p> })}
        {move || open.get().filter(|at| *at < n_actions.get()).map(|at| view! {
            <ActionFields
                store id=id.get_value() at action=action(at) naming
                on:keydown=move |event: KeyboardEvent| if is_left(&event) {
                    open.set(None);
                    focus_on(&format!("token-{}-{at}", id.get_value()));
                }
            />
        })}
        {why}
        {back}
    }
}

/// Asks what the words at the caret can say; the key leaves the caret where it is.
fn ask(store: EditorStore, step: &Id) {
    let field = document().get_element_by_id(&format!("words-{step}"));
    if let Some(at) = asked_at(field.map(Into::into)) {
        store.run(Command::AskReadings(step.clone(), at));
    }
}

/// One action as a key.
#[component]
fn OneToken(
    store: EditorStore,
    id: Id,
    at: usize,
    action: Memo<Option<Action>>,
    open: RwSignal<Option<usize>>,
    naming: RwSignal<bool>,
    looked_at: RwSignal<Option<usize>>,
) -> impl IntoView {
    let id = StoredValue::new(id);
    let is_open = move || open.get() == Some(at);
    let toggle = move |_| {
        naming.set(false);
        open.update(|open| *open = (*open != Some(at)).then_some(at));
    };
    let keydown = move |event: KeyboardEvent| {
        match event.key().as_str() {
            "." if event.ctrl_key() => store.run(Command::AskReadings(id.get_value(), AskedAt::Action(at))),
            "n" | "N" if !event.ctrl_key() && !event.alt_key() && !event.meta_key() => {
                open.set(Some(at));
                naming.set(true);
            }
            "Backspace" | "Delete" => {
                open.set(None);
                store.run(Command::Decline { step: id.get_value(), action: at });
            }
            "Escape" if open.get_untracked().is_some() => open.set(None),
            _ => return,
        }
        event.prevent_default();
        event.stop_propagation();
    };
    // What is typed elsewhere in the sentence moves the words that say it; only whether any do is shown.
    let is_said = |action: &Action| action.says.first().map(|_| Span(0, 1)).into_iter().collect();
    let shown = Memo::new(move |_| action.get().map(|action| Action { says: is_said(&action), ..action }));
    let words = move || {
        let map = store.map();
        shown.with(|action| action.as_ref().map(|action| map.with(|map| one_action(action, map))))
    };
    view! {
        <button
            type="button" class="token" id=format!("token-{}-{at}", id.get_value()) aria-expanded=move || is_open().to_string()
            title="Enter opens its fields, Ctrl+. other readings, N another name, Backspace: not an action" on:click=toggle on:keydown=keydown
            on:focus=move |_| looked_at.set(Some(at)) on:blur=move |_| looked_at.set(None)
        >{words}</button>
    }
}
