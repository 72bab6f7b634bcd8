//! The foot of a screen that has no keys of its own there: the caution, and what judged.

use crate::components::caution::Caution;
use crate::frame::versions_line::VersionsLine;
use leptos::prelude::*;

/// The foot.
#[component]
pub fn PlainFoot() -> impl IntoView {
    view! {
        <footer class="foot">
            <Caution />
            <div class="facts"><VersionsLine /></div>
        </footer>
    }
}
