//! What the document says of itself: purpose, right appliance, country, competence, remark.

use crate::components::fields::{ChoiceField, LongField};
use crate::frame::sheet::{listed, words_or};
use crate::state::{Command, EditorStore};
use leptos::prelude::*;
use procedures_schema::edit::Scope;
use procedures_schema::model::{Country, Procedure};

/// Its fields.
#[component]
pub fn ScopeFields(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let countries = Signal::stored(words_or("not said", Country::ALL.iter().map(Country::word)));
    let country = Signal::derive(move || {
        store
            .document()
            .with(|document| document.country.as_ref().map(|c| c.word().to_owned()).unwrap_or_default())
    });
    let set_country = Callback::new(move |word: String| {
        let chosen = (!word.is_empty()).then(|| Country::from_word(&word));
        store.change_scope("change the country", None, |scope| scope.country = chosen);
    });
    view! {
        <section class="things-of scope">
            <h2 class="stage">"The job"</h2>
            <div class="sheet open">
                <div class="wide">{title(store)}</div>
                <div class="wide">{line(store, "What the job is for", "Renew the pump without draining the plant.", |d| d.purpose.clone(), |s, text| s.purpose = text)}</div>
                <div class="wide">{line(store, "Plate of the right appliance", "Boiler K7, pump P2: 230 V, 250 mm", |d| d.applies_to.clone(), |s, text| s.applies_to = text)}</div>
                {line(store, "Gases", "G20, …", |d| d.gases.join(", "), |s, text| s.gases = listed(&text))}
                <ChoiceField label="Country that it is written for" value=country options=countries send=set_country />
                {line(store, "Whoever follows it is competent for", "electrical work, …", |d| d.competence.join(", "), |s, text| s.competence = listed(&text))}
                {move || competence(store)}
                <div class="wide">{line(store, "Remark", "", |d| d.note.clone(), |s, text| s.note = text)}</div>
            </div>
        </section>
    }
}

/// The title, which Write has in its head.
fn title(store: EditorStore) -> impl IntoView {
    let value = Memo::new(move |_| store.document().with(|document| document.title.clone()));
    let send = Callback::new(move |typed| store.run(Command::SetTitle(typed)));
    view! { <LongField label="Title" value=value.into() send hint="Renew the pump P2" /> }
}

fn line(
    store: EditorStore,
    label: &'static str,
    hint: &'static str,
    get: fn(&Procedure) -> String,
    set: fn(&mut Scope, String),
) -> impl IntoView {
    let value = Memo::new(move |_| store.document().with(|document| get(document)));
    let send = Callback::new(move |typed: String| {
        store.change_scope(&format!("change: {label}"), Some(label), |scope| set(scope, typed));
    });
    view! { <LongField label value=value.into() send hint /> }
}

/// What people of the country call those who are competent, each as a key that adds it; none where it is not said.
fn competence(store: EditorStore) -> Option<AnyView> {
    let missing = store.document().with(|document| {
        let all = document.country.as_ref().map(Country::competence).unwrap_or_default();
        let is_missing = |words: &&&str| !document.competence.iter().any(|known| known.trim() == **words);
        all.iter().filter(is_missing).copied().collect::<Vec<_>>()
    });
    let key = |words: &'static str| {
        let add = move |_| {
            store.change_scope("add a competence", None, |scope| scope.competence.push(words.to_owned()));
        };
        view! { <button type="button" class="quiet" on:click=add>"Add: " {words}</button> }
    };
    (!missing.is_empty()).then(|| {
        view! { <div class="strip" role="group" aria-label="Competence there">{missing.into_iter().map(key).collect_view()}</div> }
            .into_any()
    })
}
