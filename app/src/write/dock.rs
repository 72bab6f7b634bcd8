//! Whether the line at the end docks at the foot of a small window, and how much of the window it may take. Above the
//! keyboard of a tablet there is room for little; with letters so large that there is none at all it stands behind the
//! last step instead, as on a desk.

use leptos::prelude::*;

/// The height of a window in which it docks, in heights of the page's letters.
const LETTERS: f64 = 20.0;
/// The same for all of it. In a lower window its leading words stand in one line.
const LETTERS_OF_ALL: f64 = 35.0;

/// The room that a window has for the docked line.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Room {
    /// None.
    None,
    /// For little more than the line.
    Little,
    /// For all of it.
    Full,
}

/// The room for it; looked at when the screen comes and when the window changes.
pub(super) fn room() -> ReadSignal<Room> {
    let room = RwSignal::new(of_window());
    let listener = window_event_listener(leptos::ev::resize, move |_| {
        if room.get_untracked() != of_window() {
            room.set(of_window());
        }
    });
    on_cleanup(move || listener.remove());
    room.read_only()
}

/// A browser that tells no sizes has room.
fn of_window() -> Room {
    let height = window().inner_height().ok().and_then(|height| height.as_f64());
    match height.zip(letter()).map(|(height, letter)| height / letter) {
        Some(letters) if letters < LETTERS => Room::None,
        Some(letters) if letters < LETTERS_OF_ALL => Room::Little,
        _ => Room::Full,
    }
}

/// The size of the page's letters, in CSS pixels.
fn letter() -> Option<f64> {
    let root = document().document_element()?;
    let style = window().get_computed_style(&root).ok().flatten()?;
    let size = style.get_property_value("font-size").ok()?;
    size.strip_suffix("px")?.parse().ok()
}
