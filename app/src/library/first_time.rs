//! What somebody sees who has never been here: what this is for, and a way to see it at work.

use crate::desk::{Begin, DeskPart};
use leptos::prelude::*;

/// What this is for, in three sentences and a key.
#[component]
pub fn FirstTime(
    /// The editor, which may not be there yet.
    part: DeskPart,
) -> impl IntoView {
    view! {
        <section class="first-time" aria-labelledby="first-time">
            <h2 id="first-time">"Write down how it comes out, so that somebody else can put it back."</h2>
            <p>
                "Type the steps in your own words. A checker goes through them as the appliance would, and rejects what \
                 misses an isolation, a pressure relief or a tightness test, or leaves anything apart. Whoever follows \
                 it ticks the steps off on a tablet, without a network."
            </p>
            <button type="button" class="key first" on:click=move |_| part.begin(Begin::Demo)>"Try it: a step is missing, put it back"</button>
        </section>
    }
}
