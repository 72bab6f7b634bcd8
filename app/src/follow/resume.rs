//! "You were here": after a reload, a kill, or a long absence.

use super::job_store::JobStore;
use super::moment::Moment;
use crate::state::clock;
use leptos::prelude::*;

/// Where a person was, what is apart, what has to be proved again.
#[component]
pub fn Resume(
    /// The state of Follow.
    jobs: JobStore,
) -> impl IntoView {
    let now_ms = jobs.now().get_untracked();
    let told = move || jobs.moment().with(|moment| told(moment, now_ms));
    view! {
        <section class="now resume" tabindex="0" aria-label="Where you were">
            <h1>"You were here"</h1>
            {told}
            <button type="button" class="quiet" on:click=move |_| jobs.put_away()>"Put this job away and begin again"</button>
        </section>
    }
}

fn told(moment: &Moment, now_ms: u64) -> impl IntoView + use<> {
    let ticks = moment.done.iter().rev().take(2).rev().filter_map(|(position, at_ms)| {
        let words = moment.procedure.words_of(moment.step_at(*position)?);
        Some(view! { <li>"✓ " {position + 1} " " {words} " · " {clock::to_the_minute(*at_ms)}</li> })
    });
    let ticks: Vec<_> = ticks.collect();
    let next = moment.position.zip(moment.step());
    let next = next.map(|(position, step)| {
        view! { <p class="next-step">"Step " {position + 1} ": " {moment.procedure.words_of(step)}</p> }
    });
    let again: Vec<_> = moment
        .to_prove_again()
        .map(|circuit| {
            let ago = circuit.proved_ms.map(|at_ms| format!(" (proved {})", clock::ago(at_ms, now_ms)));
            view! { <li>"Prove again: " {circuit.name.clone()}{ago}</li> }
        })
        .collect();
    let apart: Vec<_> =
        moment.apart.items.iter().map(|item| view! { <li>{item.words.clone()}</li> }).collect();
    view! {
        <ul class="ticks">{ticks}</ul>
        {next}
        {(!again.is_empty()).then(|| view! {
            <p class="what">"Before you touch anything, because nobody watched meanwhile:"</p>
            <ul class="again">{again}</ul>
        })}
        <p class="what">"Still apart: " {moment.apart.count()}</p>
        <ul class="ticks">{apart}</ul>
    }
}
