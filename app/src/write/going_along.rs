//! What is being written stays in sight while the page grows: the line with the keyboard, or above the docked line the
//! step that it has just become. Findings and remedies come a moment after a step and make its row higher.
//!
//! Whoever scrolls by hand is left there until the next line is kept or the next letter is typed.

use crate::state::attention::Focus;
use leptos::leptos_dom::helpers::WindowListenerHandle;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Element, ResizeObserver, ScrollBehavior, ScrollToOptions};

/// So much room is left around it, in CSS pixels.
const CLEAR: f64 = 12.0;
/// Less than this is no scrolling.
const NOTHING: f64 = 0.5;

/// What is kept in sight.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Kept {
    /// Nothing: somebody has scrolled by hand, or nothing is written.
    Nothing,
    /// The line in which the keyboard is.
    Line,
    /// The same, and above the docked line the last step.
    LastStep,
}

/// What watches the sizes of rows. It lives as long as the screen.
struct Watch {
    observer: ResizeObserver,
    _grown: Closure<dyn Fn()>,
}

/// Keeps in sight what is written.
#[derive(Clone, Copy)]
pub(super) struct GoingAlong {
    kept: StoredValue<Kept>,
    /// How far it was from its place, and how high the page was then.
    last: StoredValue<(f64, f64)>,
    watch: StoredValue<Option<Watch>, LocalStorage>,
}

impl GoingAlong {
    /// Begins to watch the page, as long as the screen is shown.
    pub(super) fn new() -> Self {
        let along = Self {
            kept: StoredValue::new(Kept::Nothing),
            last: StoredValue::new((0.0, 0.0)),
            watch: StoredValue::new_local(None),
        };
        along.listen();
        let grown = Closure::<dyn Fn()>::new(move || along.keep());
        // Without one the browser alone decides what is in sight.
        if let Ok(observer) = ResizeObserver::new(grown.as_ref().unchecked_ref()) {
            along.watch.set_value(Some(Watch { observer, _grown: grown }));
            request_animation_frame(move || along.observe(find(".rows")));
        }
        on_cleanup(move || {
            along.watch.with_value(|watch| watch.iter().for_each(|w| w.observer.disconnect()));
        });
        along
    }

    fn listen(self) {
        let by_hand = move |_| self.kept.set_value(Kept::Nothing);
        let typed = move |event: web_sys::Event| {
            let is_docked = is_written_in(event.target()).is_some_and(|field| is_in_dock(&field));
            if !is_docked {
                self.kept.set_value(Kept::Line);
            }
        };
        // The docked line has gone along with its last step; another field goes along with itself.
        let elsewhere = move |event: web_sys::Event| {
            let is_docked = is_written_in(event.target()).is_some_and(|field| is_in_dock(&field));
            if !is_docked && self.kept.try_get_value() == Some(Kept::LastStep) {
                self.kept.set_value(Kept::Line);
            }
        };
        let handles = [
            window_event_listener_untyped("wheel", by_hand),
            window_event_listener_untyped("touchmove", by_hand),
            window_event_listener_untyped("scroll", move |_| self.scrolled()),
            window_event_listener_untyped("resize", move |_| self.keep()),
            window_event_listener_untyped("input", typed),
            window_event_listener_untyped("focusin", elsewhere),
        ];
        on_cleanup(move || handles.into_iter().for_each(WindowListenerHandle::remove));
    }

    /// Goes along with what has just got the keyboard.
    pub(super) fn with(self, focus: &Focus) {
        self.kept.set_value(if *focus == Focus::LastLine { Kept::LastStep } else { Kept::Line });
        // Rows that were out of sight have their heights by then.
        request_animation_frame(move || {
            self.observe(last_step());
            self.keep();
        });
    }

    fn observe(self, element: Option<Element>) {
        let watch = |watch: &Option<Watch>| {
            if let Some((watch, element)) = watch.as_ref().zip(element.as_ref()) {
                watch.observer.observe(element);
            }
        };
        // The screen may have gone before the frame came.
        let _ = self.watch.try_with_value(watch);
    }

    /// Scrolls what is kept in sight to where it is seen, if it is not.
    fn keep(self) {
        let Some((by, is_smooth)) = self.away() else { return };
        self.last.set_value((by, height_of_page()));
        scroll_by(by, is_smooth);
    }

