//! The questions that are put on the job: a row each, and under the open one its sheet.

use super::question_sheet::QuestionSheet;
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::edit::questions::steps_of_question;
use procedures_schema::model::Id;

/// The list with the key that adds one.
#[component]
pub fn Questions(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let open = RwSignal::new(None::<Id>);
    let ids = Memo::new(move |_| {
        store.document().with(|document| {
            document.questions.iter().map(|question| question.id.clone()).collect::<Vec<_>>()
        })
    });
    let add = move |_| open.set(Some(store.add_question()));
    let empty =
        "What is only found out on the job. A line \"ask: Is the seal sound?\" in Write makes one too.";
    view! {
        <section class="things-of">
            <h2 class="stage">"Questions of the job"</h2>
            {move || ids.with(Vec::is_empty).then(|| view! { <p class="empty">{empty}</p> })}
            <ul class="map-list">
                <For each=move || ids.get() key=Clone::clone children=move |id| view! { <QuestionRow store id open /> } />
            </ul>
            <button type="button" class="quiet add" on:click=add>"Add a question"</button>
        </section>
    }
}

/// One question: its row, and its sheet while it is open.
#[component]
fn QuestionRow(store: EditorStore, id: Id, open: RwSignal<Option<Id>>) -> impl IntoView {
    let id = StoredValue::new(id);
    let is_open = Memo::new(move |_| open.with(|open| open.as_ref() == Some(&id.get_value())));
    let known = Memo::new(move |_| {
        let id = id.get_value();
        store.document().with(|document| {
            let question = document.questions.iter().find(|question| question.id == id)?;
            Some((
                question.words.clone(),
                question.answers.join(" / "),
                steps_of_question(document, &id).len(),
            ))
        })
    });
    let words = move || {
        let words = known.get().map(|(words, ..)| words).unwrap_or_default();
        if words.trim().is_empty() { "a question without words".to_owned() } else { words }
    };
    let about = move || known.get().map(|(_, answers, _)| answers);
    let uses = move || match known.get().map_or(0, |(_, _, n)| n) {
        0 => "in no step yet".to_owned(),
        1 => "in 1 step".to_owned(),
        n => format!("in {n} steps"),
    };
    let toggle = move |_| open.set((!is_open.get_untracked()).then(|| id.get_value()));
    view! {
        <li class:open=is_open>
            <button type="button" class="thing-row" aria-expanded=move || is_open.get().to_string() on:click=toggle>
                <strong>{words}</strong>
                <span class="about">{about}</span>
                <span class="uses">{uses}</span>
            </button>
            {move || is_open.get().then(|| view! { <QuestionSheet store id=id.get_value() /> })}
        </li>
    }
}
