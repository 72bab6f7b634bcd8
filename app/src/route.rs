//! Which screen is shown, by the part of the address behind `#`, so that pages opened from a file work too.

use crate::places;
use leptos::leptos_dom::helpers::location_hash;
use leptos::prelude::*;

/// A screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Screen {
    /// Writing a procedure.
    Write,
    /// Following it.
    Follow,
    /// The procedures on this device.
    Procedures,
    /// The appliance of the open one.
    Appliance,
    /// What to bring.
    Kit,
    /// What is still to be found out.
    Later,
    /// What the open one was before.
    Versions,
    /// The open one on paper.
    Print,
}

impl Screen {
    fn hash(self) -> &'static str {
        match self {
            Self::Write => "/write",
            Self::Follow => "/follow",
            Self::Procedures => "/procedures",
            Self::Appliance => "/appliance",
            Self::Kit => "/kit",
            Self::Later => "/later",
            Self::Versions => "/versions",
            Self::Print => "/print",
        }
    }

    const ALL: [Self; 8] = [
        Self::Write,
        Self::Follow,
        Self::Procedures,
        Self::Appliance,
        Self::Kit,
        Self::Later,
        Self::Versions,
        Self::Print,
    ];

    /// The screen that the address names, if it names one.
    pub fn of_address() -> Option<Self> {
        let hash = location_hash()?;
        Self::ALL.into_iter().find(|screen| screen.hash() == hash)
    }

    /// The same, and Write if it names none.
    pub fn or_write() -> Self {
        Self::of_address().unwrap_or(Self::Write)
    }
}

/// The screen of the address, as long as the page lives.
pub fn screen() -> ReadSignal<Screen> {
    let screen = RwSignal::new(Screen::or_write());
    places::keep_from_browser();
    window_event_listener_untyped("hashchange", move |_| {
        let next = Screen::or_write();
        places::note(screen.get_untracked());
        screen.set(next);
        places::come_back(next);
    });
    screen.read_only()
}

/// Goes to a screen.
pub fn go(screen: Screen) {
    // Only a malformed address is refused, and ours are not.
    let _ = location().set_hash(screen.hash());
}

/// Puts a screen into the address as if the page had been opened with it.
pub fn begin_at(screen: Screen) {
    // As above.
    let _ = location().replace(&format!("#{}", screen.hash()));
}

/// The tabs.
#[component]
pub fn Tabs(
    /// The screen that is shown.
    shown: Screen,
) -> impl IntoView {
    let tab = move |screen: Screen, name: &'static str| {
        let current = (shown == screen).then_some("page");
        view! { <button type="button" class="tab" aria-current=current on:click=move |_| go(screen)>{name}</button> }
    };
    let tabs = [
        (Screen::Procedures, "Procedures"),
        (Screen::Appliance, "Appliance"),
        (Screen::Write, "Write"),
        (Screen::Kit, "Kit"),
        (Screen::Follow, "Follow"),
    ];
    view! { <nav class="tabs" aria-label="Screens">{tabs.map(|(screen, name)| tab(screen, name))}</nav> }
}
