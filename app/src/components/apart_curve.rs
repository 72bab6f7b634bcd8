//! The curve of how many things are apart, to the right of the lanes.
//!
//! It is drawn a unit a thing. How many things its width stands for, the largest count in the document, is said once
//! for all rows (`--most` in `write.css`): else a key that leaves one thing more apart would draw every row anew.

use leptos::prelude::*;

/// The curve beside one step, by how many things are apart before and after it.
pub fn apart_curve(counts: Memo<(u32, u32)>) -> impl IntoView {
    let line = move || counts.with(|(from, to)| format!("M{from} 0L{from} 35L{to} 65L{to} 100"));
    let area = move || counts.with(|(from, to)| format!("M{from} 0L{from} 35L{to} 65L{to} 100L0 100L0 0Z"));
    let count = move || {
        let (before, after) = counts.get();
        (before != after)
            .then(|| view! { <span class="count" style=("--reach", after.to_string())>{after}</span> })
    };
    view! {
        <span class="apart" aria-hidden="true">
            <svg class="curve" viewBox="0 0 100 100" preserveAspectRatio="none" focusable="false">
                <path class="area" d=area />
                <path class="line" d=line vector-effect="non-scaling-stroke" />
            </svg>
            {count}
        </span>
    }
}
