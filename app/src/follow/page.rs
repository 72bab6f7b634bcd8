//! The Follow screen as a whole: the strip of circuits, the step, what is still apart, the keys.

use super::apart_line::ApartLine;
use super::bar::Bar;
use super::current::Current;
use super::ended::Ended;
use super::foot::{Foot, FootKey};
use super::gate::Gate;
use super::job_store::{JobStore, Storing};
use super::reading_panel::ReadingPanel;
use super::resume::Resume;
use super::stop_sheet::StopSheet;
use super::strip::Strip;
use super::task::{Task, next_task};
use leptos::leptos_dom::helpers::set_interval_with_handle;
use leptos::prelude::*;
use std::time::Duration;

/// What the middle of the screen shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Showing {
    Looking,
    Resume,
    Gate,
    Step,
    Ended,
}

/// Everything of Follow.
#[component]
pub fn FollowScreen(
    /// The state of Follow.
    jobs: JobStore,
    /// The line about working offline.
    offline: ReadSignal<String>,
) -> impl IntoView {
    keep_time(jobs);
    let showing = Memo::new(move |_| showing(jobs));
    let task = Memo::new(move |_| task(jobs));
    let figure = RwSignal::new(String::new());
    clear_between_readings(task, figure);
    let stop = NodeRef::<leptos::html::Dialog>::new();
    let has_keypad = move || showing.get() == Showing::Step && asks_for_figure(&task.get());
    view! {
        <div class="follow" class:with-keypad=has_keypad>
            <div class="side">
                <header>
                    <Strip jobs />
                    <Bar jobs />
                </header>
                <main>
                    {move || match showing.get() {
                        Showing::Looking => view! { <p class="middle">"Looking for a job on this device …"</p> }.into_any(),
                        Showing::Resume => view! { <Resume jobs stop /> }.into_any(),
                        Showing::Gate => view! { <Gate jobs /> }.into_any(),
                        Showing::Step => view! { <Current jobs task stop /> }.into_any(),
                        Showing::Ended => view! { <Ended jobs /> }.into_any(),
                    }}
                </main>
            </div>
            {move || has_keypad().then(|| view! { <ReadingPanel task figure /> })}
            <ApartLine jobs offline />
            <div class="docked">
                <NotKept jobs />
                <Foot jobs task figure stop key=Signal::derive(move || key_of(showing.get())) />
            </div>
            <StopSheet jobs stop />
        </div>
    }
}

fn showing(jobs: JobStore) -> Showing {
    if !jobs.is_loaded().get() {
        Showing::Looking
    } else if jobs.is_resuming().get() {
        Showing::Resume
    } else if !jobs.is_running()
        && jobs.standing().with(|s| s.is_rejected)
        && jobs.all_the_same().with(Option::is_none)
    {
        Showing::Gate
    } else if jobs.moment().with(|moment| moment.position.is_none()) {
        Showing::Ended
    } else {
        Showing::Step
    }
}

fn key_of(showing: Showing) -> FootKey {
    match showing {
        Showing::Looking | Showing::Gate => FootKey::None,
        Showing::Resume => FootKey::GoOn,
        Showing::Step => FootKey::Task,
        Showing::Ended => FootKey::PutAway,
    }
}

fn task(jobs: JobStore) -> Task {
    let moment = jobs.moment().get();
    if let Some(question) = moment.question_before() {
        return Task::Ask(question.clone());
    }
    moment
        .step()
        .map_or(Task::Ready, |step| next_task(&moment.procedure, step, &moment.progress, jobs.now().get()))
}

/// Whether a figure has to be typed.
pub fn asks_for_figure(task: &Task) -> bool {
    matches!(task, Task::Reading(wanted) if wanted.reading.seen.is_empty())
}

fn clear_between_readings(task: Memo<Task>, figure: RwSignal<String>) {
    Effect::new(move |_| {
        task.track();
        figure.set(String::new());
    });
}

/// Moves the clock of the screen on, once a second.
fn keep_time(jobs: JobStore) {
    let now = jobs.now();
    let timer =
        set_interval_with_handle(move || now.set(crate::state::clock::now_ms()), Duration::from_secs(1)).ok();
    on_cleanup(move || {
        if let Some(timer) = timer {
            timer.clear();
        }
    });
}

/// The red bar while the last tick is not kept.
#[component]
fn NotKept(jobs: JobStore) -> impl IntoView {
    let words = move || match jobs.storing().get() {
        Storing::Kept | Storing::Under => None,
        Storing::Slow => Some("not kept yet".to_owned()),
        Storing::Failed(reason) => {
            Some(format!("not kept yet: {reason}. Press the key again; nothing has been ticked."))
        }
    };
    view! { <div role="alert" class="not-kept-place">{move || words().map(|words| view! { <p class="not-kept">{words}</p> })}</div> }
}
