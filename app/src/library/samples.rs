//! The invented procedures that come with the page.

use crate::desk::{Begin, DeskPart};
use crate::state::on_shelf::SAMPLES;
use leptos::prelude::*;

/// What there is to look at.
#[component]
pub fn Samples(
    /// The editor, which may not be there yet.
    part: DeskPart,
) -> impl IntoView {
    let row = move |(name, about): (&'static str, &'static str)| {
        view! {
            <li>
                <span class="about">{about}</span>
                <button
                    type="button" class="key" aria-label=format!("Open a copy of {about}")
                    on:click=move |_| part.begin(Begin::Sample(name))
                >"Open a copy"</button>
            </li>
        }
    };
    view! {
        <section aria-labelledby="samples">
            <h2 id="samples" class="stage">"To look at: invented, with invented figures"</h2>
            <ul class="shelf">{SAMPLES.map(row)}</ul>
        </section>
    }
}
