//! The step to do, large, between the last line and the coming one.

use super::job_store::JobStore;
use super::moment::{Done, Moment};
use super::order::{order, task_now};
use super::resume::LeaveSafe;
use super::task::Task;
use super::to_find::ToFindHere;
use crate::state::clock;
use leptos::prelude::*;
use procedures_schema::derive::answered::{Condition, condition, open_words};
use wasm_bindgen::JsCast;

/// Lines done last that stay in view.
const N_LAST: usize = 2;
/// Coming lines that are there if the screen has room.
const N_COMING: usize = 8;

/// The strip of lines with the current step in the middle.
#[component]
pub fn Current(
    /// The state of Follow.
    jobs: JobStore,
    /// What has to be done next for the step.
    task: Memo<Task>,
    /// The sheet that STOP opens.
    stop: NodeRef<leptos::html::Dialog>,
) -> impl IntoView {
    let last = move || jobs.moment().with(|moment| last_lines(moment));
    let order = move || jobs.moment().with(|moment| order(moment));
    let coming = move || jobs.moment().with(|moment| coming_lines(moment));
    let is_proof = Memo::new(move |_| jobs.moment().with(|moment| moment.proof().is_some()));
    let section = NodeRef::<leptos::html::Section>::new();
    show_from_its_head(jobs, section);
    view! {
        <ul class="last-lines" aria-label="Done last">{last}</ul>
        <section class="now" tabindex="0" aria-label="Step to do" node_ref=section>
            {order}
            {move || task_now(jobs, &task.get())}
            <ToFindHere jobs />
            {move || is_proof.get().then(|| view! { <LeaveSafe stop /> })}
        </section>
        <ul class="coming-lines" aria-label="Coming">{coming}</ul>
    }
}

/// Brings each new order into sight from its head, messages first, and tells it: nobody presses the key of a warning
/// that is above the screen.
fn show_from_its_head(jobs: JobStore, section: NodeRef<leptos::html::Section>) {
    let order = Memo::new(move |_| {
        jobs.moment().with(|moment| (moment.position, moment.done.len(), moment.proofs.len()))
    });
    Effect::new(move |before: Option<_>| {
        let now = order.get();
        // The first order of a job is in sight from its head; one to which somebody comes back need not be.
        if before.map_or(now.1 > 0, |before| before != now) {
            // The step is on the screen once the effects of this turn have run.
            request_animation_frame(move || show_head(section));
        }
        now
    });
}

fn show_head(section: NodeRef<leptos::html::Section>) {
    let Some(section) = section.get_untracked() else { return };
    let heading = section.query_selector("h1").ok().flatten();
    if let Some(heading) = heading.and_then(|heading| heading.dyn_into::<web_sys::HtmlElement>().ok()) {
        // A heading that is gone again needs no focus.
        let _ = heading.focus();
    }
    section.scroll_into_view();
}

fn last_lines(moment: &Moment) -> impl IntoView + use<> {
    let (from, now_ms) = (moment.done.len().saturating_sub(N_LAST), clock::now_ms());
    let line = |(index, done): (usize, &Done)| {
        let words = moment.procedure.words_of(moment.step_at(done.position)?);
        let answers = (!done.answers.is_empty()).then(|| format!(" – {}", done.answers.join(", ")));
        let is_last = index + 1 == moment.done.len();
        Some(view! {
            <li class="line">
                <span class="tick" aria-hidden="true">"✓"</span>
                <span class="words">
                    {is_last.then(|| view! { <span class="unseen">"Done: "</span> })}
                    {done.position + 1} " " {words} {answers}
                </span>
                <span class="time">{clock::ticked(done.at_ms, now_ms)}</span>
            </li>
        })
    };
    moment.done.iter().enumerate().skip(from).filter_map(line).collect::<Vec<_>>()
}

fn coming_lines(moment: &Moment) -> impl IntoView + use<> {
    let proofs = moment.proofs.iter().skip(1).map(|due| format!("Prove again: {}", due.names));
    let behind = usize::from(moment.proofs.is_empty());
    let first = moment.position.map_or(usize::MAX, |position| position + behind);
    let steps = moment.procedure.steps.iter().enumerate().skip(first);
    let steps = steps.filter(|(_, step)| condition(step, &moment.answers) != Condition::Missed);
    let steps = steps.map(|(position, step)| {
        let condition =
            open_words(step, &moment.answers).map(|words| format!("{words}: ")).unwrap_or_default();
        format!("{} {condition}{}", position + 1, moment.procedure.words_of(step))
    });
    let mut lines: Vec<String> = proofs.chain(steps).take(N_COMING).collect();
    if lines.len() < N_COMING {
        lines.push("the end".to_owned());
    }
    let lines = lines.into_iter().enumerate().map(|(index, words)| {
        view! { <li class="line"><span class="words">{(index == 0).then_some("next: ")}{words}</span></li> }
    });
    lines.collect::<Vec<_>>()
}
