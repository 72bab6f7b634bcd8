//! The line under the strip: stage, step, procedure, standing, and the way back to Write.

use super::job_store::JobStore;
use super::moment::Moment;
use crate::components::capital::capital;
use crate::route::{Screen, Tabs};
use leptos::prelude::*;

/// The line.
#[component]
pub fn Bar(
    /// The state of Follow.
    jobs: JobStore,
) -> impl IntoView {
    let place = move || jobs.moment().with(|moment| place(moment));
    let title = move || jobs.moment().with(|moment| moment.procedure.title.clone());
    let standing = move || {
        jobs.standing().with(|standing| {
            if standing.is_rejected {
                format!("{} · not for work", standing.stamp)
            } else {
                format!("{} by {} rules, not for work yet", standing.stamp, standing.n_rules)
            }
        })
    };
    let is_rejected = move || jobs.standing().with(|standing| standing.is_rejected);
    let copy = move || jobs.follows_a_copy().then_some(" · as it was when the job began");
    view! {
        <div class="bar">
            <p class="place"><strong>{move || place().0}</strong>{move || place().1}</p>
            <Menu />
            <p class="of"><span class="title">{title}</span>{copy}<br /><span class="standing" class:rejected=is_rejected>{standing}</span></p>
        </div>
    }
}

/// The stage and the number of the step.
fn place(moment: &Moment) -> (String, String) {
    let n_steps = moment.procedure.steps.len();
    match (moment.next_step(), moment.position) {
        (Some(_), Some(position)) if moment.proof().is_some() => {
            ("Prove again".to_owned(), format!(" · before step {}", position + 1))
        }
        (Some(step), Some(position)) => {
            (capital(step.stage.word()), format!(" · step {} of {n_steps}", position + 1))
        }
        _ => (
            "End".to_owned(),
            format!(" · {} of {} steps", moment.done.len(), n_steps - moment.n_passed_over),
        ),
    }
}

/// The tabs; where the line has no room for them, behind a key.
#[component]
fn Menu() -> impl IntoView {
    let is_open = RwSignal::new(false);
    let close = move |event: leptos::ev::KeyboardEvent| {
        if event.key() == "Escape" {
            is_open.set(false);
        }
    };
    view! {
        <div class="menu" class:open=move || is_open.get() on:keydown=close>
            <button
                type="button" class="menu-key quiet"
                aria-expanded=move || if is_open.get() { "true" } else { "false" }
                on:click=move |_| is_open.update(|is_open| *is_open = !*is_open)
            >"Menu"</button>
            <Tabs shown=Screen::Follow />
        </div>
    }
}
