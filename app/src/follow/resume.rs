//! "You were here": after a reload, a kill, or a long absence.

use super::job_store::JobStore;
use super::moment::{Done, Moment};
use super::stop_sheet::LEAVE;
use crate::components::in_one_piece::in_one_piece;
use crate::state::clock;
use leptos::prelude::*;

/// What has to be proved again, where a person was, what is apart.
#[component]
pub fn Resume(
    /// The state of Follow.
    jobs: JobStore,
    /// The sheet that STOP opens.
    stop: NodeRef<leptos::html::Dialog>,
) -> impl IntoView {
    let now_ms = jobs.now().get_untracked();
    let told = move || jobs.moment().with(|moment| told(moment, now_ms));
    view! {
        <section class="now resume" tabindex="0" aria-label="Where you were">
            <h1>"You were here"</h1>
            {told}
            <p class="ways-out">
                <LeaveSafe stop />
                <button type="button" class="key" on:click=move |_| jobs.put_away()>"Put this job away and begin again"</button>
            </p>
        </section>
    }
}

/// The way out for whoever does not go on: the sheet of STOP, where it says how to leave.
#[component]
pub fn LeaveSafe(
    /// The sheet that STOP opens.
    stop: NodeRef<leptos::html::Dialog>,
) -> impl IntoView {
    let leave = move |_| {
        let Some(sheet) = stop.get_untracked() else { return };
        // Opening a sheet that is open already is the only refusal.
        let _ = sheet.show_modal();
        if let Some(place) = document().get_element_by_id(LEAVE) {
            place.scroll_into_view();
        }
    };
    view! { <button type="button" class="key leave" on:click=leave>"Leave it safe"</button> }
}

fn told(moment: &Moment, now_ms: u64) -> impl IntoView + use<> {
    let tick = |done: &Done| {
        let words = moment.procedure.words_of(moment.step_at(done.position)?);
        Some(view! {
            <li>
                <span aria-hidden="true">"✓"</span>
                <span class="words">{done.position + 1} " " {words}</span>
                <span class="time">{clock::ticked(done.at_ms, now_ms)}</span>
            </li>
        })
    };
    let ticks: Vec<_> = moment.done.iter().rev().take(2).rev().filter_map(tick).collect();
    let next = moment.position.zip(moment.next_step());
    let next = next.map(|(position, step)| {
        view! { <p class="next-step">"Step " {position + 1} ": " {in_one_piece(&moment.procedure.words_of(step))}</p> }
    });
    let again: Vec<_> = moment
        .proofs
        .iter()
        .map(|due| {
            let ago = clock::ago(due.proved_ms, now_ms);
            view! { <li>"Prove again: " {due.names.clone()} " (proved " {ago} ")"</li> }
        })
        .collect();
    // That nothing is apart stands in the line above the keys.
    let n_apart = moment.apart.count();
    let apart = (n_apart > 0).then(|| {
        let items: Vec<_> =
            moment.apart.items.iter().map(|item| view! { <li>{item.words.clone()}</li> }).collect();
        view! { <p class="what">"Still apart: " {n_apart}</p><ul class="ticks">{items}</ul> }
    });
    view! {
        {(!again.is_empty()).then(|| view! {
            <p class="what">"Before you touch anything, because nobody watched meanwhile:"</p>
            <ul class="again">{again}</ul>
        })}
        {next}
        <ul class="ticks">{ticks}</ul>
        {apart}
    }
}
