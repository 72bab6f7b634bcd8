//! The frame of the application: finds what there is to begin with, then shows Write or Follow.

use crate::appliance::page::ApplianceScreen;
use crate::components::lane_patterns::LanePatterns;
use crate::finding_out::page::LaterScreen;
use crate::follow::job_store::JobStore;
use crate::follow::page::FollowScreen;
use crate::follow::standing::Standing;
use crate::kit::page::KitScreen;
use crate::library::page::ProceduresScreen;
use crate::route::{self, Screen};
use crate::state::EditorStore;
use crate::state::offline::OfflineLine;
use crate::state::opening::Beginning;
use crate::storage::preferences;
use crate::versions::page::VersionsScreen;
use crate::write::page::WriteScreen;
use leptos::mount::mount_to;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;

/// Starts the application in the page.
pub fn mount() {
    show_look(preferences::look());
    // Leptos can spawn only once something is mounted, hence the plain one.
    spawn_local(async {
        let beginning = Beginning::find().await;
        let Some(place) = document().get_element_by_id("app").and_then(|e| e.dyn_into().ok()) else { return };
        mount_to(place, move || view! { <App beginning /> }).forget();
        if let Some(start) = document().get_element_by_id("start") {
            start.remove();
        }
    });
}

/// Sets light, dark or high contrast on the page.
pub fn show_look(look: preferences::Look) {
    if let Some(root) = document().document_element() {
        // Only a malformed name is refused.
        let _ = root.set_attribute("data-look", look.word());
    }
}

/// Both screens and what they share.
#[component]
pub fn App(
    /// What there is to begin with.
    beginning: Beginning,
) -> impl IntoView {
    let store = beginning.into_store();
    let offline = OfflineLine::start();
    let screen = route::screen();
    let standing = Memo::new(move |_| {
        store.judged().with(|judged| Standing {
            is_rejected: judged.is_rejected(),
            stamp: judged.stamp(),
            n_rules: judged.report.n_rules,
        })
    });
    let jobs = JobStore::new(store.document(), standing);
    flush_when_hidden(store);
    view! {
        <LanePatterns />
        {move || match screen.get() {
            Screen::Write => view! { <WriteScreen store offline=offline.words() /> }.into_any(),
            Screen::Procedures => view! { <ProceduresScreen store /> }.into_any(),
            Screen::Appliance => view! { <ApplianceScreen store /> }.into_any(),
            Screen::Kit => view! { <KitScreen store /> }.into_any(),
            Screen::Later => view! { <LaterScreen store /> }.into_any(),
            Screen::Versions => view! { <VersionsScreen store /> }.into_any(),
            Screen::Follow => view! { <FollowScreen jobs offline=offline.words() /> }.into_any(),
        }}
    }
}

/// Writes what is pending as soon as the page goes out of sight, which may be the last that it hears.
fn flush_when_hidden(store: EditorStore) {
    let keep = move || {
        store.drop_held();
        store.keeper().flush();
    };
    window_event_listener_untyped("pagehide", move |_| keep());
    window_event_listener_untyped("visibilitychange", move |_| {
        if document().visibility_state() == web_sys::VisibilityState::Hidden {
            keep();
        }
    });
    window_event_listener_untyped("beforeunload", move |event| {
        if store.keeper().would_lose() {
            // The browser asks in its own words whether to leave.
            event.prevent_default();
        }
    });
}
