//! The census: for every kind of circuit, whether the appliance has it and whether the job touches it. An
//! answer that is missing is not a no.

use crate::components::drawn::once_drawn;
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::derive::brings::brought;
use procedures_schema::model::{ApplianceMap, CensusAnswer, CensusEntry, CircuitKind};
use procedures_schema::units::Rest;
use wasm_bindgen::JsCast;

/// The questions, one a kind.
#[component]
pub fn Census(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let rest_absent = move |_| {
        let map = store.map().get_untracked();
        store.change_scope("answer the rest of the census", None, |scope| {
            for kind in CircuitKind::ALL {
                let is_open = scope.census.iter().all(|entry| entry.kind != *kind);
                // What a component mostly comes with wants an answer of its own.
                if is_open && asked_by(&map, kind).is_none() {
                    scope.census.push(entry(kind, CensusAnswer::Absent));
                }
            }
        });
        once_drawn(go_on);
    };
    let open = Memo::new(move |_| {
        store.document().with(|document| {
            let is_open = |kind: &&CircuitKind| {
                document.census.iter().all(|entry| entry.kind != **kind)
                    && asked_by(&document.map, kind).is_none()
            };
            CircuitKind::ALL.iter().filter(is_open).count()
        })
    });
    let rest = move || {
        (open.get() > 0).then(|| {
            let words = match open.get() {
                1 => "The other one is not here".to_owned(),
                n if n == CircuitKind::ALL.len() => format!("None of the {n} is here"),
                n => format!("The other {n} are not here"),
            };
            view! { <button type="button" class="quiet add" on:click=rest_absent>{words}</button> }
        })
    };
    view! {
        <section class="things-of">
            <h2 class="stage">"Which circuits it has" <Answered store /></h2>
            <ul class="census">{CircuitKind::ALL.iter().map(|kind| view! { <Question store kind /> }).collect_view()}</ul>
            {rest}
        </section>
    }
}

/// Leads from the key, which has gone, to the first question that is open still, or to the last answer.
fn go_on() {
    let found = |selector: &str| document().query_selector(selector).ok().flatten();
    let next = found(".census .unanswered input").or_else(|| found(".census li:last-child input:checked"));
    if let Some(next) = next.and_then(|next| next.dyn_into::<web_sys::HtmlElement>().ok()) {
        // Only a field that is gone refuses.
        let _ = next.focus();
    }
}

/// How many of the kinds are answered.
#[component]
pub fn Answered(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let n = Memo::new(move |_| {
        store.document().with(|document| {
            let is_answered = |kind: &&CircuitKind| document.census.iter().any(|entry| entry.kind == **kind);
            CircuitKind::ALL.iter().filter(is_answered).count()
        })
    });
    let all = CircuitKind::ALL.len();
    let words = move || format!(" {} of {all} kinds answered", n.get());
    view! { <span class="answered" class:open=move || n.get() < all>{words}</span> }
}

/// One question with its three answers.
#[component]
fn Question(store: EditorStore, kind: &'static CircuitKind) -> impl IntoView {
    let answered = Memo::new(move |_| {
        store.document().with(|document| {
            document.census.iter().find(|entry| entry.kind == *kind).map(|entry| entry.answer.clone())
        })
    });
    let answer = move |answer: &'static CensusAnswer| {
        let set = move |_| {
            store.change_scope("answer the census", None, |scope| {
                match scope.census.iter_mut().find(|entry| entry.kind == *kind) {
                    Some(known) => known.answer = answer.clone(),
                    None => scope.census.push(entry(kind, answer.clone())),
                }
            });
        };
        let is_given = move || answered.with(|given| given.as_ref() == Some(answer));
        view! {
            <label class="answer">
                <input type="radio" name=format!("census {}", kind.word()) prop:checked=is_given on:change=set />
                <span>{in_short(answer)}</span>
            </label>
        }
    };
    let asked = Memo::new(move |_| {
        let by = store.map().with(|map| asked_by(map, kind));
        by.filter(|_| answered.with(Option::is_none)).map(|by| format!("the map knows \"{by}\""))
    });
    let asked = move || asked.get().map(|words| view! { <span class="asked-by">{words}</span> });
    view! {
        <li class:unanswered=move || answered.with(Option::is_none)>
            <fieldset><legend>{kind.word()} {asked}</legend>{CensusAnswer::ALL.iter().map(answer).collect_view()}</fieldset>
        </li>
    }
}

/// The component that mostly comes with a kind of circuit.
fn asked_by(map: &ApplianceMap, kind: &CircuitKind) -> Option<String> {
    brought(map).into_iter().find(|brought| brought.kind == kind).map(|brought| brought.by.to_owned())
}

/// The answer as it fits beside two others.
fn in_short(answer: &CensusAnswer) -> &str {
    match answer {
        CensusAnswer::Touched => "touched",
        CensusAnswer::NotTouched => "left alone",
        CensusAnswer::Absent => "not here",
        CensusAnswer::Other(word) => word,
    }
}

fn entry(kind: &CircuitKind, answer: CensusAnswer) -> CensusEntry {
    CensusEntry { kind: kind.clone(), answer, rest: Rest::default() }
}
