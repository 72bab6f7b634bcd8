//! The Appliance screen as a whole.

use super::bring_map::BringMap;
use super::census::Census;
use super::finder::{Finder, FinderBar};
use super::list::{Open, OpenedTo, Things};
use super::own_phrases::OwnPhrases;
use super::questions::Questions;
use super::scope::ScopeFields;
use crate::frame::plain_screen::PlainScreen;
use crate::route::Screen;
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::model::ThingKind;
use wasm_bindgen::JsCast;

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
    let wanted = store.take_wanted();
    let for_what = |merges: bool| if merges { OpenedTo::Merge } else { OpenedTo::Look };
    let open: Open = RwSignal::new(wanted.map(|wanted| (wanted.thing, for_what(wanted.merges))));
    show_open(open);
    let finder = Finder::new(store);
    let list = move |(kind, heading, empty)| view! { <Things store kind heading empty open finder /> };
    view! {
        <PlainScreen store shown=Screen::Appliance class="appliance">
            <div class="over-map"><FinderBar store finder /><BringMap store /></div>
            <div class="about-job"><ScopeFields store /><Questions store /><Census store /><OwnPhrases store /></div>
            <div class="map" class:looks=move || finder.looks()>{LISTS.map(list)}</div>
        </PlainScreen>
    }
}

/// Brings the sheet that is open from the start into sight, with the keyboard on its row.
fn show_open(open: Open) {
    let Some((thing, _)) = open.get_untracked() else { return };
    request_animation_frame(move || {
        let row = document().query_selector(&format!("[id=\"thing-{thing}\"] .thing-row")).ok().flatten();
        if let Some(row) = row.and_then(|row| row.dyn_into::<web_sys::HtmlElement>().ok()) {
            row.scroll_into_view();
            // A row that cannot be focused has just gone.
            let _ = row.focus();
        }
    });
}
