//! The answers to a question, each a large key.

use super::foot::{FootKey, SETTLE_MS, is_storing};
use super::job_store::JobStore;
use super::task::Task;
use crate::components::capital::capital;
use crate::state::clock;
use leptos::prelude::*;

/// The keys, while a question is asked.
#[component]
pub fn AnswerKeys(
    /// The state of Follow.
    jobs: JobStore,
    /// What has to be done next.
    task: Memo<Task>,
    /// What the main key is for.
    key: Signal<FootKey>,
) -> impl IntoView {
    let asked = Memo::new(move |_| match task.get() {
        Task::Ask(question) if key.get() == FootKey::Task => Some(question),
        _ => None,
    });
    move || {
        let question = asked.get()?;
        // A wet screen presses where the key before was.
        let shown_ms = clock::now_ms();
        let answer_key = |answer: &String| {
            let (id, answer) = (question.id.clone(), answer.clone());
            let words = capital(&answer);
            let press = move |_| {
                if clock::now_ms().saturating_sub(shown_ms) >= SETTLE_MS && !is_storing(jobs) {
                    jobs.answer(id.clone(), answer.clone());
                }
            };
            view! {
                <button
                    type="button" class="go"
                    aria-disabled=move || if is_storing(jobs) { "true" } else { "false" }
                    on:click=press
                >{words}</button>
            }
        };
        let keys = question.answers.iter().map(answer_key).collect_view();
        Some(view! { <div class="answers" role="group" aria-label=question.words.clone()>{keys}</div> })
    }
}
