//! The caution that stands on every screen that can lead to work.

use leptos::prelude::*;

/// What every screen says that can lead to work.
pub const WORDS: &str = "Work on gas, electricity, pressure and refrigerant is for competent and, where required, \
    registered people. Local codes and the maker’s instructions come first. This tool checks consistency with what it \
    was told, not the appliance. Limits from memory are labelled so.";

/// The same in one line, where all of it has been shown before.
pub const IN_SHORT: &str = "For competent and, where required, registered people. Local codes and the maker’s instructions come first.";

/// The caution as a paragraph.
#[component]
pub fn Caution() -> impl IntoView {
    view! {
        <p class="caution-line">
            <strong>"Caution. "</strong>
            {WORDS}
        </p>
    }
}
