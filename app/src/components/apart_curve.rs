//! The curve of how many things are apart, to the right of the lanes.

use leptos::prelude::*;

/// The curve beside one step; `most` is the largest count in the document, at which it is widest.
pub fn apart_curve(before: u32, after: u32, most: u32) -> impl IntoView {
    let reach = |count: u32| if most == 0 { 0.0 } else { 100.0 * f64::from(count) / f64::from(most) };
    let (from, to) = (reach(before), reach(after));
    let line = format!("M{from:.1} 0L{from:.1} 35L{to:.1} 65L{to:.1} 100");
    let area = format!("{line}L0 100L0 0Z");
    view! {
        <span class="apart" aria-hidden="true">
            <svg class="curve" viewBox="0 0 100 100" preserveAspectRatio="none" focusable="false">
                <path class="area" d=area />
                <path class="line" d=line vector-effect="non-scaling-stroke" />
            </svg>
            {(before != after).then(|| view! { <span class="count" style=("--reach", format!("{to:.1}"))>{after}</span> })}
        </span>
    }
}
