//! The Appliance screen as a whole.

use super::census::Census;
use super::finder::{Finder, FinderBar};
use super::list::{Open, Things};
use super::scope::ScopeFields;
use crate::components::caution::Caution;
use crate::frame::notice::Notice;
use crate::frame::other_tab::OtherTab;
use crate::route::{Screen, Tabs};
use crate::state::{Command, EditorStore};
use leptos::prelude::*;
use procedures_schema::model::ThingKind;

/// The lists: kind, heading, what stands there while there is none.
const LISTS: [(ThingKind, &str, &str); 8] = [
    (
        ThingKind::Circuit,
        "Circuits",
        "Everything that carries energy or a medium: mains, gas, heating water.",
    ),
    (ThingKind::Section, "Sections", "A circuit has one section, and more where isolators cut it."),
    (ThingKind::Isolator, "Isolators", "Valves, switches, plugs and fuses that shut a circuit off."),
    (ThingKind::Component, "Components", "What comes off and goes on: covers, fans, pumps, pipes."),
    (ThingKind::Connection, "Connections", "Unions, flanges, screws, plugs, drains and test points."),
    (ThingKind::Seal, "Seals", "Washers, O-rings, gaskets and rope, by size and number."),
    (ThingKind::Temporary, "Temporary items", "Hoses, caps, gauges, bonds and notices for the job."),
    (ThingKind::Setting, "Settings", "What must be as it was found: a duty point, a throttle."),
];

/// Everything of Appliance.
#[component]
pub fn ApplianceScreen(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    let open: Open = RwSignal::new(None);
    let title = move || store.document().with(|document| document.title.clone());
    let finder = Finder::new(store);
    let list = move |(kind, heading, empty)| view! { <Things store kind heading empty open finder /> };
    view! {
        <div class="appliance">
            <header class="plain-head">
                <h1 class="name">"Putback"</h1>
                <span class="title">{title}</span>
                <Tabs shown=Screen::Appliance />
                <Standing store />
            </header>
            <OtherTab store />
            <Notice store />
            <main>
                <div class="about-job"><ScopeFields store /><Census store /></div>
                <div class="map"><FinderBar store finder />{LISTS.map(list)}</div>
            </main>
            <footer class="foot"><Caution /></footer>
        </div>
    }
}

/// Verdict and undo, as on the other screens.
#[component]
fn Standing(store: EditorStore) -> impl IntoView {
    let is_rejected = Memo::new(move |_| store.judged().with(|judged| judged.is_rejected()));
    let stamp = Memo::new(move |_| store.judged().with(|judged| judged.stamp()));
    let labels = store.undo_labels();
    let undo = move || {
        labels.with(|(undo, _)| undo.as_ref().map_or("Undo".to_owned(), |label| format!("Undo: {label}")))
    };
    let cannot = move || labels.with(|(undo, _)| undo.is_none());
    view! {
        <button type="button" class="quiet" disabled=cannot on:click=move |_| store.run(Command::Undo)>{undo}</button>
        <div class="verdict" role="status"><strong class="stamp" class:rejected=is_rejected>{stamp}</strong></div>
    }
}
