//! The frame of the application: the list of procedures, which comes first, and the screens of the editor.

use crate::desk::{Coming, DeskPart, Source, Start};
use crate::library::fetching::{Fetching, KeptWithout, is_late};
use crate::library::page::ProceduresScreen;
use crate::route::{self, Screen, Tabs};
use crate::state::offline::OfflineLine;
use crate::state::records;
use crate::storage::preferences;
use leptos::mount::mount_to;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;

/// Starts the application in the page; `source` is where its second part comes from.
pub fn mount(source: Source) {
    show_look(preferences::look());
    // Leptos can spawn only once something is mounted, hence the plain one.
    spawn_local(async move {
        if Screen::of_address().is_none() && !records::is_any_kept().await {
            // A first visit; nothing to go back to is left in the browser's history.
            route::begin_at(Screen::Procedures);
        }
        let Some(place) = document().get_element_by_id("app").and_then(|e| e.dyn_into().ok()) else { return };
        mount_to(place, move || view! { <App source /> }).forget();
    });
}

/// Sets light, dark or high contrast on the page.
pub fn show_look(look: preferences::Look) {
    if let Some(root) = document().document_element() {
        // Only a malformed name is refused.
        let _ = root.set_attribute("data-look", look.word());
    }
}

/// The screen of the address.
#[component]
pub fn App(
    /// Where the second part comes from.
    source: Source,
) -> impl IntoView {
    let offline = OfflineLine::start();
    let screen = route::screen();
    let part = DeskPart::new(source, offline.words());
    let shown = move || {
        let screen = screen.get();
        // The list must not be made anew when the editor arrives, hence the order.
        if screen == Screen::Procedures {
            stands();
            return view! { <ProceduresScreen part /> }.into_any();
        }
        let Some(desk) = part.get() else {
            part.want_screen();
            return view! { <NotThere part screen /> }.into_any();
        };
        stands();
        desk.screen(screen)
    };
    view! { <EditorPrinted />{shown} }
}

/// What a browser that is told to print another screen than Print puts on paper, so that no page without its verdict
/// gets about.
#[component]
fn EditorPrinted() -> impl IntoView {
    view! {
        <p class="editor-printed">
            "This is the editor, not the procedure. Press Print in the menu of Write: its sheets carry the verdict on \
             every page."
        </p>
    }
}

/// Takes away the words that the page starts with.
fn stands() {
    if let Some(start) = document().get_element_by_id("start") {
        start.remove();
    }
}

/// What stands in the place of the editor while it is fetched, and if it cannot be fetched.
#[component]
fn NotThere(part: DeskPart, screen: Screen) -> impl IntoView {
    // A page that begins here says so already, and hands out what is kept if it takes too long.
    let says_so = document().get_element_by_id("start").is_some();
    let is_late = is_late(part);
    let coming = part.coming();
    let is_shown = Memo::new(move |_| !says_so || coming.get() == Coming::Failed);
    move || {
        is_shown.get().then(|| {
            stands();
            view! {
                <div class="procedures">
                    <div class="plain-top">
                        <header class="plain-head"><h1 class="name">"Putback"</h1><Tabs shown=screen /></header>
                        <Fetching part start=Start::Demo is_late />
                    </div>
                    <main><KeptWithout part is_late /></main>
                </div>
            }
        })
    }
}
