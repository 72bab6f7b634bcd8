//! Which screen is shown, by the part of the address behind `#`, so that pages opened from a file work too.

use leptos::leptos_dom::helpers::location_hash;
use leptos::prelude::*;

/// A screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Screen {
    /// Writing a procedure.
    Write,
    /// Following it.
    Follow,
}

impl Screen {
    fn hash(self) -> &'static str {
        match self {
            Self::Write => "/write",
            Self::Follow => "/follow",
        }
    }

    fn of_address() -> Self {
        match location_hash().as_deref() {
            Some("/follow") => Self::Follow,
            _ => Self::Write,
        }
    }
}

/// The screen of the address, as long as the page lives.
pub fn screen() -> ReadSignal<Screen> {
    let screen = RwSignal::new(Screen::of_address());
    window_event_listener_untyped("hashchange", move |_| screen.set(Screen::of_address()));
    screen.read_only()
}

/// Goes to a screen.
pub fn go(screen: Screen) {
    // Only a malformed address is refused, and ours are not.
    let _ = location().set_hash(screen.hash());
}

/// The two tabs.
#[component]
pub fn Tabs(
    /// The screen that is shown.
    shown: Screen,
) -> impl IntoView {
    let tab = move |screen: Screen, name: &'static str| {
        let current = (shown == screen).then_some("page");
        view! { <button type="button" class="tab" aria-current=current on:click=move |_| go(screen)>{name}</button> }
    };
    view! { <nav class="tabs" aria-label="Screens">{tab(Screen::Write, "Write")}{tab(Screen::Follow, "Follow")}</nav> }
}
