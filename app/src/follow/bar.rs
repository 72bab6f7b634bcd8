//! The line under the strip: stage, step, procedure, standing, and the way back to Write.

use super::job_store::JobStore;
use crate::components::capital::capital;
use crate::route::{Screen, Tabs};
use leptos::prelude::*;

/// The line.
#[component]
pub fn Bar(
    /// The state of Follow.
    jobs: JobStore,
) -> impl IntoView {
    let place = move || {
        jobs.moment().with(|moment| {
            let n_steps = moment.procedure.steps.len();
            match (moment.step(), moment.position) {
                (Some(step), Some(position)) => {
                    (capital(step.stage.word()), format!(" · step {} of {n_steps}", position + 1))
                }
                _ => ("End".to_owned(), format!(" · {n_steps} of {n_steps} steps")),
            }
        })
    };
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
            <Tabs shown=Screen::Follow />
            <p class="of"><span class="title">{title}</span>{copy}<br /><span class="standing" class:rejected=is_rejected>{standing}</span></p>
        </div>
    }
}
