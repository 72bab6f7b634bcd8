//! The fills of the lanes, defined once for the page: bars, hatching, dots and pinstripes in each colour.
//!
//! An SVG fill takes its colours where it is defined, not where it is used; hence one of each per colour.

use leptos::prelude::*;

const COLOURS: [&str; 8] = ["electricity", "gas", "water", "air", "steam", "oil", "acid", "stored"];

/// The definitions; they draw nothing themselves.
#[component]
pub fn LanePatterns(
    /// Whether they are in the colours of paper.
    as_on_paper: bool,
) -> impl IntoView {
    view! {
        <svg class="patterns" class:as-on-paper=as_on_paper width="0" height="0" aria-hidden="true" focusable="false">
            <defs>{COLOURS.map(patterns)}</defs>
        </svg>
    }
}

fn patterns(colour: &'static str) -> impl IntoView {
    let class = format!("k-{colour}");
    view! {
        <pattern
            id=format!("hatch-{colour}") class=class.clone()
            width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"
        >
            <rect class="ground" width="8" height="8" />
            <rect class="filled" width="4" height="8" />
        </pattern>
        <pattern id=format!("bars-{colour}") class=class.clone() width="8" height="14" patternUnits="userSpaceOnUse">
            <rect class="filled" width="8" height="14" />
            <rect class="ground" y="6" width="8" height="3" />
        </pattern>
        <pattern id=format!("dots-{colour}") class=class.clone() width="7" height="7" patternUnits="userSpaceOnUse">
            <rect class="ground" width="7" height="7" />
            <circle class="dot" cx="3.5" cy="3.5" r="1.5" />
        </pattern>
        <pattern id=format!("pins-{colour}") class=class width="5" height="8" patternUnits="userSpaceOnUse">
            <rect class="ground" width="5" height="8" />
            <rect class="dot" x="2" width="1.5" height="8" />
        </pattern>
    }
}
