//! A value against its limits, as a bar that moves while one types.

use leptos::prelude::*;
use procedures_schema::units::{Measured, Range, convert};

/// The picture; nothing if there are no two limits, or the value cannot be compared.
pub fn limits_bar(range: &Range, value: Option<&Measured>) -> Option<impl IntoView + use<>> {
    let (min, max) = (range.min.as_ref()?, range.max.as_ref()?);
    let (low, high) = (min.value(), max.value());
    let wide = (high - low).abs().max(f64::EPSILON);
    let at = |figure: f64| (25.0 + 50.0 * (figure - low) / wide).clamp(1.0, 99.0);
    let pointer = value.and_then(|value| convert(value.value.value(), &value.unit, &range.unit).ok()).map(at);
    let percent = |x: f64| format!("{x:.1}%");
    Some(view! {
        <svg class="limits" aria-hidden="true" focusable="false">
            <rect class="trough" x="0" y="22" width="100%" height="12" />
            <rect class="inside" x="25%" y="22" width="50%" height="12" />
            <text x="25%" y="16" text-anchor="middle">{min.to_string()}</text>
            <text x="75%" y="16" text-anchor="middle">{max.to_string()}</text>
            {pointer.map(|x| view! {
                <svg class="over" x=percent(x) y="38"><path class="pointer" d="M0 0L9 13H-9Z" /></svg>
            })}
        </svg>
    })
}
