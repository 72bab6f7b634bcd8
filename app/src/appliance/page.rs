//! The Appliance screen as a whole.

use super::bring_map::BringMap;
use super::census::Census;
use super::drag::Dragging;
use super::drag_bar::DragBar;
use super::finder::{Finder, FinderBar};
use super::list::{Open, OpenedTo, Shared, Things};
use super::own_phrases::OwnPhrases;
use super::questions::Questions;
use super::scope::ScopeFields;
use super::thing_row::row_of_thing;
use super::way_to_it::Access;
use crate::frame::plain_screen::PlainScreen;
use crate::route::Screen;
use crate::state::EditorStore;
use crate::state::next_finding::Spot;
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
    let for_what = |merges: bool| if merges { OpenedTo::Merge(None) } else { OpenedTo::Look };
    let open: Open = RwSignal::new(wanted.map(|wanted| (wanted.thing, for_what(wanted.merges))));
    show_open(open);
    let (finder, dragging) = (Finder::new(store), Dragging::new(store, open));
    let shared = Shared { open, finder, dragging };
    show_spots(store, finder);
    let list = move |(kind, heading, empty)| view! { <Things store kind heading empty shared /> };
    view! {
        <PlainScreen store shown=Screen::Appliance class="appliance">
            <div class="over-map"><FinderBar store finder /><BringMap store /></div>
            <div class="about-job"><ScopeFields store /><Questions store /><Census store /><OwnPhrases store /></div>
            <div class="map" class:looks=move || finder.looks()>{LISTS.map(list)}{move || (!finder.looks()).then(|| view! { <Access store /> })}</div>
            <DragBar store dragging />
        </PlainScreen>
    }
}

/// Brings the sheet that is open from the start into sight, with the keyboard on its row.
fn show_open(open: Open) {
    let Some((thing, _)) = open.get_untracked() else { return };
    request_animation_frame(move || {
        if let Some(row) = row_of_thing(&thing) {
            row.scroll_into_view();
            // A row that cannot be focused has just gone.
            let _ = row.focus();
        }
    });
}

/// Shows the place of a finding when it is asked for, with the keyboard there.
fn show_spots(store: EditorStore, finder: Finder) {
    Effect::new(move |_| {
        let Some(spot) = store.spot().get() else { return };
        store.spot().set(None);
        // What is looked for would hide it.
        finder.clear();
        // Once the rows that were hidden are drawn, and the screen is where it was.
        request_animation_frame(move || request_animation_frame(move || show(&spot)));
    });
}

fn show(spot: &Spot) {
    let first = |selector: &str| {
        let found = document().query_selector(selector).ok().flatten();
        found.and_then(|field| field.dyn_into::<web_sys::HtmlElement>().ok())
    };
    let place = match spot {
        Spot::Thing(thing) => row_of_thing(thing),
        Spot::Census => first(".census .unanswered input").or_else(|| first(".census input")),
        Spot::Scope => first(".scope textarea"),
    };
    if let Some(place) = place {
        place.scroll_into_view();
        // A field that cannot be focused has just gone.
        let _ = place.focus();
    }
}
