//! The Appliance screen as a whole.

use super::census::Census;
use super::finder::{Finder, FinderBar};
use super::list::{Open, Things};
use super::questions::Questions;
use super::scope::ScopeFields;
use crate::frame::plain_screen::PlainScreen;
use crate::route::Screen;
use crate::state::EditorStore;
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
    let finder = Finder::new(store);
    let list = move |(kind, heading, empty)| view! { <Things store kind heading empty open finder /> };
    view! {
        <PlainScreen store shown=Screen::Appliance class="appliance">
            <div class="about-job"><ScopeFields store /><Questions store /><Census store /></div>
            <div class="map"><FinderBar store finder />{LISTS.map(list)}</div>
        </PlainScreen>
    }
}
