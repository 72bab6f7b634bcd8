//! Scrolling while something is dragged near the edge of the window.

use leptos::prelude::*;

/// How near an edge the page begins to scroll, and how far each time.
const EDGE: f64 = 56.0;
const SCROLL: f64 = 14.0;

/// Scrolls a little if a pointer is near the top, below what a selector finds there, or near the bottom; says whether.
pub fn scroll_at_edges(head: &str, y: f64) -> bool {
    let height = window().inner_height().ok().and_then(|height| height.as_f64()).unwrap_or_default();
    let top = document().query_selector(head).ok().flatten();
    let top = top.map(|top| top.get_bounding_client_rect().bottom().max(0.0)).unwrap_or_default();
    let by = if y < top + EDGE {
        -SCROLL
    } else if y > height - EDGE {
        SCROLL
    } else {
        return false;
    };
    window().scroll_by_with_x_and_y(0.0, by);
    true
}
