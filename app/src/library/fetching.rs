//! What is told of the editor while somebody waits for it: that it is fetched, and if it does not come, what to do and
//! what is kept on this device.

use crate::desk::{Coming, DeskPart, Start};
use leptos::leptos_dom::helpers::{TimeoutHandle, set_timeout_with_handle};
use leptos::prelude::*;
use std::time::Duration;

/// For so long nobody is troubled with what to do, as when the page starts.
const PATIENCE: Duration = Duration::from_secs(10);

/// How the page's own script is asked to show what is kept, in the element named so.
const RESCUE: &str = "rescue-here";

/// The words, and the keys that go with them.
#[component]
pub fn Fetching(
    /// The editor, which may not be there yet.
    part: DeskPart,
    /// With what the editor begins, if it is asked for again.
    start: Start,
    /// Whether it took too long.
    is_late: ReadSignal<bool>,
) -> impl IntoView {
    let coming = part.coming();
    let awaited = move || {
        match (coming.get(), is_late.get()) {
        (Coming::Awaited, false) => view! { <p class="banner">"The editor is being fetched …"</p> }.into_any(),
        (Coming::Awaited, true) => view! {
            <p class="banner notice">
                <span>
                    "The editor has not come within 10 seconds. Look whether this device has a network. What is kept on \
                     this device stays kept."
                </span>
                // What was asked for and never answered is asked for again only by another page.
                <button type="button" class="key" on:click=|_| reload()>"Load the page again"</button>
            </p>
        }
        .into_any(),
        (Coming::Unasked | Coming::Failed, _) => ().into_any(),
    }
    };
    let failed = move || {
        (coming.get() == Coming::Failed).then(|| {
            view! {
                <p class="banner notice">
                    <span>{move || part.trouble().get()}" What is kept on this device stays kept."</span>
                    <button type="button" class="key" on:click=move |_| part.try_again(start)>"Try again"</button>
                    <button type="button" class="key" on:click=move |_| part.forget_trouble()>"Close"</button>
                </p>
            }
        })
    };
    view! { <div role="status">{awaited}</div><div role="alert">{failed}</div> }
}

/// What is kept on this device, to be saved without the editor, once it seems not to come.
#[component]
pub fn KeptWithout(
    /// The editor, which may not be there yet.
    part: DeskPart,
    /// Whether it took too long.
    is_late: ReadSignal<bool>,
) -> impl IntoView {
    let coming = part.coming();
    let is_wanted = Memo::new(move |_| match coming.get() {
        Coming::Unasked => false,
        Coming::Awaited => is_late.get(),
        Coming::Failed => true,
    });
    let place = move || {
        // It stands in the page by then.
        request_animation_frame(|| {
            if let Ok(event) = web_sys::Event::new(RESCUE) {
                // Nobody stops this event.
                let _ = window().dispatch_event(&event);
            }
        });
        view! { <div id=RESCUE></div> }
    };
    move || is_wanted.get().then(place)
}

/// Whether somebody has waited for the editor for too long.
pub fn is_late(part: DeskPart) -> ReadSignal<bool> {
    let is_late = RwSignal::new(false);
    let coming = part.coming();
    Effect::new(move |timer: Option<Option<TimeoutHandle>>| {
        if let Some(timer) = timer.flatten() {
            timer.clear();
        }
        is_late.set(false);
        let late = move || {
            // The screen may have gone meanwhile.
            let _ = is_late.try_set(true);
        };
        (coming.get() == Coming::Awaited).then(|| set_timeout_with_handle(late, PATIENCE).ok()).flatten()
    });
    is_late.read_only()
}

/// A page that cannot be loaded again stays as it is.
fn reload() {
    let _ = location().reload();
}
