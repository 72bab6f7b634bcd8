//! The readings of a step's proofs, tests and readings, and what follows when one fails.

use super::one_reading::OneReading;
use crate::components::fields::{FlagField, TextField};
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::model::{Action, Id, OnFail, Reading, Step, Verb};
use procedures_schema::simulate::default_readings;
use procedures_schema::units::Rest;
use std::sync::Arc;

/// Those of every action that has some.
#[component]
pub fn Readings(
    /// The editor's state.
    store: EditorStore,
    /// The step.
    id: Id,
    /// Its contents.
    step: Memo<Option<Arc<Step>>>,
) -> impl IntoView {
    let id = StoredValue::new(id);
    let reading = Memo::new(move |_| {
        let takes = |action: &Action| action.verb.takes_readings();
        step.with(|step| {
            let actions = step.iter().flat_map(|step| step.actions.iter().enumerate());
            actions.filter(|(_, action)| takes(action)).map(|(at, _)| at).collect::<Vec<_>>()
        })
    });
    move || {
        reading
            .get()
            .into_iter()
            .map(|at| view! { <OfAction store id=id.get_value() step at /> })
            .collect_view()
    }
}

/// Those of one action.
#[component]
fn OfAction(store: EditorStore, id: Id, step: Memo<Option<Arc<Step>>>, at: usize) -> impl IntoView {
    let id = StoredValue::new(id);
    let action =
        Memo::new(move |_| step.with(|step| step.as_ref().and_then(|step| step.actions.get(at)).cloned()));
    let n_readings =
        Memo::new(move |_| action.with(|action| action.as_ref().map_or(0, |a| a.readings.len())));
    let is_test =
        Memo::new(move |_| action.with(|action| action.as_ref().is_some_and(|a| a.verb == Verb::Test)));
    let name = move || action.with(|action| action.as_ref().map(named).unwrap_or_default());
    let add = move |_| {
        store.change_action(&id.get_value(), at, "readings", |action| {
            action.readings.push(Reading::default());
        });
    };
    let change = move |field: &str, set: Box<dyn FnOnce(&mut OnFail)>| {
        store.change_action(&id.get_value(), at, field, |action| {
            let mut on_fail = action.on_fail.take().unwrap_or_else(nothing);
            set(&mut on_fail);
            action.on_fail = (on_fail != nothing()).then_some(on_fail);
        });
    };
    let again = Signal::derive(move || on_fail(action).map(|on_fail| on_fail.again).unwrap_or_default());
    let leave_safe = Signal::derive(move || on_fail(action).is_some_and(|on_fail| on_fail.leave_safe));
    let set_again = Callback::new(move |typed: String| change("again", Box::new(move |f| f.again = typed)));
    let set_safe = Callback::new(move |is_so| change("leave safe", Box::new(move |f| f.leave_safe = is_so)));
    view! {
        <fieldset class="of-action">
            <legend>{name}</legend>
            {move || (n_readings.get() == 0).then(|| by_default(store, action))}
            {move || (0..n_readings.get()).map(|n| view! { <OneReading store id=id.get_value() action at n /> }).collect_view()}
            <div class="strip">
                {move || (n_readings.get() == 0).then(|| write_down(store, id.get_value(), at, action))}
                <button type="button" class="quiet" on:click=add>"Add a reading"</button>
            </div>
            {move || is_test.get().then(|| view! {
                <div class="sheet open">
                    <TextField label="If it fails, first" value=again send=set_again hint="Read again; then another gauge" />
                    <FlagField label="If it stays so, leave it safe" value=leave_safe send=set_safe />
                </div>
            })}
        </fieldset>
    }
}

fn on_fail(action: Memo<Option<Action>>) -> Option<OnFail> {
    action.with(|action| action.as_ref().and_then(|action| action.on_fail.clone()))
}

fn nothing() -> OnFail {
    OnFail { again: String::new(), steps: Vec::new(), leave_safe: false, rest: Rest::default() }
}

/// The readings that are taken where the document says nothing.
fn taken_by_default(store: EditorStore, action: Memo<Option<Action>>) -> Memo<Vec<Reading>> {
    Memo::new(move |_| {
        let action = action.get();
        store.document().with(|document| action.map(|a| default_readings(document, &a)).unwrap_or_default())
    })
}

/// These in words; a source that is that of all stands once, below them.
fn by_default(store: EditorStore, action: Memo<Option<Action>>) -> AnyView {
    let readings = taken_by_default(store, action);
    let shown = move || {
        readings.with(|readings| {
            let (first, several) = (readings.first()?, readings.len() > 1);
            let of_all = (several && readings.iter().all(|one| one.source == first.source))
                .then(|| view! { <li>{first.source.clone()}</li> });
            let line = |reading: &Reading| {
                let source = if of_all.is_some() { String::new() } else { format!(" ({})", reading.source) };
                view! { <li>{in_words(reading)}{source}</li> }
            };
            let lines = readings.iter().map(line).collect_view();
            Some(view! { {lines}{of_all} })
        })
    };
    view! { <ul class="by-default">{shown}</ul> }.into_any()
}

/// The key that writes them down to be changed.
fn write_down(store: EditorStore, id: Id, at: usize, action: Memo<Option<Action>>) -> AnyView {
    let readings = taken_by_default(store, action);
    let id = StoredValue::new(id);
    let take = move |_| {
        let own = readings.get_untracked();
        store.change_action(&id.get_value(), at, "readings", |action| action.readings = own);
    };
    let key = move || {
        (!readings.with(Vec::is_empty)).then(|| {
            view! { <button type="button" class="quiet" on:click=take>"Write these down, to change them"</button> }
        })
    };
    key.into_any()
}

fn in_words(reading: &Reading) -> String {
    let accepted = match &reading.limits {
        Some(range) => range.to_string(),
        None => reading.seen.clone(),
    };
    format!("{}: {accepted}", reading.what)
}

fn named(action: &Action) -> String {
    match (&action.verb, &action.test) {
        (Verb::Test, Some(test)) => format!("Readings of the {test} test"),
        (Verb::Prove, _) => "Readings that prove zero".to_owned(),
        _ => "What is read".to_owned(),
    }
}
