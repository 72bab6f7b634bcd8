//! The keys at the foot: STOP, what is next, and for ten seconds the way back.

use super::answer_keys::AnswerKeys;
use super::job::{Acknowledged, Taken};
use super::job_store::{JobStore, Storing};
use super::task::{Task, Wanted};
use crate::state::clock;
use leptos::prelude::*;
use procedures_schema::units::{Figure, Measured, Unit};

/// A wrong tick can be taken back for this long.
const BACK_MS: u64 = 10_000;
/// A second press sooner than this after the key has changed is ignored.
pub const SETTLE_MS: u64 = 400;

/// What the main key is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FootKey {
    /// There is none.
    None,
    /// What the step asks for.
    Task,
    /// Going on after a break.
    GoOn,
    /// Putting the finished job away.
    PutAway,
}

/// The foot.
#[component]
pub fn Foot(
    /// The state of Follow.
    jobs: JobStore,
    /// What has to be done next.
    task: Memo<Task>,
    /// The figure being typed.
    figure: RwSignal<String>,
    /// The sheet that STOP opens.
    stop: NodeRef<leptos::html::Dialog>,
    /// What the main key is for.
    key: Signal<FootKey>,
) -> impl IntoView {
    let open_stop = move |_| {
        if let Some(sheet) = stop.get_untracked() {
            // Opening a sheet that is open already is the only refusal.
            let _ = sheet.show_modal();
        }
    };
    let label = move || label(key.get(), &task.get(), jobs);
    let changed_ms = StoredValue::new(0_u64);
    Effect::new(move |_| {
        let _ = label();
        changed_ms.set_value(clock::now_ms());
    });
    // A job that leaves something apart is not put away as if it were well.
    let leaves_apart =
        move || key.get() == FootKey::PutAway && jobs.moment().with(|moment| moment.apart.count() > 0);
    let asks = move || key.get() == FootKey::Task && matches!(task.get(), Task::Ask(_));
    let is_held = move || !can_press(key.get(), &task.get(), &figure.get()) || is_storing(jobs);
    let press = move |_| {
        let settled = clock::now_ms().saturating_sub(changed_ms.get_value()) >= SETTLE_MS;
        if settled && !is_held() {
            pressed(jobs, key.get_untracked(), &task.get_untracked(), &figure.get_untracked());
        }
    };
    view! {
        <footer class="foot-keys">
            <button type="button" class="stop" on:click=open_stop>"STOP"</button>
            <AnswerKeys jobs task key />
            {move || (key.get() != FootKey::None && !asks()).then(|| view! {
                <button
                    type="button" class="go" class:grave=leaves_apart
                    aria-disabled=move || if is_held() { "true" } else { "false" }
                    on:click=press
                >{label}</button>
            })}
            <BackKey jobs task key />
        </footer>
    }
}

/// The small key: take the tick back, or say that something was not seen.
#[component]
fn BackKey(jobs: JobStore, task: Memo<Task>, key: Signal<FootKey>) -> impl IntoView {
    let can_go_back = move || {
        let last = jobs.moment().with(|moment| {
            let is_proving = moment.proof().is_some();
            moment.answered_ms.or(moment.done.last().map(|done| done.at_ms)).filter(|_| !is_proving)
        });
        last.is_some_and(|at_ms| jobs.now().get().saturating_sub(at_ms) < BACK_MS)
            && key.get() != FootKey::GoOn
    };
    let unseen = move || match task.get() {
        Task::Reading(wanted) if !wanted.reading.seen.is_empty() && key.get() == FootKey::Task => {
            Some(wanted)
        }
        _ => None,
    };
    let what = move || {
        let is_answer = jobs.moment().with(|moment| moment.answered_ms.is_some());
        if is_answer { "Undo answer" } else { "Undo tick" }
    };
    let shown = Memo::new(move |_| (unseen(), can_go_back()));
    move || {
        match shown.get() {
        (Some(wanted), _) => view! {
            <button type="button" class="back" on:click=move |_| jobs.take(seen(&wanted, false))>"Not so"</button>
        }
        .into_any(),
        (None, true) => {
            view! { <button type="button" class="back" on:click=move |_| jobs.untick()>{what}</button> }.into_any()
        }
        (None, false) => ().into_any(),
    }
    }
}

