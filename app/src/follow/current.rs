//! The step to do, large, between the last line and the coming one.

use super::job::Taken;
use super::job_store::JobStore;
use super::moment::Moment;
use super::task::{Task, Wanted, last_taken, readings_of};
use crate::components::notation_line::notation_line;
use crate::components::safety_band::safety_band;
use crate::state::clock;
use leptos::prelude::*;

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
) -> impl IntoView {
    let last = move || jobs.moment().with(|moment| last_lines(moment));
    let step = move || jobs.moment().with(|moment| step_now(moment));
    let coming = move || jobs.moment().with(|moment| coming_lines(moment));
    view! {
        <ul class="last-lines" aria-label="Done last">{last}</ul>
        <section class="now" tabindex="0" aria-label="Step to do">
            {step}
            {move || task_now(jobs, &task.get())}
        </section>
        <ul class="coming-lines" aria-label="Coming">{coming}</ul>
    }
}

fn last_lines(moment: &Moment) -> impl IntoView + use<> {
    let from = moment.done.len().saturating_sub(N_LAST);
    let line = |(index, (position, at_ms)): (usize, &(usize, u64))| {
        let words = moment.procedure.words_of(moment.step_at(*position)?);
        let is_last = index + 1 == moment.done.len();
        Some(view! {
            <li class="line">
                <span class="tick" aria-hidden="true">"✓"</span>
                <span class="words">
                    {is_last.then(|| view! { <span class="unseen">"Done: "</span> })}
                    {position + 1} " " {words}
                </span>
                <span class="time">{clock::to_the_minute(*at_ms)}</span>
            </li>
        })
    };
    moment.done.iter().enumerate().skip(from).filter_map(line).collect::<Vec<_>>()
}

fn coming_lines(moment: &Moment) -> impl IntoView + use<> {
    let first = moment.position.map_or(usize::MAX, |position| position + 1);
    let steps = moment.procedure.steps.iter().enumerate().skip(first).take(N_COMING);
    let mut lines: Vec<String> = steps
        .map(|(position, step)| format!("{} {}", position + 1, moment.procedure.words_of(step)))
        .collect();
    if lines.len() < N_COMING {
        lines.push("the end".to_owned());
    }
    let lines = lines.into_iter().enumerate().map(|(index, words)| {
        view! { <li class="line"><span class="words">{(index == 0).then_some("next: ")}{words}</span></li> }
    });
    lines.collect::<Vec<_>>()
}

fn step_now(moment: &Moment) -> impl IntoView + use<> {
    let step = moment.step()?;
    let number = moment.position? + 1;
    let why = (!step.why.is_empty()).then(|| view! { <p class="why">"why: " {step.why.clone()}</p> });
    let people = step.people.filter(|people| *people > 1);
    let people = people.map(|people| view! { <p class="why">{people} " people"</p> });
    Some(view! {
        {step.messages.iter().map(safety_band).collect_view()}
        <div class="body">
            <span class="number" aria-hidden="true">{number}</span>
            <div>
                <h1><span class="unseen">"Step " {number} ": "</span>{moment.procedure.words_of(step)}</h1>
                {notation_line(&step.actions, &moment.procedure.map)}
                {why}
                {people}
                {readings(moment)}
            </div>
        </div>
    })
}

/// The readings taken so far for this step.
fn readings(moment: &Moment) -> impl IntoView + use<> {
    let step = moment.step()?;
    let wanted = readings_of(&moment.procedure, step);
    let line = |wanted: &Wanted| {
        let taken = last_taken(&moment.progress, wanted)?;
        let value = taken.value.as_ref().map_or_else(|| wanted.reading.seen.clone(), ToString::to_string);
        let verdict = if taken.is_inside { "✓" } else { "out" };
        Some(view! { <li class:out=!taken.is_inside>{taken.what.clone()} ": " {value} " " {verdict}</li> })
    };
    let lines: Vec<_> = wanted.iter().filter_map(line).collect();
    (!lines.is_empty()).then(|| view! { <ul class="taken">{lines}</ul> })
}

fn task_now(jobs: JobStore, task: &Task) -> AnyView {
    match task {
        Task::Message(..) | Task::Ready => ().into_any(),
        Task::Reading(wanted) => reading_now(wanted).into_any(),
        Task::Out(wanted, taken) => out_now(wanted, taken).into_any(),
        Task::Wait(_, ms) => view! { <p class="waiting">"Wait " {clock::length(*ms)}</p> }.into_any(),
        Task::Waiting(end_ms) => {
            let end_ms = *end_ms;
            let left = move || clock::remaining(end_ms.saturating_sub(jobs.now().get()));
            view! {
                <p class="waiting">
                    <span class="value">{left}</span> " left, ends " {clock::to_the_minute(end_ms)}
                    <span class="why">" · no alarm while the device is locked"</span>
                </p>
            }
            .into_any()
        }
        Task::Hold(_, text) => view! { <p class="waiting">"Hold: " {text.clone()}</p> }.into_any(),
    }
}

/// Something to see and confirm; figures are shown beside the keypad.
fn reading_now(wanted: &Wanted) -> impl IntoView + use<> {
    let reading = wanted.reading.clone();
    let seen = (!reading.seen.is_empty()).then(|| {
        view! { <p class="what">{reading.what}</p><p class="value seen">{reading.seen}</p> }
    });
    let source =
        (!reading.source.is_empty()).then(|| view! { <p class="why">"limits: " {reading.source}</p> });
    view! { <div class="reading">{seen}{source}</div> }
}

fn out_now(wanted: &Wanted, taken: &Taken) -> impl IntoView + use<> {
    let value = taken.value.as_ref().map_or_else(|| "not seen".to_owned(), ToString::to_string);
    let allowed = wanted.reading.limits.as_ref().map(|limits| format!("allowed: {limits}"));
    view! {
        <div class="reading out" role="alert">
            <p class="what">{wanted.reading.what.clone()}</p>
            <p class="value">{value} " is out"</p>
            {allowed.map(|allowed| view! { <p class="why">{allowed}</p> })}
            <p>"Do not go on. Read again; if it stays out, press STOP and leave it safe."</p>
        </div>
    }
}
