//! Whether the line at the end docks at the foot of a small window. With letters so large that it would take more than
//! a third of the window it stands behind the last step instead, as on a desk.

use leptos::prelude::*;

/// The height of a window in which it docks, in heights of the page's letters.
const LETTERS: f64 = 35.0;

/// Whether the window is high enough for its letters; looked at when the screen comes and when the window changes.
pub(super) fn has_room() -> ReadSignal<bool> {
    let has_room = RwSignal::new(is_high_enough());
    let listener = window_event_listener(leptos::ev::resize, move |_| {
        if has_room.get_untracked() != is_high_enough() {
            has_room.update(|has_room| *has_room = !*has_room);
        }
    });
    on_cleanup(move || listener.remove());
    has_room.read_only()
}

/// A browser that tells no sizes has room.
fn is_high_enough() -> bool {
    let height = window().inner_height().ok().and_then(|height| height.as_f64());
    height.zip(letter()).is_none_or(|(height, letter)| height >= LETTERS * letter)
}

/// The size of the page's letters, in CSS pixels.
fn letter() -> Option<f64> {
    let root = document().document_element()?;
    let style = window().get_computed_style(&root).ok().flatten()?;
    let size = style.get_property_value("font-size").ok()?;
    size.strip_suffix("px")?.parse().ok()
}
