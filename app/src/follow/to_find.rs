//! The rows in which somebody writes what is to be found out: at the step where they stand before it, and all at the
//! end. They ask for nothing: a field that is left empty stays open.

use super::found_here::Given;
use super::job_store::JobStore;
use crate::components::capital::capital;
use crate::state::clock;
use leptos::prelude::*;
use procedures_schema::derive::open_at::OpenAt;
use procedures_schema::model::OpenValue;

/// More than this at one step would push what has to be done there out of sight, and stand behind a key.
const MOST_SHOWN: usize = 3;

/// What is to be found out at the step that is shown.
#[component]
pub fn ToFindHere(
    /// The state of Follow.
    jobs: JobStore,
) -> impl IntoView {
    let all = jobs.open_at();
    let here = Memo::new(move |_| {
        let (at, is_first) = jobs.moment().with(|moment| {
            let at = moment.position.filter(|_| moment.proof().is_none());
            (at, moment.done.is_empty())
        });
        let Some(at) = at else { return Vec::new() };
        let is_here = |open: &&OpenAt| open.step.map_or(is_first, |step| step == at);
        all.with(|all| all.iter().filter(is_here).map(|open| open.value.clone()).collect::<Vec<_>>())
    });
    move || {
        let n = here.with(Vec::len);
        (n > 0).then(|| {
            let count = (n > MOST_SHOWN).then(|| format!(": {n} values"));
            view! {
                <section class="to-find" aria-label="To find out here">
                    <details prop:open=n <= MOST_SHOWN>
                        <summary>"To find out here" {count}</summary>
                        <FindRows jobs values=here.into() />
                    </details>
                </section>
            }
        })
    }
}

/// What was found out on the job, and what was not, with the key that gives it away as a file.
#[component]
pub fn FoundAtTheEnd(
    /// The state of Follow.
    jobs: JobStore,
) -> impl IntoView {
    let all = jobs.open_at();
    let values = Memo::new(move |_| {
        let is_asked = jobs.is_running();
        all.with(|all| all.iter().filter(|_| is_asked).map(|open| open.value.clone()).collect::<Vec<_>>())
    });
    move || {
        values.with(|values| !values.is_empty()).then(|| {
            view! {
                <section class="to-find at-the-end" aria-labelledby="found-at-the-end">
                    <h2 id="found-at-the-end">{move || head(jobs, values.with(Vec::len))}</h2>
                    <FindRows jobs values=values.into() />
                    <SaveFound jobs />
                </section>
            }
        })
    }
}

fn head(jobs: JobStore, n_open: usize) -> String {
    let n_found = jobs.found().map_or(0, |found| found.answers.len());
    format!("Found out on this job: {n_found} of {n_open}")
}

#[component]
fn FindRows(jobs: JobStore, values: Signal<Vec<OpenValue>>) -> impl IntoView {
    let key = |open: &OpenValue| format!("{:?} {}", open.place, open.what);
    view! {
        <ul>
            <For each=move || values.get() key=key children=move |value| view! { <FindRow jobs value /> } />
        </ul>
    }
}

/// A value, the field for it, and whether it is kept.
#[component]
fn FindRow(jobs: JobStore, value: OpenValue) -> impl IntoView {
    let what = capital(&value.what);
    let who = (!value.who.is_empty()).then(|| format!(" ({})", value.who));
    let open = StoredValue::new(value);
    let typed = Memo::new(move |_| open.with_value(|open| jobs.typed_for(open)));
    let kept = Memo::new(move |_| open.with_value(|open| jobs.found_for(open)));
    let shown = move || {
        typed
            .get()
            .or_else(|| kept.with(|kept| kept.as_ref().map(|found| found.answer.clone())))
            .unwrap_or_default()
    };
    let note = move |event| open.with_value(|open| jobs.type_found(open, event_target_value(&event)));
    let has_news = move || typed.with(Option::is_some);
    let keep = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        if typed.with_untracked(Option::is_some) {
            jobs.keep_found();
        }
    };
    let stands = move || {
        kept.with(|kept| kept.as_ref().map(|found| clock::to_the_minute(clock::ms_of(&found.time))))
            .filter(|_| !has_news())
            .map(|time| format!("kept {time}"))
    };
    view! {
        <li>
            <form on:submit=keep>
                <label>
                    <span>{what} {who}</span>
                    <input
                        type="text" spellcheck="false" autocomplete="off" enterkeyhint="done"
                        prop:value=shown on:input=note
                    />
                </label>
                <button type="submit" class="key" aria-disabled=move || (!has_news()).to_string()>"Keep"</button>
                <span class="stands" role="status">{stands}</span>
            </form>
        </li>
    }
}

/// Who found it, if they say so, and the key.
#[component]
fn SaveFound(jobs: JobStore) -> impl IntoView {
    let by = jobs.found_by();
    let told = RwSignal::new(None::<Given>);
    let stands = move || {
        let found = jobs.found().filter(|found| !found.answers.is_empty())?;
        let given = told.get().filter(|given| given.is_of(&found));
        Some(given.map_or_else(|| "not in a file yet".to_owned(), |given| given.words))
    };
    let has_any = move || jobs.found().is_some_and(|found| !found.answers.is_empty());
    let save = move |_| {
        if has_any() {
            jobs.save_found(told);
        }
    };
    view! {
        <div class="save-found">
            <label>
                <span>"Found out by (if you like)"</span>
                <input
                    type="text" spellcheck="false" autocomplete="name"
                    prop:value=move || by.get() on:input=move |event| by.set(event_target_value(&event))
                />
            </label>
            <button type="button" class="key" aria-disabled=move || (!has_any()).to_string() on:click=save>
                "Save what was found"
            </button>
            <span class="stands" role="status">{stands}</span>
        </div>
    }
}