/// Whether a change is being kept, during which no key does anything.
pub fn is_storing(jobs: JobStore) -> bool {
    matches!(jobs.storing().get(), Storing::Under | Storing::Slow)
}

fn label(key: FootKey, task: &Task, jobs: JobStore) -> String {
    match (key, task) {
        (FootKey::None, _) => String::new(),
        (FootKey::GoOn, _) => jobs.moment().with(|moment| match (moment.proof(), moment.position) {
            (Some(due), _) => format!("Prove again: {}", due.names),
            (None, Some(position)) => format!("Go on from step {}", position + 1),
            (None, None) => "Go on".to_owned(),
        }),
        (FootKey::PutAway, _) => jobs.moment().with(|moment| match moment.apart.count() {
            0 => "Put the job away".to_owned(),
            n => format!("Put the job away with {n} still apart"),
        }),
        (FootKey::Task, Task::Message(_, hazard)) => format!("Read: {hazard}"),
        (FootKey::Task, Task::Reading(wanted)) if !wanted.reading.seen.is_empty() => {
            format!("Seen: {}", wanted.reading.seen)
        }
        (FootKey::Task, Task::Reading(_)) => "Take it".to_owned(),
        (FootKey::Task, Task::Out(..)) => "Read again".to_owned(),
        (FootKey::Task, Task::Wait(_, ms)) => format!("Start the wait of {}", clock::length(*ms)),
        (FootKey::Task, Task::Waiting(end_ms)) => format!("Waiting until {}", clock::to_the_minute(*end_ms)),
        (FootKey::Task, Task::Hold(..)) => "The hold is lifted".to_owned(),
        (FootKey::Task, Task::Ask(question)) => question.words.clone(),
        (FootKey::Task, Task::Ready) => jobs.moment().with(|moment| {
            moment
                .proof()
                .map_or_else(|| "Done, next".to_owned(), |due| format!("Proved again: {}", due.names))
        }),
    }
}

fn can_press(key: FootKey, task: &Task, figure: &str) -> bool {
    match (key, task) {
        (FootKey::Task, Task::Reading(wanted)) => {
            !wanted.reading.seen.is_empty() || Figure::parse(figure).is_ok()
        }
        (FootKey::Task, Task::Waiting(_) | Task::Ask(_)) | (FootKey::None, _) => false,
        _ => true,
    }
}

fn pressed(jobs: JobStore, key: FootKey, task: &Task, figure: &str) {
    match (key, task) {
        (FootKey::None, _) | (FootKey::Task, Task::Waiting(_) | Task::Ask(_)) => {}
        (FootKey::GoOn, _) => jobs.go_on(),
        (FootKey::PutAway, _) => jobs.put_away(),
        (FootKey::Task, Task::Message(position, _)) => jobs.acknowledge(Acknowledged::Message(*position)),
        (FootKey::Task, Task::Hold(position, _)) => jobs.acknowledge(Acknowledged::Hold(*position)),
        (FootKey::Task, Task::Reading(wanted)) => {
            if let Some(taken) = judged(wanted, figure) {
                jobs.take(taken);
            }
        }
        (FootKey::Task, Task::Out(wanted, _)) => jobs.read_again(wanted.action, wanted.index),
        (FootKey::Task, Task::Wait(action, _)) => jobs.wait(*action),
        (FootKey::Task, Task::Ready) => jobs.done(),
    }
}

/// The reading as taken, judged against its limits.
fn judged(wanted: &Wanted, figure: &str) -> Option<Taken> {
    if !wanted.reading.seen.is_empty() {
        return Some(seen(wanted, true));
    }
    let value = Figure::parse(figure).ok()?;
    let limits = wanted.reading.limits.as_ref();
    let unit = limits.map_or_else(|| Unit::Other("".into()), |limits| limits.unit.clone());
    let value = Measured::new(value, unit);
    // A reading without limits is only written down.
    let is_inside = limits.is_none_or(|limits| limits.accepts(&value) == Some(true));
    Some(Taken { value: Some(value), is_inside, ..seen(wanted, true) })
}

fn seen(wanted: &Wanted, is_inside: bool) -> Taken {
    Taken {
        action: wanted.action,
        reading: wanted.index,
        what: wanted.reading.what.clone(),
        value: None,
        is_inside,
        is_read_again: false,
        at_ms: clock::now_ms(),
    }
}
