//! How serious a finding is, by its shape: a cross, a rhombus, a dot. Never by its colour alone.

use leptos::prelude::*;
use procedures_schema::check::Level;

/// The mark, in the colour of what it stands in.
pub fn level_mark(level: Level) -> impl IntoView {
    let drawn = match level {
        Level::Reject => view! { <circle r="7.5" /><path d="M-3-3L3 3M3-3L-3 3" /> }.into_any(),
        Level::Warn => view! { <path class="edge" d="M0-8L8 0L0 8L-8 0Z" /> }.into_any(),
        Level::Advise => view! { <circle r="4" /> }.into_any(),
    };
    view! { <svg class="level-mark" viewBox="-10 -10 20 20" aria-hidden="true" focusable="false">{drawn}</svg> }
}
