//! The circuits in words and pattern, always in sight.

use super::job_store::JobStore;
use super::moment::CircuitNow;
use crate::components::lane::{colour, lane_swatch};
use crate::state::clock;
use leptos::prelude::*;
use procedures_schema::derive::lanes::LaneLevel;

/// The strip.
#[component]
pub fn Strip(
    /// The state of Follow.
    jobs: JobStore,
) -> impl IntoView {
    let circuits = move || jobs.moment().with(|moment| moment.circuits.iter().map(circuit).collect_view());
    view! { <ul class="strip" aria-label="Circuits now">{circuits}</ul> }
}

fn circuit(now: &CircuitNow) -> impl IntoView + use<> {
    let when = now
        .proved_ms
        .filter(|_| now.state.level == LaneLevel::Proved)
        .map(|at_ms| clock::ticked(at_ms, clock::now_ms()));
    let words = when.map_or_else(|| now.words.clone(), |when| format!("{}, {when}", now.words));
    view! {
        <li class=format!("circuit k-{}", colour(&now.kind))>
            {lane_swatch(now.state, &now.kind)}
            <span>
                <strong>{now.name.clone()}</strong>
                <span class="state">{words}</span>
                {now.beyond.map(|beyond| view! { <span class="state beyond">{beyond}</span> })}
            </span>
        </li>
    }
}
