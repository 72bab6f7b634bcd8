//! "These two are one": the other thing is chosen, then what holds where the two differ.

use super::list::{Open, OpenedTo};
use super::thing_row::to_row;
use crate::components::capital::capital;
use crate::components::drawn::once_drawn;
use crate::components::fields::ChoiceField;
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::edit::{Choice, Difference, differences};
use procedures_schema::model::Id;
use wasm_bindgen::JsCast;

/// What is said while something is to be chosen, and once nothing is.
const CHOOSE: &str = "Choose what holds where the two differ.";
const READY: &str = "All steps and things that name either will name the one that stays. The other name is kept \
    beside it, and the words of the steps stay as they are.";

/// The panel under the keys of a sheet.
#[component]
pub fn SameAs(
    /// The editor's state.
    store: EditorStore,
    /// The open thing.
    id: Id,
    /// The other one, if it is known.
    other: Option<Id>,
    /// Which thing is open.
    open: Open,
) -> impl IntoView {
    let id = StoredValue::new(id);
    if other.is_some() {
        show_panel(id);
    }
    let other = RwSignal::new(other.map(|other| other.to_string()).unwrap_or_default());
    let options = Signal::derive(move || candidates(store, &id.get_value()));
    let choose = Callback::new(move |chosen| other.set(chosen));
    let settle = move || {
        let chosen = other.get();
        let pair = (id.get_value(), Id::new(&chosen));
        (!chosen.is_empty()).then(|| view! { <Settle store pair open /> })
    };
    view! {
        <div class="whole">
            <ChoiceField label="It is the same as" value=other.into() options send=choose />
            {settle}
        </div>
    }
}

/// Brings the panel into sight, with the keyboard on the first thing that it asks.
fn show_panel(id: StoredValue<Id>) {
    request_animation_frame(move || {
        let panel = document().query_selector(&format!("[id=\"thing-{}\"] .whole", id.get_value()));
        let Some(panel) = panel.ok().flatten() else { return };
        panel.scroll_into_view_with_bool(false);
        let first = panel.query_selector("input, select").ok().flatten();
        if let Some(first) = first.and_then(|first| first.dyn_into::<web_sys::HtmlElement>().ok()) {
            // A field that cannot be focused has just gone.
            let _ = first.focus();
        }
    });
}

/// What holds where the two differ, and the key; or why they stay two.
#[component]
fn Settle(store: EditorStore, pair: (Id, Id), open: Open) -> impl IntoView {
    let names = store.document().with_untracked(|document| {
        (document.map.name_of(&pair.0).to_owned(), document.map.name_of(&pair.1).to_owned())
    });
    let (pair, names) = (StoredValue::new(pair), StoredValue::new(names));
    let keeps_other = RwSignal::new(false);
    let choices = RwSignal::new(Vec::<Choice>::new());
    // The thing that stays, and the one that goes.
    let ordered = move || {
        let (mine, other) = pair.get_value();
        if keeps_other.get() { (other, mine) } else { (mine, other) }
    };
    let told = Memo::new(move |_| {
        let (keep, gone) = ordered();
        let told = store.document().with(|document| differences(document, &keep, &gone));
        told.map_err(|error| error.to_string())
    });
    let refused = Memo::new(move |_| told.with(|told| told.as_ref().err().cloned()));
    let is_open = move || {
        let is_chosen = |one: &Difference| choices.with(|all| all.iter().any(|c| c.field == one.field));
        told.with(|told| told.as_ref().is_ok_and(|told| !told.iter().all(is_chosen)))
    };
    let merge = move |_| {
        let (keep, gone) = ordered();
        if store.merge_things(&keep, &gone, choices.get_untracked()) {
            open.set(Some((keep.clone(), OpenedTo::Look)));
            once_drawn(move || to_row(&keep));
        }
    };
    let called = Callback::new(move |of_other| {
        choices.set(Vec::new());
        keeps_other.set(of_other);
    });
    let differing = move || {
        let told = told.get().unwrap_or_default();
        told.into_iter().map(|one| differing(one, choices)).collect_view()
    };
    move || {
        if let Some(reason) = refused.get() {
            return view! { <p class="refused">{reason}</p> }.into_any();
        }
        let (mine, other) = names.get_value();
        view! {
            {either("its name", mine, other, Signal::derive(move || Some(keeps_other.get())), called)}
            {differing}
            <p class="none">{move || if is_open() { CHOOSE } else { READY }}</p>
            <button type="button" class="key first" disabled=is_open on:click=merge>"Make one of the two"</button>
        }
        .into_any()
    }
}

/// The other things of its kind.
fn candidates(store: EditorStore, id: &Id) -> Vec<(String, String)> {
    store.document().with(|document| {
        let kind = document.map.thing_kind(id);
        let others =
            || document.map.things().filter(|(other, known, ..)| Some(*other) == kind && *known != id);
        // What may be the same often has the same name; then the other name tells which.
        let told = |name: &str, aliases: &[String]| match aliases.first() {
            Some(alias) if others().filter(|(_, _, other, _)| *other == name).count() > 1 => {
                format!("{name} ({alias})")
            }
            _ => name.to_owned(),
        };
        let options = others().map(|(_, id, name, aliases)| (id.to_string(), told(name, aliases)));
        std::iter::once((String::new(), "choose the other one".to_owned())).chain(options).collect()
    })
}

/// One difference, with the two things that are said.
fn differing(told: Difference, choices: RwSignal<Vec<Choice>>) -> AnyView {
    let field = told.field;
    let chosen = Signal::derive(move || {
        choices.with(|all| all.iter().find(|choice| choice.field == field).map(|choice| choice.of_other))
    });
    let send = Callback::new(move |of_other| {
        choices.update(|all| {
            all.retain(|choice| choice.field != field);
            all.push(Choice { field, of_other });
        });
    });
    either(field, told.kept, told.other, chosen, send)
}

/// One of two.
fn either(
    field: &'static str,
    first: String,
    second: String,
    chosen: Signal<Option<bool>>,
    send: Callback<bool>,
) -> AnyView {
    let answer = move |words: String, of_other: bool| {
        let is_chosen = move || chosen.get() == Some(of_other);
        view! {
            <label class="answer">
                <input type="radio" name=format!("same {field}") prop:checked=is_chosen on:change=move |_| send.run(of_other) />
                <span>{words}</span>
            </label>
        }
    };
    view! {
        <fieldset class="field either">
            <legend>{capital(field)}</legend>
            {answer(first, false)}
            {answer(second, true)}
        </fieldset>
    }
    .into_any()
}
