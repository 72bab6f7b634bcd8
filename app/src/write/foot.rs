//! The foot of Write: the caution, whether it works offline, and how the page looks.

use super::keys_sheet::KeysSheet;
use crate::app::show_look;
use crate::components::caution::Caution;
use crate::frame::versions_line::VersionsLine;
use crate::storage::preferences::{self, Look};
use leptos::prelude::*;

/// The foot.
#[component]
pub fn Foot(
    /// The line about working offline.
    offline: ReadSignal<String>,
) -> impl IntoView {
    let chosen = preferences::look();
    let choose = move |event: web_sys::Event| {
        let look = Look::from_word(&event_target_value(&event));
        preferences::keep_look(look);
        show_look(look);
    };
    let option = |look: Look| {
        let name = match look {
            Look::System => "as this device",
            Look::Light => "light",
            Look::Dark => "dark",
            Look::High => "high contrast",
        };
        view! { <option value=look.word() selected=look == chosen>{name}</option> }
    };
    view! {
        <footer class="foot">
            <Caution />
            <div class="facts">
                <span class="offline">{offline}</span>
                <VersionsLine />
                <KeysSheet />
                <label>"Look " <select on:change=choose>{Look::ALL.map(option)}</select></label>
            </div>
        </footer>
    }
}
