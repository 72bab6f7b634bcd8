//! The sheet of a question: its wording, its answers, and the steps that are done on each.

use crate::components::fields::{ChoiceField, TextField};
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::edit::questions::MOST_ANSWERS;
use procedures_schema::model::{Id, Procedure, Question};

/// The sheet.
#[component]
pub fn QuestionSheet(
    /// The editor's state.
    store: EditorStore,
    /// The question.
    id: Id,
) -> impl IntoView {
    let id = StoredValue::new(id);
    let words = Signal::derive(move || read(store, id, |question| question.words.clone()));
    let n = Memo::new(move |_| read(store, id, |question| question.answers.len()));
    let is_new = words.get_untracked().is_empty();
    let send = Callback::new(move |typed| store.word_question(&id.get_value(), typed));
    let more = move || {
        let add = move |_| store.add_answer(&id.get_value());
        (n.get() < MOST_ANSWERS)
            .then(|| view! { <button type="button" class="quiet" on:click=add>"Add an answer"</button> })
    };
    view! {
        <div class="sheet question-sheet">
            <TextField label="Question" value=words send hint="Is the seal sound?" comes_first=is_new />
            {move || (0..n.get()).map(|at| view! { <OneAnswer store id at /> }).collect_view()}
            <div class="strip">
                {more}
                <button type="button" class="quiet" on:click=move |_| store.remove_question(&id.get_value())>
                    "Take this question out"
                </button>
            </div>
        </div>
    }
}

/// One answer: its name, the steps that are done on it, and the keys that change those.
#[component]
fn OneAnswer(store: EditorStore, id: StoredValue<Id>, at: usize) -> impl IntoView {
    let name =
        Memo::new(move |_| read(store, id, |question| question.answers.get(at).cloned().unwrap_or_default()));
    let rename = Callback::new(move |typed: String| {
        if typed.trim() != name.get_untracked() {
            store.rename_answer(&id.get_value(), at, &typed);
        }
    });
    let steps =
        Memo::new(move |_| store.document().with(|document| steps(document, &id.get_value(), &name.get())));
    let options = Signal::derive(move || {
        let others = store.document().with(|document| others(document, &id.get_value(), &name.get()));
        std::iter::once((String::new(), "add a step …".to_owned())).chain(others).collect()
    });
    let add = Callback::new(move |chosen: String| {
        if !chosen.is_empty() {
            store.do_on_answer(&id.get_value(), &Id::new(&chosen), Some(&name.get_untracked()));
        }
    });
    let row = move |(step, words): (Id, String)| {
        let label = format!("Do always: {words}");
        let free = move |_| store.do_on_answer(&id.get_value(), &step, None);
        view! {
            <li>
                <span>{words}</span>
                <button type="button" class="quiet" aria-label=label on:click=free>"Do always"</button>
            </li>
        }
    };
    let list = move || {
        let steps = steps.get();
        if steps.is_empty() {
            return view! { <p class="none">"No step is done on this answer alone."</p> }.into_any();
        }
        view! { <ul class="on-answer">{steps.into_iter().map(row).collect_view()}</ul> }.into_any()
    };
    let label = move || format!("Take this answer out: {}", name.get());
    view! {
        <fieldset class="whole">
            <legend class="unseen">{move || format!("Answer {}", name.get())}</legend>
            <TextField label=format!("Answer {}", at + 1) value=name.into() send=rename at_end=true />
            {list}
            <ChoiceField label="Done on it" value=Signal::stored(String::new()) options send=add />
            <button type="button" class="quiet" aria-label=label on:click=move |_| store.remove_answer(&id.get_value(), at)>
                "Take this answer out"
            </button>
        </fieldset>
    }
}

fn read<T: Default>(store: EditorStore, id: StoredValue<Id>, of: impl Fn(&Question) -> T) -> T {
    store.document().with(|document| {
        let found = document.questions.iter().find(|question| question.id == id.get_value());
        found.map(of).unwrap_or_default()
    })
}

/// The steps that are done on an answer.
fn steps(document: &Procedure, question: &Id, answer: &str) -> Vec<(Id, String)> {
    let is_on = |at: &usize| {
        document.steps.get(*at).is_some_and(|step| {
            step.when.iter().any(|given| given.question == *question && given.answer == answer)
        })
    };
    named(document, (0..document.steps.len()).filter(is_on))
}

/// The steps that could be done on it: not yet, and not those that put the question.
fn others(document: &Procedure, question: &Id, answer: &str) -> Vec<(String, String)> {
    let can_be = |at: &usize| {
        document.steps.get(*at).is_some_and(|step| {
            let asks = step.actions.iter().any(|action| action.ask.as_ref() == Some(question));
            !asks && !step.when.iter().any(|given| given.question == *question && given.answer == answer)
        })
    };
    let steps = named(document, (0..document.steps.len()).filter(can_be));
    steps.into_iter().map(|(id, words)| (id.to_string(), words)).collect()
}

/// Steps by number and words.
fn named(document: &Procedure, places: impl Iterator<Item = usize>) -> Vec<(Id, String)> {
    let step = |at: usize| {
        let step = document.steps.get(at)?;
        Some((step.id.clone(), format!("{}  {}", at + 1, document.words_of(step))))
    };
    places.filter_map(step).collect()
}
