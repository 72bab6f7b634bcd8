//! Where each screen was scrolled to, for as long as the page lives.
//!
//! A screen is made anew each time it is shown, and begins at its top the first time. Rows out of sight have no height
//! of their own until they are seen, so a place is not kept as a distance from the top alone: it is that of the first
//! element with an id that is in sight, for example the row of step 16, 12 px below the edge of the window.

use crate::route::Screen;
use leptos::prelude::*;
use std::cell::RefCell;
use wasm_bindgen::JsCast;
use web_sys::{Element, ScrollRestoration};

/// For so many frames a screen that is shown again is held in its place, while its rows get their heights.
const FRAMES: u8 = 4;

/// Where a screen was.
#[derive(Clone, Default)]
struct Place {
    from_top: f64,
    /// The id of the first element in sight, and how far from the edge of the window it stood.
    first: Option<(String, f64)>,
}

thread_local! {
    static PLACES: RefCell<Vec<(Screen, Place)>> = const { RefCell::new(Vec::new()) };
}

/// Lets no browser scroll by itself to where a page of its history was: it knows the page and not the screen.
pub fn keep_from_browser() {
    if let Ok(history) = window().history() {
        // A browser without it scrolls, and the screen is then brought to its place all the same.
        let _ = history.set_scroll_restoration(ScrollRestoration::Manual);
    }
}

/// Takes note of where a screen is, before another takes its place.
pub fn note(screen: Screen) {
    let from_top = scrolled();
    let first = (from_top > 0.0).then(first_in_sight).flatten();
    PLACES.with_borrow_mut(|places| {
        places.retain(|(known, _)| *known != screen);
        places.push((screen, Place { from_top, first }));
    });
}

/// Brings a screen that has just come to where it was, or to its top.
pub fn come_back(screen: Screen) {
    let place = PLACES.with_borrow(|places| places.iter().find(|(known, _)| *known == screen).cloned());
    let place = place.map(|(_, place)| place).unwrap_or_default();
    // It stands in the page by then, and what it wants to show by itself is shown after that.
    request_animation_frame(move || {
        if place.distance().is_none() {
            window().scroll_to_with_x_and_y(0.0, place.from_top);
        }
        hold(screen, place, scrolled(), FRAMES);
    });
}

/// Forgets where the screens were, because what they showed is no longer open.
pub fn forget() {
    PLACES.with_borrow_mut(|places| places.retain(|(screen, _)| *screen == Screen::Procedures));
}

/// Scrolls to the place, and again in the next frames, unless something else has scrolled since.
fn hold(screen: Screen, place: Place, left_at: f64, frames: u8) {
    if frames == 0 || Screen::or_write() != screen || (scrolled() - left_at).abs() > 1.0 {
        return;
    }
    if let Some(distance) = place.distance().filter(|distance| distance.abs() > 0.5) {
        window().scroll_by_with_x_and_y(0.0, distance);
    }
    let at = scrolled();
    request_animation_frame(move || hold(screen, place, at, frames - 1));
}

impl Place {
    /// How far its first element stands from where it was; none if it is not there.
    fn distance(&self) -> Option<f64> {
        let (id, top) = self.first.as_ref()?;
        let element = document().get_element_by_id(id)?;
        Some(element.get_bounding_client_rect().top() - top)
    }
}

fn first_in_sight() -> Option<(String, f64)> {
    let named = document().query_selector_all("main [id]").ok()?;
    let named = (0..named.length()).filter_map(|at| named.item(at)?.dyn_into::<Element>().ok());
    named.into_iter().find_map(|element| {
        let place = element.get_bounding_client_rect();
        (place.height() > 0.0 && place.bottom() > 0.0).then(|| (element.id(), place.top()))
    })
}

fn scrolled() -> f64 {
    window().scroll_y().unwrap_or(0.0)
}
