//! A head that takes too much of the window, as with large text or several bars, scrolls away instead of staying.

use leptos::html::ElementType;
use leptos::leptos_dom::helpers::WindowListenerHandle;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// The part of the window's height that a head may take while it stays in sight.
const MOST: f64 = 0.4;

/// Whether a head is too high to stay. It is looked at when somebody scrolls, which is when it matters.
pub fn is_tall<E>(head: NodeRef<E>) -> ReadSignal<bool>
where
    E: ElementType + 'static,
    E::Output: JsCast + Clone + 'static,
{
    let is_tall = RwSignal::new(false);
    let look = move || {
        let Some(head) = head.get_untracked() else { return };
        let tall = height(head.unchecked_ref()) > MOST * window_height();
        if is_tall.get_untracked() != tall {
            is_tall.set(tall);
        }
    };
    let listeners = [
        window_event_listener(leptos::ev::scroll, move |_| look()),
        window_event_listener(leptos::ev::resize, move |_| look()),
    ];
    on_cleanup(move || listeners.into_iter().for_each(WindowListenerHandle::remove));
    is_tall.read_only()
}

/// The height of what stands in it; it may have no box of its own.
fn height(head: &web_sys::Element) -> f64 {
    let children = head.children();
    let of = |at| children.item(at).map(|child| child.get_bounding_client_rect().height());
    (0..children.length()).filter_map(of).sum()
}

fn window_height() -> f64 {
    window().inner_height().ok().and_then(|height| height.as_f64()).unwrap_or(f64::INFINITY)
}