    /// Somebody who scrolls away by other means than a wheel or a finger is left there too.
    fn scrolled(self) {
        let Some((by, _)) = self.away() else { return };
        let (last, height) = self.last.get_value();
        let is_as_high = (height - height_of_page()).abs() < NOTHING;
        if is_as_high && by.abs() > last.abs() + 1.0 {
            self.kept.set_value(Kept::Nothing);
        }
        self.last.set_value((by, height_of_page()));
    }

    /// How far what is kept in sight is from where it is seen, and whether it may move there slowly.
    fn away(self) -> Option<(f64, bool)> {
        let kept = self.kept.try_get_value().filter(|kept| *kept != Kept::Nothing)?;
        let field = is_written_in(document().active_element().map(Into::into))?;
        if !is_in_dock(&field) {
            let whole = field.closest(".new-line").ok().flatten().filter(fits);
            return Some((away(&whole.or_else(|| Some(field).filter(fits))?), false));
        }
        (kept == Kept::LastStep).then(last_step)?.map(|step| (away(&step), true))
    }
}

/// Brings an element into sight, if it is not.
pub(super) fn bring_into_sight(element: &Element) {
    scroll_by(away(element), false);
}

/// How far the page has to be scrolled until an element is in sight; of what is too high its top.
fn away(element: &Element) -> f64 {
    let (top, bottom) = in_sight();
    let place = element.get_bounding_client_rect();
    let (below, above) = (place.bottom() + CLEAR - bottom, place.top() - CLEAR - top);
    if below > 0.0 { below.min(above) } else { above.min(0.0).max(below) }
}

fn fits(element: &Element) -> bool {
    let (top, bottom) = in_sight();
    element.get_bounding_client_rect().height() + 2.0 * CLEAR <= bottom - top
}

/// The part of the window in which rows are seen: below what stays at the top, above the docked line.
fn in_sight() -> (f64, f64) {
    let height = window().inner_height().ok().and_then(|height| height.as_f64()).unwrap_or_default();
    let bottom = dock().map_or(height, |dock| dock.get_bounding_client_rect().top());
    let head = document().query_selector_all(".top > :not(.heads)").ok();
    let parts = head.iter().flat_map(|head| (0..head.length()).filter_map(|at| head.get(at)));
    let parts = parts.filter_map(|part| part.dyn_into::<Element>().ok());
    let top = parts.map(|part| part.get_bounding_client_rect().bottom()).fold(0.0, f64::max);
    (top.min(bottom), bottom)
}

/// The line at the end, while it is docked.
fn dock() -> Option<Element> {
    let line = find(".row.last")?;
    let style = window().get_computed_style(&line).ok().flatten()?;
    style.get_property_value("position").is_ok_and(|position| position == "fixed").then_some(line)
}

fn is_in_dock(field: &Element) -> bool {
    field.id() == "new-line" && dock().is_some()
}

/// The row of the last step.
fn last_step() -> Option<Element> {
    find(".row.last")?.previous_element_sibling()
}

/// The field in which words of a row or a line are written, if it is one.
fn is_written_in(target: Option<web_sys::EventTarget>) -> Option<Element> {
    let field = target?.dyn_into::<Element>().ok()?;
    field.matches(".rows textarea.words").is_ok_and(|is_so| is_so).then_some(field)
}

fn find(selector: &str) -> Option<Element> {
    document().query_selector(selector).ok().flatten()
}

fn height_of_page() -> f64 {
    document().document_element().map_or(0.0, |page| f64::from(page.scroll_height()))
}

fn scroll_by(by: f64, is_smooth: bool) {
    if by.abs() < NOTHING {
        return;
    }
    let to = ScrollToOptions::new();
    to.set_top(window().scroll_y().unwrap_or_default() + by);
    to.set_behavior(if is_smooth && moves() { ScrollBehavior::Smooth } else { ScrollBehavior::Instant });
    window().scroll_to_with_scroll_to_options(&to);
}

/// Whether things may move on this device.
fn moves() -> bool {
    let asked = window().match_media("(prefers-reduced-motion: reduce)").ok().flatten();
    !asked.is_some_and(|asked| asked.matches())
}
