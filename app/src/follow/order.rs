//! What is to be done now, in large words: the step or the proof, and what it asks for next.

use super::job::Taken;
use super::job_store::JobStore;
use super::moment::Moment;
use super::proofs::ProofDue;
use super::task::{Task, Wanted, last_taken, readings_of};
use crate::components::in_one_piece::in_one_piece;
use crate::components::notation_line::notation_line;
use crate::components::safety_band::safety_band;
use crate::components::step_asides::{back_line, conditions, out_words, reminder_line};
use crate::state::clock;
use leptos::prelude::*;
use procedures_schema::derive::answered::open_question;
use procedures_schema::derive::reminders::reminders;
use procedures_schema::model::{Action, Question, Step, Verb};

/// Messages, words and what was read so far.
pub fn order(moment: &Moment) -> impl IntoView + use<> {
    let step = moment.step()?;
    let body = match moment.proof() {
        Some(due) => proof_words(moment, due).into_any(),
        None => step_words(moment, step).into_any(),
    };
    Some(view! { {step.messages.iter().map(safety_band).collect_view()}{body} })
}

fn step_words(moment: &Moment, step: &Step) -> impl IntoView + use<> {
    let number = moment.position.map(|position| position + 1);
    let why = (!step.why.is_empty()).then(|| view! { <p class="why">"why: " {in_one_piece(&step.why)}</p> });
    let here = |at: &[usize]| moment.position.is_some_and(|position| at.contains(&position));
    let remembered = reminders(&moment.procedure).into_iter().filter(|one| here(&one.at));
    let remembered: Vec<_> = remembered.map(|one| reminder_line(one.from_position, &one.text)).collect();
    let people = step.people.filter(|people| *people > 1);
    let people = people.map(|people| view! { <p class="why">{people} " people"</p> });
    // A question says what it means by itself.
    let meant: Vec<Action> = step.actions.iter().filter(|action| action.verb != Verb::Ask).cloned().collect();
    let is_open = open_question(step, &moment.answers).is_some();
    let condition = is_open.then(|| conditions(&step.when, &moment.procedure.questions).join("; "));
    view! {
        <div class="body">
            <span class="number" aria-hidden="true">{number}</span>
            <div>
                {condition.map(|words| view! { <p class="condition">{words}</p> })}
                <h1 tabindex="-1"><span class="unseen">"Step " {number} ": "</span>{in_one_piece(&moment.procedure.words_of(step))}</h1>
                {notation_line(&meant, &moment.procedure.map)}
                {remembered}
                {why}
                {back_line(step)}
                {people}
                {readings(moment)}
            </div>
        </div>
    }
}

/// A proof that is taken again, with the words of the step that proved it first.
fn proof_words(moment: &Moment, due: &ProofDue) -> impl IntoView + use<> {
    let number = moment.procedure.position(&due.step.id).map(|position| position + 1);
    let when = clock::day_and_minute(due.proved_ms, clock::now_ms());
    view! {
        <div class="body">
            <span class="number" aria-hidden="true">"?"</span>
            <div>
                <h1 tabindex="-1">"Prove again: " {due.names.clone()}</h1>
                <p class="of-step">"As in step " {number} ": " {in_one_piece(&moment.procedure.words_of(&due.step))}</p>
                {notation_line(&due.step.actions, &moment.procedure.map)}
                <p class="why">"proved " {when} "; nobody watched since"</p>
                {readings(moment)}
            </div>
        </div>
    }
}

/// The readings taken so far.
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

/// What has to be done next for it.
pub fn task_now(jobs: JobStore, task: &Task) -> AnyView {
    match task {
        Task::Message(..) | Task::Ready => ().into_any(),
        Task::Reading(wanted) => reading_now(wanted).into_any(),
        Task::Out(wanted, taken) => jobs.moment().with_untracked(|m| out_now(m, wanted, taken)).into_any(),
        Task::Wait(_, ms) => view! { <p class="waiting">"Wait " {clock::length(*ms)}</p> }.into_any(),
        Task::Waiting(end_ms) => waiting_now(jobs, *end_ms).into_any(),
        Task::Hold(_, text) => view! { <p class="waiting">"Hold: " {text.clone()}</p> }.into_any(),
        Task::Ask(question) => jobs.moment().with_untracked(|m| asked_now(m, question)).into_any(),
    }
}

fn waiting_now(jobs: JobStore, end_ms: u64) -> impl IntoView {
    let left = move || clock::remaining(end_ms.saturating_sub(jobs.now().get()));
    view! {
        <p class="waiting">
            <span class="value">{left}</span> " left, ends " {clock::to_the_minute(end_ms)}
            <span class="why">" · no alarm while the device is locked"</span>
        </p>
    }
}

/// The question, if the words of the step do not put it themselves.
fn asked_now(moment: &Moment, question: &Question) -> impl IntoView + use<> {
    let is_said = moment.step().is_some_and(|step| moment.procedure.words_of(step).contains(&question.words));
    let words = question.words.clone();
    (!is_said).then(|| view! { <p class="waiting asked">{words}</p> })
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

/// A value that is out, with what the writer says for that.
fn out_now(moment: &Moment, wanted: &Wanted, taken: &Taken) -> impl IntoView + use<> {
    let value = taken.value.as_ref().map_or_else(|| "not seen".to_owned(), ToString::to_string);
    let allowed = wanted.reading.limits.as_ref().map(|limits| format!("allowed: {limits}"));
    let written = moment.step().and_then(|step| out_words(step.actions.get(wanted.action)?));
    view! {
        <div class="reading out" role="alert">
            <p class="what">{wanted.reading.what.clone()}</p>
            <p class="value">{value} " is out"</p>
            {allowed.map(|allowed| view! { <p class="why">{allowed}</p> })}
            {written.map(|words| view! { <p class="written">"If it is out: " {words}</p> })}
            <p>"Do not go on. Read again; if it stays out, press STOP and leave it safe."</p>
        </div>
    }
}
